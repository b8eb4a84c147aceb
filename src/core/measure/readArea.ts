import Fraction from 'fraction.js'
import { toMillimetres } from './length.ts'
import type { Ambiguous, Invalid, ReadingSettings, UnitSystem } from './reading.ts'
import { readSize } from './readSize.ts'

/** An area in mm2, and the unit system it was typed in. */
export interface AreaRead {
  readonly status: 'read'
  readonly area: number
  readonly units: UnitSystem
  readonly note?: string | undefined
}

/** Square millimetres in one of each unit: exact, from 25.4 mm to the inch. */
const UNITS: readonly { pattern: string; area: number; units: UnitSystem }[] = [
  {
    pattern: 'sq(?:uare)?\\.?\\s*(?:ft|feet|foot)|(?:ft|feet|foot)\\s*(?:2|²|\\^2|sq(?:uared?)?)|sf',
    area: 92_903.04,
    units: 'inch',
  },
  {
    pattern: 'sq(?:uare)?\\.?\\s*(?:in|inch|inches)|in(?:ch|ches)?\\s*(?:2|²|\\^2)',
    area: 645.16,
    units: 'inch',
  },
  {
    pattern: 'sq(?:uare)?\\.?\\s*(?:m|met(?:er|re)s?)|m\\s*(?:2|²|\\^2)|sqm',
    area: 1_000_000,
    units: 'metric',
  },
]

/**
 * Reads an area: a number of square feet, square inches or square metres (`40 sq ft`, `3,5 m2`), or a size whose sides
 * are multiplied (`4ft x 8ft`). A bare number is refused, for it says neither which unit nor which kind.
 */
export function readArea(text: string, settings: ReadingSettings): AreaRead | Ambiguous | Invalid {
  for (const { pattern, area, units } of UNITS) {
    const said = new RegExp(`^\\s*(\\d[\\d.,\\s/]*)\\s*(?:${pattern})\\.?\\s*$`, 'iu').exec(text)
    if (said) return fromNumber(said[1] ?? '', area, units, text)
  }
  const size = readSize(text, settings)
  if (size.status !== 'read') return size
  const [length, width, height] = size.lengths.map(toMillimetres)
  if (length === undefined || width === undefined || height !== undefined || size.round) return refused(text)
  return { status: 'read', area: length * width, units: size.units, note: size.note }
}

function fromNumber(digits: string, unit: number, units: UnitSystem, text: string): AreaRead | Invalid {
  try {
    const value = new Fraction(
      digits
        .trim()
        .replace(/,(?=\d{3}\b)/gu, '')
        .replace(',', '.')
        .replace(/\s+/gu, ' '),
    ).valueOf()
    return value > 0 && value < 100_000 ? { status: 'read', area: value * unit, units } : refused(text)
  } catch {
    return refused(text)
  }
}

const refused = (text: string): Invalid => ({
  status: 'invalid',
  problem: `cannot read "${[...text].slice(0, 40).join('')}" as an area; write 40 sq ft, 3.5 m2 or 4ft x 8ft`,
})
