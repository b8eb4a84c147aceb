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

/** Of any unit, less than this many. */
const MOST = 100_000

/**
 * Reads an area: a number of square feet, square inches or square metres (`40 sq ft`, `3,5 m2`), or a size whose sides
 * are multiplied (`4ft x 8ft`). A bare number is ambiguous, for it says no unit.
 */
export function readArea(text: string, settings: ReadingSettings): AreaRead | Ambiguous | Invalid {
  for (const { pattern, area, units } of UNITS) {
    const said = new RegExp(`^\\s*(\\d[\\d.,\\s/]*)\\s*(?:${pattern})\\.?\\s*$`, 'iu').exec(text)
    if (said) return fromNumber(said[1] ?? '', area, units, text)
  }
  const bare = /^\s*(\d{1,6}(?:[.,]\d{1,4})?)\s*$/u.exec(text)?.[1]
  if (bare && Number(bare.replace(',', '.')) > 0) {
    const either = `${bare} sq ft or ${bare} m2`
    return { status: 'ambiguous', question: `"${bare}" could be ${either}; write ${either}` }
  }
  const size = readSize(text, settings)
  if (size.status !== 'read') return size
  if (size.lengths.length === 1 && !size.round)
    return invalid(
      `${shortened(text)} is one length, and an area has two; write 4ft x 8ft, or a number of sq ft or m2`,
    )
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
    if (value === 0)
      return invalid(`${shortened(text)} is no area at all; write more than 0, such as 40 sq ft`)
    return value < MOST
      ? { status: 'read', area: value * unit, units }
      : invalid(`${shortened(text)} is more than is reckoned with; write less than ${MOST} of that unit`)
  } catch {
    return refused(text)
  }
}

const invalid = (problem: string): Invalid => ({ status: 'invalid', problem })

const shortened = (text: string): string => `"${[...text.trim()].slice(0, 40).join('')}"`

const refused = (text: string): Invalid =>
  invalid(`cannot read ${shortened(text)} as an area; write 40 sq ft, 3.5 m2 or 4ft x 8ft`)
