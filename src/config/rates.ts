import type { Range } from '../core/quantities/product.ts'
import { written } from './amounts.ts'

/** `a` or `a-b`, then a unit. */
function writtenRange(text: string, units: Readonly<Record<string, number>>): Range | undefined {
  const [, low = '', high = low, unit = ''] = /^(-?[\d.]+)(?:-([\d.]+))? (\S+)$/.exec(text) ?? []
  const scale = units[unit]
  if (scale === undefined || !(Number(high) >= Number(low))) return undefined
  return { low: Number(low) * scale, high: Number(high) * scale }
}

/** One ft2/gal in m2/L: 0.09290304 m2 over 3.785411784 L. */
const SQUARE_FEET_PER_GALLON = 0.09290304 / 3.785411784

const COVERAGE = {
  'ft2/gal': SQUARE_FEET_PER_GALLON,
  'ft2/qt': SQUARE_FEET_PER_GALLON * 4,
  'm2/L': 1,
}

/** Coverage as the source prints it, in m2/L. */
export const coverageText = written('a coverage such as "200-400 ft2/gal" or "8-10 m2/L"', (text) => {
  const range = writtenRange(text, COVERAGE)
  return range && range.low > 0 ? range : undefined
})

/** A time or a span of time, in hours. */
export const hoursText = written('a time such as "30 min", "4-6 h" or "30 d"', (text) =>
  writtenRange(text, { min: 1 / 60, h: 1, d: 24 }),
)

/** A span of temperature in degrees Celsius. */
export const celsiusText = written('a span of temperature such as "10-32 C"', (text) =>
  writtenRange(text, { C: 1 }),
)

/** Volume of a can in mL: `1 gal`, `0.5 pt`, `750 mL`. */
export const volumeText = written('a volume such as "1 qt" or "750 mL"', (text) => {
  const range = writtenRange(text, VOLUME)
  return range && range.low === range.high && range.low > 0 ? range.low : undefined
})

const GALLON = 3785.411784
const VOLUME = { gal: GALLON, qt: GALLON / 4, pt: GALLON / 8, L: 1000, mL: 1 }
