import type Fraction from 'fraction.js'
import { type Amount, sizeIn } from './amount.ts'
import { doubtOf, outOfRange } from './doubt.ts'
import type { Group, Term } from './group.ts'
import { type Length, nanometres } from './length.ts'
import type { Ambiguous, Invalid, ReadingSettings, UnitSystem } from './reading.ts'
import type { TypedNumber } from './typedNumber.ts'
import { CM, FT, IN, M, MM, type Unit } from './unit.ts'
import { couldBe, decimalText, inUnit } from './wording.ts'

/** One number with the unit it is read in. */
export interface Measured {
  readonly term: Term
  readonly unit: Unit
  readonly size: Fraction
}

/** A group whose every number has a unit, and what was assumed. */
export interface Resolved {
  readonly status: 'read'
  readonly measured: readonly Measured[]
  readonly note?: string | undefined
}

/** What the rest of the phrase says about a bare number. */
export interface Surroundings {
  readonly settings: ReadingSettings
  /** Units and bare fractions elsewhere in the phrase. */
  readonly evidence: readonly Unit[]
  /** Only a length can be meant. */
  readonly expected: boolean
  /** The numbers are those of an object somebody handles, so one of more than 12 ft is in mm. */
  readonly object: boolean
}

/** Past this many inches (12 ft) the side of an object is in mm; past 20 m (787 in) any number is. A diameter: 100 in. */
const OBJECT = 144
const ANYTHING = 787
const DIAMETER = 100
/** Past 8 a whole number beside metres is a thickness or a width in mm or cm. */
const LONGEST_BARE = 8

/** Three or more places are inches from a drawing or a calliper: nobody measures wood to a thousandth of a mm. */
export const impliesInch = ({ number, unit }: Amount): boolean =>
  !unit &&
  (number.form === 'fraction' ||
    number.form === 'mixed' ||
    (number.form === 'decimal' && !number.comma && (number.places ?? 0) >= 3 && !mayBeThousands(number)))

/** `1.500`, `2,440`: where the point or the comma sets thousands apart it is a length in mm of 1 to 10 m. */
const mayBeThousands = ({ value, comma, places, form }: TypedNumber): boolean =>
  comma === 'three' ||
  (form === 'decimal' &&
    !comma &&
    places === 3 &&
    value.compare(1) >= 0 &&
    value.compare(10) < 0 &&
    value.mul(100).d === 1n)

/** The unit that a number shows by itself: typed, inches of a fraction, or mm of a number past 20 m in inches. */
export const impliedUnit = (amount: Amount): Unit | undefined =>
  amount.unit ?? (impliesInch(amount) ? IN : amount.number.value.compare(ANYTHING) > 0 ? MM : undefined)

/** The units of a group's numbers: typed, carried from a neighbour, implied by a fraction or by size, or settled. */
export function resolveGroup(group: Group, around: Surroundings): Resolved | Ambiguous | Invalid {
  const units = group.terms.map((term, at) => carried(group, at) ?? term.amount.unit)
  const odd = oddCarry(group, units)
  if (odd) return odd
  const bare = group.terms.filter((_term, at) => units[at] === undefined)
  const settled = bare.length === 0 ? { unit: MM } : settle(group, bare, around)
  if ('status' in settled) return settled
  const measured = group.terms.map((term, at) => measure(term, units[at] ?? settled.unit))
  const note = 'note' in settled ? settled.note : thicknessNote(group)
  return checked(measured, units, around, note)
}

/** Said where a fraction beside feet was taken as inches. */
function thicknessNote({ terms, trailing }: Group): string | undefined {
  const units = [...terms.flatMap(({ amount }) => amount.unit ?? []), ...(trailing ? [trailing] : [])]
  const thin = terms.find(({ amount }) => !amount.unit && isTapeFraction(amount))
  const feet = thin && units.length > 0 && units.every((unit) => unit === FT)
  return feet ? `${thin.amount.text} read as ${inUnit(thin.amount.number.value, IN)}` : undefined
}

