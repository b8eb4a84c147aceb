import Fraction from 'fraction.js'
import { type Amount, sizeIn } from './amount.ts'
import { doubtOf, outOfRange } from './doubt.ts'
import { amountOf, amountsOf, isMark, isWord, type Item, type Phrase } from './item.ts'
import type { Ambiguous, Invalid, LengthRead, ReadingSettings } from './reading.ts'
import { impliesInch, lengthOf, systemOf } from './resolve.ts'
import { DEGREE, FT, IN, MM, type Unit } from './unit.ts'
import { couldBe, inInches, inSystemOf, inUnit, invalid, quoted } from './wording.ts'

type Sign = 1 | -1

const TIMES: ReadonlyMap<string, number> = new Map(
  Object.entries({ twice: 2, double: 2, triple: 3, thrice: 3 }),
)

/**
 * The answer to a sum of lengths: `24" - 1/8"`, `23 7/8 less 1/16`, `half of 23 7/8`. Asks where a dash may join as well
 * as take away (`1 - 1/2"`) or where the order of working is not plain. Undefined when the phrase is no sum.
 */
export function sumOf(
  phrase: Phrase,
  settings: ReadingSettings,
): LengthRead | Ambiguous | Invalid | undefined {
  const items = phrase.items.filter((item) => !isWord(item, /^(?:kerf|blade|and)$/u))
  return (
    division(phrase, settings) ??
    multiple({ ...phrase, items }, settings) ??
    chain({ ...phrase, items }, settings)
  )
}

/** `48 - 1/8 kerf / 2`, `96" / 4`: which part is divided is not said. */
function division({ text, items }: Phrase, settings: ReadingSettings): Ambiguous | undefined {
  const at = items.findIndex((item) => isMark(item, '/', '÷'))
  const divisor = amountOf(items[at + 1])
  if (at < 1 || !divisor || divisor.unit) return undefined
  const sum = chain(
    { text, items: items.slice(0, at).filter((item) => !isWord(item, /^(?:kerf|blade)$/u)) },
    settings,
    true,
  )
  const first = amountOf(items[0])
  const whole = sum?.status === 'read' ? new Fraction(sum.length) : first && sizeOf(first, IN)
  if (!whole || divisor.number.value.equals(0)) return undefined
  const all = whole.div(divisor.number.value)
  const last = items.slice(0, at).findLast((item) => amountOf(item))
  const part = amountOf(last)
  const other =
    sum && part && part !== first
      ? whole.add(sizeOf(part, IN)).sub(sizeOf(part, IN).div(divisor.number.value))
      : whole
  return couldBe(text, [inInches(all), inInches(other)], 'divided as a whole, or not')
}

const sizeOf = (amount: Amount, unit: Unit): Fraction => amount.size ?? sizeIn(amount.number, unit)

/** `half of 24in`, `twice 3/4`. */
function multiple(
  { text, items }: Phrase,
  settings: ReadingSettings,
): LengthRead | Ambiguous | Invalid | undefined {
  const [first, second, third] = items
  const by = first?.is === 'word' ? TIMES.get(first.text) : undefined
  if (by !== undefined && items.length === 2) return scaled(text, amountOf(second), by, settings)
  const part = amountOf(first)
  const fraction = part && !part.unit && part.number.form === 'fraction' && part.number.spoken
  if (items.length === 3 && fraction && isWord(second, /^of$/u))
    return scaled(text, amountOf(third), part.number.value.valueOf(), settings)
  return undefined
}

function scaled(
  text: string,
  amount: Amount | undefined,
  by: number,
  settings: ReadingSettings,
): LengthRead | Ambiguous | Invalid | undefined {
  if (!amount || amount.unit === DEGREE) return undefined
  const unit = unitFor([amount], settings)
  if (!unit)
    return couldBe(
      text,
      [IN, MM].map((either) => inUnit(amount.number.value.mul(by), either)),
    )
  return answer(text, sizeOf(amount, unit).mul(by), unit, [
    doubtOf(amount, unit, { united: false, expected: true }),
  ])
}

