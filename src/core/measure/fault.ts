import type { Amount } from './amount.ts'
import { type Item, type Phrase, amountOf, amountsOf, isMark, isWord, plainOf } from './item.ts'
import { foreignOf, foreignSign } from './foreign.ts'
import type { Invalid } from './reading.ts'
import { DEGREE, unitOf } from './unit.ts'
import { invalid, quoted } from './wording.ts'

const KNOWN_MARKS = '-+/&,.:;()[]?!@#=~±<>≤≥≈*°⌀%$£€¥^_|'
const MISHEARD = /^(?:to|too|for|fore|won|ate|tree|free|sex|tin|sicks|fife|nein|tow|there)$/u

type Check = (items: readonly Item[], at: number) => string | undefined

/** What is wrong at one place of a phrase whatever it is read as: the words after `cannot read "..." as a measure:`. */
const CHECKS: readonly Check[] = [
  (items, at) =>
    items[at]?.is === 'soup' ? `${quoted(items[at].text)} is no unit; write 24in, 2ft or 600mm` : undefined,
  (items, at) => {
    const fault = amountOf(items[at])?.number.fault
    return (
      fault && `${quoted(items[at]?.text ?? '')} is no number, because ${fault}; write 23 7/8in or 606.4mm`
    )
  },
  countOnly,
  notation,
  doubled,
  negative,
  foreign,
  twoUnits,
  area,
  mark,
  misheard,
]

/** The first thing in the phrase that no reading can mend, as a refusal; undefined when there is none. */
export function faultOf({ text, items }: Phrase): Invalid | undefined {
  for (const check of CHECKS)
    for (let at = 0; at < items.length; at += 1) {
      const why = check(items, at)
      if (why) return invalid(`cannot read ${quoted(text)}: ${why}`)
    }
  return undefined
}

/** The refusal of a length of zero; undefined when no amount is zero. */
export function zeroOf({ text, items }: Phrase): Invalid | undefined {
  const isZero = amountsOf(items).some(
    ({ number, unit, size }) => (size ?? number.value).equals(0) && unit !== DEGREE,
  )
  return isZero
    ? invalid(
        `cannot read ${quoted(text)}: a length or a count of zero is no measure; write a number above 0, such as 1/2in or 12mm`,
      )
    : undefined
}

/** `qty 3`, `x3`, `4 off`, `3x`: how many, and not how long. */
function countOnly(items: readonly Item[], at: number): string | undefined {
  const count = /^(?:(?:qty|quantity|x) \S+|\S+ (?:x|off|pcs?|pieces?|ea|each|qty))$/u.test(plainOf(items))
  const bare = items.some(
    (item) => amountOf(item) && !amountOf(item)?.unit && amountOf(item)?.number.form === 'whole',
  )
  const zero = amountsOf(items)[0]?.number.value.equals(0)
  return at === 0 && count && bare && !zero
    ? 'it is a count with no length; write both, such as 3 @ 24in'
    : undefined
}

/** `1e3`, `2e-5`, `0x1f`: figures and letters run together. */
function notation(items: readonly Item[], at: number): string | undefined {
  const [number, letter, after] = items.slice(at, at + 3)
  if (!amountOf(number) || amountOf(number)?.unit || letter?.is !== 'word' || letter.gap) return undefined
  const exponent = letter.text === 'e' && after !== undefined && !after.gap
  return exponent ? 'powers of ten are not read; write the number out, such as 1000mm' : undefined
}

function doubled(items: readonly Item[], at: number): string | undefined {
  const [here, after] = [items[at], items[at + 1]]
  const run = isWord(here, /^x{2,}$/u) && amountOf(after)
  if (run || (here?.is === 'by' && after?.is === 'by'))
    return 'there are two separators in a row; write one, as in 24 x 36in'
  if (here?.is === 'by' && at === items.length - 1) return 'nothing follows the last x; write 24 x 36in'
  if (at === 0 && isMark(here, ',', '.', ';', ':', '/') && amountOf(after))
    return `it begins with ${here?.text ?? ''}; write ${unitedText(amountOf(after))}`
  if (isMark(here, ',') && isMark(after, ','))
    return 'there are two commas in a row; write one number, such as 24.5in'
  const dots =
    isMark(here, '.') && isMark(after, '.') && !isMark(items[at - 1], '.') && !isMark(items[at + 2], '.')
  if (dots && amountOf(items[at + 2]))
    return 'there are two points in a row; write one number, such as 24.5in'
  if (isMark(here, '-') && isMark(after, '-')) return 'there are two dashes; write one number, such as 3in'
  if (
    isMark(here, '/') &&
    !isMark(items[at - 1], '+') &&
    (isMark(after, '/') || !after || here?.gap === after.gap) &&
    !here?.gap
  )
    return 'there are too many strokes; write one fraction, such as 7/8in'
  return undefined
}