function measure(term: Term, unit: Unit): Measured {
  return { term, unit, size: term.amount.size ?? sizeIn(term.amount.number, unit) }
}

function checked(
  measured: readonly Measured[],
  units: readonly (Unit | undefined)[],
  { expected }: Surroundings,
  note?: string,
): Resolved | Ambiguous | Invalid {
  for (const [at, { term, unit, size }] of measured.entries()) {
    const doubt = doubtOf(term.amount, unit, {
      united: units[at] !== undefined,
      expected: expected || term.kerf,
    })
    const bad = doubt ?? outOfRange(term.amount.text, size)
    if (bad) return bad
  }
  return { status: 'read', measured, note }
}

/** A unit typed to the right governs every bare number left of it; failing that, one to the left carries on. */
function carried({ terms, trailing }: Group, at: number): Unit | undefined {
  if (terms[at]?.amount.unit) return terms[at]?.amount.unit
  const right = terms.slice(at + 1).find(({ amount }) => amount.unit)
  const left = terms.slice(0, at).findLast(({ amount }) => amount.unit)
  const unit = right?.amount.unit ?? trailing ?? left?.amount.unit
  return unit === FT && isTapeFraction(terms[at]?.amount) ? IN : unit
}

/** `1/2` beside feet is half an inch, the thickness of the sheet: nobody says half a foot so. */
const isTapeFraction = (amount: Amount | undefined): boolean =>
  amount?.number.form === 'fraction' &&
  amount.number.value.compare(1) < 0 &&
  amount.number.value.mul(64).d === 1n

/** A carried unit that gives a strange number is asked about: 24 ft from `24 x 3'`, 24 mm from `24x36mm`. */
function oddCarry(group: Group, units: readonly (Unit | undefined)[]): Ambiguous | undefined {
  const { terms } = group
  for (const [at, { amount }] of terms.entries()) {
    const unit = units[at]
    if (amount.unit || !unit) continue
    const odd = isOdd(amount, unit) || terms.some((term) => term.amount.compound)
    const choices = unit === M ? [MM, CM, M] : [IN, unit === IN ? MM : unit]
    const either = choices.filter(({ size }) => !outOfRange('', amount.number.value.mul(size)))
    if (odd)
      return couldBe(
        amount.text,
        either.map((one) => inUnit(amount.number.value, one)),
        'its unit is not beside it',
      )
  }
  const small =
    terms.length > 1 &&
    units.every((unit) => unit === MM) &&
    terms.every(({ amount }) => amount.number.value.compare(50) < 0 && !amount.number.comma)
  return small && terms.some(({ amount }) => !amount.unit)
    ? couldBe(
        sizeText(terms),
        [sizeWith(terms, MM), ...inThousands(terms), sizeWith(terms, IN)],
        'small for a size in mm',
      )
    : undefined
}

function isOdd({ number }: Amount, unit: Unit): boolean {
  if (unit === FT) return number.form === 'mixed' || number.value.compare(20) > 0
  if (unit === M && number.form === 'whole' && number.value.compare(LONGEST_BARE) > 0) return true
  if (unit.system === 'metric') return number.form === 'fraction' || number.form === 'mixed'
  return number.form === 'whole' && number.value.compare(OBJECT) > 0
}

type Settled = { readonly unit: Unit; readonly note?: string | undefined } | Ambiguous

function settle(group: Group, bare: readonly Term[], around: Surroundings): Settled {
  const plain = bare.filter(({ amount }) => !impliesInch(amount))
  const largest = Math.max(0, ...plain.map(({ amount }) => amount.number.value.valueOf()))
  const text = sizeText(group.terms)
  if (bare.some(({ amount }) => impliesInch(amount)))
    return largest > OBJECT
      ? asked(group)
      : { unit: IN, note: around.settings.units === 'metric' ? `${text} read as inches` : undefined }
  if (bare.every(({ kerf }) => kerf) && largest >= 1.5)
    return { unit: MM, note: `kerf ${text} read as ${valueText(group.terms)} mm` }
  if (largest > limit(group, around)) return { unit: MM, note: `${text} read as mm` }
  return byEvidence(group, largest, around) ?? bySettings(group, text, around.settings.units)
}