/** Amounts with plus or minus between them. */
function chain(
  { text, items }: Phrase,
  settings: ReadingSettings,
  part = false,
): LengthRead | Ambiguous | Invalid | undefined {
  const amounts = amountsOf(items)
  if (items.length !== amounts.length * 2 - 1 || (amounts.length < 2 && !part)) return undefined
  const signs = items.map((item, at) =>
    at % 2 === 1 ? signOf(items, at) : item.is === 'amount' ? 1 : undefined,
  )
  if (signs.some((sign) => sign === undefined) || amounts.some(({ unit }) => unit === DEGREE))
    return undefined
  const joins = part ? undefined : dashJoins(text, items, amounts)
  if (joins) return joins
  const backwards = part ? undefined : longerTaken(text, items, amounts)
  if (backwards) return backwards
  const unit = unitFor(amounts, settings)
  if (!unit)
    return couldBe(
      text,
      [IN, MM].map((either) => inSystemOf(total(amounts, signs, either), either)),
      'a sum with no unit',
    )
  const doubts = amounts.map((amount) => doubtOf(amount, unit, { united: false, expected: true }))
  return answer(text, total(amounts, signs, unit), unit, doubts)
}

const total = (amounts: readonly Amount[], signs: readonly (Sign | undefined)[], unit: Unit): Fraction =>
  amounts.reduce(
    (sum, amount, at) => sum.add(sizeOf(amount, unit).mul(signs[at * 2 - 1] ?? 1)),
    new Fraction(0),
  )

/** A dash between spaces takes away; a word says what it does; a plus adds however it stands. */
function signOf(items: readonly Item[], at: number): Sign | undefined {
  const [item, after] = [items[at], items[at + 1]]
  if (isWord(item, /^(?:less|minus)$/u)) return -1
  if (isWord(item, /^plus$/u) || isMark(item, '+')) return 1
  return isMark(item, '-') && item?.gap && (after?.gap || amountOf(items[at - 1])?.unit) ? -1 : undefined
}

/** `24 - 1/8"` may be 24 1/8 typed with a loose dash; `24 - 3` may be a range. */
function dashJoins(
  text: string,
  items: readonly Item[],
  [first, second]: readonly Amount[],
): Ambiguous | undefined {
  if (!first || !second || !isMark(items[1], '-')) return undefined
  const whole = first.number.form === 'whole' && !first.unit
  if (whole && second.number.form === 'fraction')
    return couldBe(
      text,
      [
        inUnit(first.number.value.add(second.number.value), IN),
        inUnit(first.number.value.sub(second.number.value), IN),
      ],
      'the dash may join or take away',
    )
  const bare = second.number.form === 'whole' && !second.unit
  return bare && (whole || first.unit)
    ? couldBe(
        text,
        [
          inUnit(first.number.value.sub(second.number.value), first.unit ?? IN),
          `${inUnit(first.number.value, first.unit ?? IN)} x ${inUnit(second.number.value, first.unit ?? IN)}`,
        ],
        'a sum, a size or a range',
      )
    : undefined
}

/** `24" - 36"`: nothing would be left, so a range or a size is meant. */
function longerTaken(
  text: string,
  items: readonly Item[],
  [first, second]: readonly Amount[],
): Ambiguous | undefined {
  if (
    items.length !== 3 ||
    !isMark(items[1], '-') ||
    !first?.size ||
    !second?.size ||
    first.size.compare(second.size) > 0
  )
    return undefined
  return couldBe(
    text,
    [`${first.text} x ${second.text}`, first.text, second.text],
    'a size, or a range from one to the other',
  )
}

/** The unit of the bare numbers: that of the others, inches beside a fraction, or the unit settled on. */
function unitFor(amounts: readonly Amount[], settings: ReadingSettings): Unit | undefined {
  const typed = amounts.find(({ unit }) => unit)?.unit
  if (typed && amounts.every(({ unit }) => unit)) return typed
  const bareWhole = amounts.some((amount) => !amount.unit && !impliesInch(amount))
  if (typed)
    return typed === FT && bareWhole
      ? undefined
      : typed.system === 'inch'
        ? IN
        : amounts.some(impliesInch)
          ? undefined
          : typed
  if (amounts.some(impliesInch)) return IN
  return settings.units && (settings.units === 'inch' ? IN : MM)
}

function answer(
  text: string,
  size: Fraction,
  unit: Unit,
  doubts: readonly (Ambiguous | undefined)[],
): LengthRead | Ambiguous | Invalid {
  const doubt = doubts.find((found) => found !== undefined)
  if (doubt) return doubt
  if (size.compare(0) <= 0)
    return invalid(
      `cannot read ${quoted(text)}: it leaves nothing, or less than nothing; write a length above 0, such as 1/2in`,
    )
  return (
    outOfRange(text, size) ?? {
      status: 'read',
      length: lengthOf(size),
      units: systemOf([unit]),
      note: `${text.trim()} is ${inSystemOf(size, unit)}`,
    }
  )
}
