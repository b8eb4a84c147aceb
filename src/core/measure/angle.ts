import type { Amount } from './amount.ts'
import { amountOf, amountsOf, isMark, isWord, type Item, type Phrase, plainOf } from './item.ts'
import type { Ambiguous, AngleRead, Invalid } from './reading.ts'
import { DEGREE, IN } from './unit.ts'
import { couldBe, inUnit, invalid, quoted } from './wording.ts'

type AngleOutcome = AngleRead | Ambiguous | Invalid

const SIDES: ReadonlyMap<string, number> = new Map(
  Object.entries({
    triangle: 3,
    triangular: 3,
    square: 4,
    pentagon: 5,
    pentagonal: 5,
    hex: 6,
    hexagon: 6,
    hexagonal: 6,
    heptagon: 7,
    octagon: 8,
    octagonal: 8,
    nonagon: 9,
    decagon: 10,
    dodecagon: 12,
  }),
)

const ANGLE_WORDS =
  /\b(?:mitre|miter|mitred|mitered|bevel|tilt|angle|angled|protractor|on the (?:mitre |miter |table |chop )?saw|saw scale)\b/u
const PITCH_WORDS = /\b(?:pitch|slope|roof|rise|grade|gradient|fall|ratio|dovetail)\b/u
const SQUARE_CUT = /^(?:an? )?(?:square|straight|right angle|right angled)(?: cut| end| ends| cross ?cut)$/u

/**
 * The phrase as an angle in degrees on the saw scale (from square): `31.6 deg`, `31°36'`, `4:12`, `5/12 pitch`,
 * `hexagon corner`, `square cut`. Undefined when nothing in it speaks of an angle. `expected` says that an angle is wanted.
 */
export function angleOf(phrase: Phrase, expected = false): AngleOutcome | undefined {
  const plain = plainOf(phrase.items)
  const amounts = amountsOf(phrase.items)
  return (
    named(plain, amounts) ??
    bareTwelfths(phrase, plain, expected) ??
    pitch(phrase, plain, amounts) ??
    halfOf(phrase) ??
    single(phrase, plain, amounts)
  )
}

/** An angle within what a saw or a protractor can show, 0 to 180 degrees. */
export function angleRead(degrees: number, text: string, note?: string): AngleRead | Invalid {
  if (degrees > 180)
    return invalid(`cannot read ${quoted(text)} as an angle: it is more than 180 degrees; write 45deg`)
  return { status: 'read', kind: 'angle', degrees, ...(note !== undefined && { note }) }
}

/** A shape or a square cut, with no number but the count of its sides. */
function named(plain: string, amounts: readonly Amount[]): AngleOutcome | undefined {
  if (amounts.length === 0 && SQUARE_CUT.test(plain))
    return angleRead(0, plain, 'a square cut is 0 on the saw scale')
  if (/^(?:an? )?right angle$/u.test(plain))
    return couldBe(plain, ['0deg', '90deg'], 'on the saw scale, or between the faces')
  const shape = plain
    .split(' ')
    .find((word) => SIDES.has(word) && (word !== 'square' || /\bcorners?\b/u.test(plain)))
  const sided = /^(\S+) (?:- )?sid(?:ed|es)\b/u.test(plain) ? amounts[0] : undefined
  const sides =
    shape && amounts.length === 0
      ? SIDES.get(shape)
      : sided && amounts.length === 1 && !sided.unit
        ? Number(sided.number.value)
        : undefined
  if (sides === undefined || sides < 3 || !Number.isInteger(sides)) return undefined
  const degrees = 180 / sides
  return angleRead(degrees, plain, `saw setting for a corner of ${sides} sides: 180 / ${sides}`)
}

/** `5/12` alone is a pitch, or a fraction that no tape has; `24/12` may be two numbers too. */
function bareTwelfths({ text, items }: Phrase, plain: string, expected: boolean): Ambiguous | undefined {
  const amount = items.length === 1 ? amountOf(items[0]) : undefined
  const { stroke, deliberate, value } = amount?.number ?? {}
  if (!stroke || !value || stroke.under !== '12' || deliberate || amount?.unit || PITCH_WORDS.test(plain))
    return undefined
  const rise = Number(stroke.over)
  if (rise === 0 || amount?.number.form !== 'fraction' || (expected && rise <= 12)) return undefined
  if (expected) return eitherFace(text, rise, 12)
  const size = inUnit(value, IN)
  const steep = rise > 24
  return couldBe(
    text,
    [...(steep ? [] : [`${rise}/12 pitch`]), size, ...(rise >= 12 ? [`${rise}in x 12in`] : [])],
    `${steep ? '' : 'a pitch, or '}a fraction of an inch${value.mul(64).d === 1n ? '' : ', which no tape has'}`,
  )
}

/** `4:12`, `5/12 pitch`, `4 in 12`, `pitch 4/12`: so much up for so much along. */
function pitch(phrase: Phrase, plain: string, amounts: readonly Amount[]): AngleOutcome | undefined {
  const told = PITCH_WORDS.test(plain)
  const pair = ratio(phrase.items, amounts, told)
  if (!pair) return undefined
  const [rise, run] = pair
  if (rise === 0 || run === 0)
    return invalid(`cannot read ${quoted(phrase.text)} as a pitch: neither number may be zero; write 4:12`)
  const degrees = (Math.atan(rise / run) * 180) / Math.PI
  const usual = told || run === 12 || rise === 1
  if (usual && rise <= run * 2) return angleRead(degrees, phrase.text, `pitch: ${rise} up for ${run} along`)
  return eitherFace(phrase.text, rise, run)
}

