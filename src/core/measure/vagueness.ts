import { type Item, type Phrase, amountOf, amountsOf, isMark, isWord, plainOf } from './item.ts'
import type { Amount } from './amount.ts'
import type { Ambiguous, ReadingSettings } from './reading.ts'
import { isSentence } from './sentenceWords.ts'
import { IN, type Unit } from './unit.ts'
import { ambiguous, inSystemOf, listed, quoted, typed } from './wording.ts'

const LIMIT =
  /\b(?:max|maximum|min|minimum|at least|at most|no (?:more|less|longer|shorter|wider|bigger|smaller) than|not (?:over|under|more than|less than)|up to|or (?:more|less|under|over)|less than|more than|greater than|smaller than|bigger than|tops|within|limit)\b|[<>≤≥]/u
const LIMIT_FIRST = /^(?:just |anything )?(?:under|over|below|above) /u
const ROUGH =
  /[~≈]|\b(?:about|approx|approximately|roughly|circa|ca|nearly|almost|ish|give or take|ballpark|close to|near enough|nominal|nominally|or so|or thereabouts)\b|^c \. |(?:^| )around (?!the|it|all)/u
const SLANG =
  /\b(?:hair|hairs|tad|touch|shade|smidge|smidgen|smidgin|skosh|scosh|whisker|and change|and some|and then some|gnats?|gnat's|shy|strong|scant|just (?:over|under|shy)|bit (?:over|under|more|less|short)|little (?:over|under|more|less))\b/u
const SLANG_BESIDE = /^(?:heavy|light|fat|full|bare|strong|shy|plus|minus|proud|long|short)$/u
const EDIT = /\b(?:change|changed|make|move|set|raise|lower|go|extend|trim|cut|reduce|increase|from a)\b/u
const TOLERANCE = /±|\+ ?\/ ?-|\+ -|\bplus or minus\b|\b(?:tolerance|tol)\b/u

/**
 * The question to ask where the phrase names a limit, a rough size, a tolerance, a range or trade slang in place of
 * one exact number; undefined where it does none of these.
 */
export function vaguenessOf(phrase: Phrase, settings: ReadingSettings): Ambiguous | undefined {
  const amounts = amountsOf(phrase.items)
  const [first] = amounts
  if (!first) return undefined
  const plain = plainOf(phrase.items)
  const what = kindOf(phrase.items, plain)
  const exact = amounts
    .slice(0, what === 'a range' ? 2 : 1)
    .flatMap((amount) => exactly(amount, amounts.findLast(({ unit }) => unit)?.unit, settings))
  return what === undefined
    ? undefined
    : ambiguous(
        `${quoted(phrase.text)} is ${what}, not one size: it could be ${readings(what, first, exact)}; write the size itself, such as ${listed(exact)}`,
      )
}

function kindOf(items: readonly Item[], plain: string): string | undefined {
  if (TOLERANCE.test(plain)) return 'a size with a tolerance'
  if (SLANG.test(plain) || slangBeside(items)) return 'a size and a little over or under it'
  if (LIMIT.test(plain) || (LIMIT_FIRST.test(plain) && !isSentence(items))) return 'a limit'
  if (ROUGH.test(plain) || items.some((item, at) => isMark(item, '~') && amountOf(items[at + 1])))
    return 'a rough size'
  return isRange(items, plain) ? 'a range' : undefined
}

/** `24 heavy`, `fat 3/4`, `23 7/8+`: a word or a sign beside the number of a phrase that says nothing else. */
function slangBeside(items: readonly Item[]): boolean {
  const rest = items.filter((item) => !amountOf(item) && !isWord(item, /^(?:an?|the|on|it's)$/u))
  if (items.length - rest.length < 1 || rest.length !== 1) return false
  const [word] = rest
  const last = items.at(-1) === word
  if (isMark(word, '+', '-')) return last
  return (
    isWord(word, SLANG_BESIDE) &&
    !(
      isWord(word, /^(?:long|plus|minus|short)$/u) &&
      !/^(?:plus|minus)$/u.test(last ? (word?.text ?? '') : '')
    )
  )
}

/** Two sizes with `to`, `or` or a dash between them; in a sentence `from ... to ...` is an edit. */
function isRange(items: readonly Item[], plain: string): boolean {
  if (/^between\b/u.test(plain)) return amountsOf(items).length === 2
  return items.some((item, at) => {
    const beside = amountOf(items[at - 1]) && amountOf(items[at + 1])
    const word = isWord(item, /^(?:to|or|thru|through|versus|vs)$/u) && !EDIT.test(plain)
    return beside && (word || (isMark(item, '.') && !item.gap) || isDashRange(items, at))
  })
}

/** `24-36`, `24"-36"`, `24 - 36`: a size, a range or a sum. A fraction taken from a length with a unit is a sum. */
function isDashRange(items: readonly Item[], at: number): boolean {
  const [from, to] = [amountOf(items[at - 1]), amountOf(items[at + 1])]
  if (!from || !to || !isMark(items[at], '-')) return false
  if (items[at - 2]?.is === 'by') return false
  const spaced = items[at]?.gap && items[at + 1]?.gap
  return !spaced && !isThread(from, to)
}

/** `1/4-20` is a bolt. */
const isThread = (from: Amount, to: Amount): boolean =>
  from.number.form === 'fraction' &&
  to.number.form === 'whole' &&
  !from.unit &&
  to.number.value.compare(8) >= 0

function exactly(amount: Amount, governing: Unit | undefined, settings: ReadingSettings): readonly string[] {
  if (amount.size && amount.unit) return [inSystemOf(amount.size, amount.unit)]
  const value = typed(amount.number.value)
  if (isInch(amount)) return [`${value}in`]
  if (governing) return [`${value}${governing.name}`]
  return settings.units === undefined
    ? [`${value}in`, `${value}mm`]
    : [`${value}${settings.units === 'inch' ? 'in' : 'mm'}`]
}

const isInch = ({ number }: Amount): boolean => number.form === 'fraction' || number.form === 'mixed'

function readings(what: string, first: Amount, exact: readonly string[]): string {
  const [size = ''] = exact
  if (what === 'a range') return `any size from ${exact[0] ?? ''} to ${exact.at(-1) ?? ''}, or a sum`
  if (what !== 'a size and a little over or under it') return `${size} or another size near it`
  const inch =
    first.size && first.unit ? first.size : isInch(first) ? first.number.value.mul(IN.size) : undefined
  const hair =
    inch && first.unit?.system !== 'metric' ? [inch.add(IN.size.div(32)), inch.sub(IN.size.div(32))] : []
  const near = hair.filter((value) => value.compare(0) > 0).map((value) => inSystemOf(value, IN))
  return near.length > 0 ? `${size}, ${listed(near)}` : `${size} or a little to either side`
}