function limit({ terms }: Group, { object }: Surroundings): number {
  if (terms.every(({ shape }) => shape === 'round')) return DIAMETER - 1
  return object || terms.length > 2 || terms.some(({ roles }) => roles.length > 0) ? OBJECT : ANYTHING
}

/** The one system, and no feet, metres or centimetres alone, that the rest of the phrase is in. */
function byEvidence(group: Group, largest: number, { evidence }: Surroundings): Settled | undefined {
  const systems = new Set(evidence.map(({ system }) => system))
  if (systems.size === 0) return undefined
  const [system] = systems
  const sure =
    systems.size === 1 &&
    !evidence.includes(FT) &&
    evidence.some((unit) => unit === (system === 'inch' ? IN : MM)) &&
    !evidence.some((unit) => unit === CM || unit === M)
  if (!sure || (system === 'inch' && largest > OBJECT)) return asked(group)
  return { unit: system === 'inch' ? IN : MM }
}

function bySettings(group: Group, text: string, units: UnitSystem | undefined): Settled {
  if (units === undefined) return asked(group)
  const unit = units === 'inch' ? IN : MM
  const values = group.terms.map(({ amount }) => decimalText(sizeIn(amount.number, unit).div(unit.size)))
  return { unit, note: `${text} read as ${values.join(' x ')} ${unit.name}` }
}

/** The question about bare numbers: inches or mm, and cm for a size of middling numbers. */
export function asked({ terms }: Group): Ambiguous {
  const whole = terms.every(({ amount }) => !amount.unit) ? inThousands(terms) : []
  if (whole.length > 0)
    return couldBe(
      sizeText(terms),
      [sizeWith(terms, IN), ...whole, sizeWith(terms, MM)],
      'the mark for decimals or for thousands',
    )
  const middling =
    terms.length > 1 &&
    terms.every(({ amount }) => amount.number.value.compare(10) >= 0 && amount.number.value.compare(150) <= 0)
  const angle =
    terms.length === 1 && [22.5, 30, 45, 60, 67.5, 90].includes(terms[0]?.amount.number.value.valueOf() ?? 0)
  const small = terms.length > 1 && terms.every(({ amount }) => amount.number.value.compare(12) <= 0)
  const units = small ? [IN, FT, MM] : middling ? [IN, MM, CM] : [IN, MM]
  return couldBe(sizeText(terms), [
    ...units.map((unit) => sizeWith(terms, unit)),
    ...(angle ? [`${terms[0]?.amount.number.value.valueOf()}deg`] : []),
  ])
}

/** The size in mm where the mark of every bare number sets its thousands apart; empty where it cannot. */
function inThousands(terms: readonly Term[]): readonly string[] {
  if (!terms.every(({ amount }) => amount.unit ?? mayBeThousands(amount.number))) return []
  const sides = terms.map(({ amount: { number, unit } }) =>
    unit ? inUnit(number.value, unit) : inUnit(number.value.mul(1000), MM),
  )
  return [sides.join(' x ')]
}

const valueText = (terms: readonly Term[]): string =>
  terms.map(({ amount }) => decimalText(amount.number.value)).join(' x ')

const sizeText = (terms: readonly Term[]): string => terms.map(({ amount }) => amount.text).join(' x ')

const sizeWith = (terms: readonly Term[], unit: Unit): string =>
  terms.map(({ amount }) => inUnit(amount.number.value, amount.unit ?? unit)).join(' x ')

/** The exact size to the nearest nanometre. */
export const lengthOf = (size: Fraction): Length => nanometres(size.valueOf())

/** The system that most of the numbers were typed in; the first of them decides a tie. */
export function systemOf(units: readonly Unit[]): UnitSystem {
  const inches = units.filter(({ system }) => system === 'inch').length
  if (inches * 2 === units.length) return units[0]?.system ?? 'inch'
  return inches * 2 > units.length ? 'inch' : 'metric'
}