function negative(items: readonly Item[], at: number): string | undefined {
  const [before, here, after] = [items[at - 1], items[at], items[at + 1]]
  if (!isMark(here, '-') || !amountOf(after) || after?.gap) return undefined
  const starts =
    before === undefined ||
    before.is === 'by' ||
    isMark(before, '(', '=', ':') ||
    (before.is === 'word' && here?.gap)
  return starts ? `a measure cannot be negative; write ${unitedText(amountOf(after))}` : undefined
}

const unitedText = (amount: Amount | undefined): string =>
  amount?.unit ? amount.text : `${amount?.text ?? '24'}in or ${amount?.text ?? '600'}mm`

function foreign(items: readonly Item[], at: number): string | undefined {
  const amount = amountOf(items[at])
  const after = items[at + 1]
  const sign = foreignSign(items[at]?.is === 'mark' ? (items[at]?.text ?? '') : '')
  if (sign) return `that is ${sign}, not a length; write 24in or 600mm`
  if (!amount || after?.is !== 'word' || amount.compound) return undefined
  if (amount.unit === DEGREE && /^[cf]$/u.test(after.text))
    return 'that is a temperature, not an angle; write 45deg'
  const single = /^[gkvp]$/u.test(after.text) && after.gap
  const what = amount.unit || single ? undefined : foreignOf(after.text)
  return what && `${quoted(`${amount.text} ${after.text}`)} is ${what}; write a length, such as 24in or 600mm`
}

/** `24 in mm`, `24 in in`: a second unit after the first. */
function twoUnits(items: readonly Item[], at: number): string | undefined {
  const [amount, after] = [amountOf(items[at]), items[at + 1]]
  if (!amount?.unit || after?.is !== 'word' || unitOf(after.text) === undefined) return undefined
  const unit = after.text !== 'in' || at + 1 === items.length - 1
  return unit ? `it has two units in a row; write ${amount.text}` : undefined
}

/** `10 sq ft`, `2 m^2`, `3 cubic feet`, `12 board feet`. */
function area(items: readonly Item[], at: number): string | undefined {
  const stop = isMark(items[at + 2], '.') ? 1 : 0
  const [amount, word, unit] = [amountOf(items[at]), items[at + 1], items[at + 2 + stop]]
  if (!amount) return undefined
  const power = amount.unit && isMark(word, '^')
  const prefix =
    isWord(word, /^(?:sq|square|cubic|cu|board|bd)$/u) &&
    unit?.is === 'word' &&
    unitOf(unit.text) !== undefined
  const squared = amount.unit && isWord(word, /^(?:squared|cubed)$/u)
  const figure =
    amount.unit &&
    /^(?:mm|cm|in)$/u.test(amount.unit.name) &&
    /^[23]$/u.test(unitlessText(word)) &&
    word?.gap === false
  return power || prefix || squared || figure
    ? 'an area or a volume is not a length; write each side, as in 24 x 36in'
    : undefined
}

const unitlessText = (item: Item | undefined): string => (amountOf(item)?.unit ? '' : (item?.text ?? ''))

function mark(items: readonly Item[], at: number): string | undefined {
  const item = items[at]
  if (item?.is !== 'mark' || KNOWN_MARKS.includes(item.text)) return undefined
  return /["']/u.test(item.text)
    ? `the mark ${item.text} has no number before it; write 24in or 2ft`
    : `the sign ${item.text === '\uFFFD' ? 'in it' : item.text} means nothing here; write 24in or 600mm`
}

/** `to foot`, `to by four`, `two buy four`: a number that dictation took for another word. It is not guessed. */
function misheard(items: readonly Item[], at: number): string | undefined {
  const [before, here, after] = [items[at - 1], items[at], items[at + 1]]
  if (here?.is !== 'word') return undefined
  const unit =
    after?.is === 'word' &&
    (after.text === 'by' ||
      (after.text.length > 1 && after.text !== 'in' && unitOf(after.text) !== undefined))
  const spoken =
    (MISHEARD.test(here.text) && (unit || after?.is === 'by')) ||
    (/^(?:buy|bye)$/u.test(here.text) && amountOf(before) !== undefined)
  const last = before?.is === 'by' && /^(?:to|too|for|fore|ate|won|tree)$/u.test(here.text)
  return spoken || last
    ? `${quoted(here.text)} may be a number that was misheard; write it in figures, such as 2ft or 2x4`
    : undefined
}