function eitherFace(text: string, rise: number, run: number): Ambiguous {
  const degrees = (Math.atan(rise / run) * 180) / Math.PI
  const angle = [degrees, 90 - degrees].map((value) => `${Number(value.toFixed(2))}deg`)
  return couldBe(text, angle, `a slope of ${rise} in ${run}, measured from either face`)
}

function ratio(
  items: readonly Item[],
  amounts: readonly Amount[],
  told: boolean,
): readonly [number, number] | undefined {
  const [first, second] = amounts
  if (
    amounts.length === 1 &&
    first &&
    !first.unit &&
    first.number.form === 'fraction' &&
    first.number.stroke
  ) {
    const { over, under } = first.number.stroke
    return told || (under === '12' && !first.number.deliberate) ? [Number(over), Number(under)] : undefined
  }
  if (amounts.length !== 2 || !first || !second || second.unit) return undefined
  const at = items.findIndex((item) => amountOf(item) === first)
  const between = items.slice(
    at + 1,
    items.findIndex((item) => amountOf(item) === second),
  )
  const pair = [first.number.value.valueOf(), second.number.value.valueOf()] as const
  if (between.length === 1 && isMark(between[0], ':')) return items.length === 3 || told ? pair : undefined
  const isIn = first.unit?.name === 'in' && first.text.endsWith(' in') && between.length === 0
  if (isIn && (told || (items.length === 2 && pair[1] === 12))) return pair
  const joined = between.every(
    (item) => isMark(item, '-', '/') || isWord(item, /^(?:in|on|over|and|by|run|to)$/u) || item.is === 'by',
  )
  return told && joined && !first.unit ? pair : undefined
}

/** `half of 90` is an angle: a mitre is half its corner. */
function halfOf({ text, items }: Phrase): AngleOutcome | undefined {
  const [part, of, whole] = items
  const corner = amountOf(whole)
  if (items.length !== 3 || !amountOf(part)?.number.value.equals(0.5) || !isWord(of, /^of$/u) || !corner)
    return undefined
  const degrees = corner.number.value.valueOf()
  if (corner.unit ? corner.unit !== DEGREE : ![30, 45, 60, 90, 108, 120, 135, 180].includes(degrees))
    return undefined
  return angleRead((corner.size?.valueOf() ?? degrees) / 2, text, `half of ${degrees} degrees`)
}

function single(phrase: Phrase, plain: string, amounts: readonly Amount[]): AngleOutcome | undefined {
  const { text, items } = phrase
  const [amount] = amounts
  const corner = /\bcorners?\b/u.test(plain)
  const said = amounts.some(({ unit }) => unit === DEGREE)
  if (
    !amount ||
    !(
      said ||
      ((corner || ANGLE_WORDS.test(plain) || /\bradians?\b/u.test(plain)) && isBare(amount)) ||
      fortyFive(items, plain) ||
      isNinetyCut(plain)
    )
  )
    return undefined
  if (amounts.length > 1)
    return said
      ? invalid(
          `cannot read ${quoted(text)} as one measure: it has an angle and another number; write one of them, such as 45deg`,
        )
      : undefined
  if (amount.unit && amount.unit !== DEGREE) return undefined
  if (amount.doubt) return couldBe(text, amount.doubt.readings, amount.doubt.why)
  return withWords(text, plain, (amount.size ?? amount.number.value).valueOf(), corner)
}

const isBare = ({ unit, number, plural }: Amount): boolean =>
  !unit && !plural && number.form !== 'fraction' && number.value.compare(180) <= 0

/** Said alone, forty five is the mitre; typed as figures it may as well be a length. */
const fortyFive = (items: readonly Item[], plain: string): boolean =>
  items.length <= 2 && /^(?:a )?fou?rty[ -]?five$/u.test(plain)

const isNinetyCut = (plain: string): boolean => /^(?:an? )?90 (?:square )?(?:cut|crosscut|end)$/u.test(plain)

function withWords(text: string, plain: string, degrees: number, corner: boolean): AngleOutcome {
  if (/\bradians?\b/u.test(plain)) return angleRead((degrees * 180) / Math.PI, text)
  if (corner)
    return degrees > 180
      ? angleRead(degrees, text)
      : angleRead((180 - degrees) / 2, text, `saw setting for a corner of ${degrees} degrees`)
  if (degrees === 90 && plain !== '90 cut' && !/\b(?:cut|crosscut|end)\b/u.test(plain))
    return angleRead(90, text, '90 degrees between the faces; a square cut is 0 on the saw scale')
  if (degrees === 90 && /\b(?:cut|crosscut|end)\b/u.test(plain))
    return angleRead(0, text, 'a square cut is 0 on the saw scale')
  return angleRead(degrees, text, fortyFiveNote(plain))
}

const fortyFiveNote = (plain: string): string | undefined =>
  /^(?:a )?fou?rty[ -]?five$/u.test(plain)
    ? 'forty five read as 45 degrees; write 45in or 45mm for a length'
    : undefined
