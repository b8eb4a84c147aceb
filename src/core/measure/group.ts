import type { Amount } from './amount.ts'
import { amountOf, isMark, isWord, type Item } from './item.ts'
import { roleOf } from './role.ts'
import { type Unit, unitOf } from './unit.ts'

/** One number of a size with the words that label it. */
export interface Term {
  readonly amount: Amount
  /** `wide`, `h`, `inside`: in the order typed. */
  readonly roles: readonly string[]
  readonly shape?: 'square' | 'cube' | 'round' | undefined
  /** It is the width of a saw cut. */
  readonly kerf: boolean
  /** Where its first and one past its last item stand. */
  readonly start: number
  readonly end: number
}

/** Numbers that belong together: joined by x, or each with its label. */
export interface Group {
  readonly terms: readonly Term[]
  /** A unit said once after the last label: `24 wide 36 tall inches`. */
  readonly trailing?: Unit | undefined
  readonly start: number
  readonly end: number
}

const KERF = /^(?:kerf|blade|sawblade)$/u
const ROUND = /^(?:round|dia|diam|diameter|⌀|circle|circular)$/u
const SQUARE = /^(?:square|sq|cube|cubed)$/u

/** The groups of numbers in a phrase, in order. */
export function groupsOf(items: readonly Item[]): readonly Group[] {
  const groups: Group[] = []
  for (let at = 0; at < items.length; ) {
    const group = groupAt(items, at)
    if (group) groups.push(group)
    at = group?.end ?? at + 1
  }
  return groups
}

function groupAt(items: readonly Item[], at: number): Group | undefined {
  const terms: Term[] = []
  let next = termAt(items, at)
  while (next) {
    terms.push(next)
    next = following(items, next)
  }
  const last = terms.at(-1)
  if (!last) return undefined
  const unit = trailing(items, last)
  return { terms, trailing: unit, start: at, end: unit ? last.end + 1 : last.end }
}

/** The term that belongs to the group of `term`: after an x, or beside it when both have labels. */
function following(items: readonly Item[], term: Term): Term | undefined {
  if (items[term.end]?.is === 'by') return termAt(items, term.end + 1)
  const from =
    isMark(items[term.end], ',', ';') || isWord(items[term.end], /^(?:and|by)$/u) ? term.end + 1 : term.end
  const beside = termAt(items, from)
  return beside && directional(term) && directional(beside) ? beside : undefined
}

const directional = ({ roles, shape }: Term): boolean => roles.length > 0 || shape === 'round'

function trailing(items: readonly Item[], { end, roles, amount }: Term): Unit | undefined {
  const item = items[end]
  if (item?.is !== 'word' || roles.length === 0 || amount.unit) return undefined
  return unitOf(item.text)
}

function termAt(items: readonly Item[], at: number): Term | undefined {
  const labels = prefix(items, at)
  const amount = amountOf(items[labels.end])
  if (!amount) return undefined
  const after = labels.words.length > 0 ? { words: [], end: labels.end + 1 } : suffix(items, labels.end + 1)
  const tail = labels.words.length > 0 ? shapes(items, after.end) : after
  const words = [...labels.words, ...tail.words]
  return {
    amount,
    roles: words.filter((word) => roleOf(word) && !ROUND.test(word)),
    shape: words.some((word) => ROUND.test(word))
      ? 'round'
      : words.some((word) => /^cube/u.test(word))
        ? 'cube'
        : words.some((word) => SQUARE.test(word))
          ? 'square'
          : undefined,
    kerf: words.some((word) => KERF.test(word)),
    start: at,
    end: tail.end,
  }
}

interface Labels {
  readonly words: readonly string[]
  readonly end: number
}

const isLabel = (item: Item | undefined): boolean =>
  (item?.is === 'word' && (roleOf(item.text) || KERF.test(item.text) || ROUND.test(item.text))) ||
  isMark(item, '⌀')

/** Labels before the number: `H900`, `height: 40`, `kerf of 1/8`, `Ø300`, `inside 465`. */
function prefix(items: readonly Item[], at: number): Labels {
  const words: string[] = []
  let end = at
  while (isLabel(items[end])) {
    words.push(items[end]?.text ?? '')
    end += 1
  }
  if (words.length > 0 && (isMark(items[end], ':', '=', '.') || isWord(items[end], /^(?:of|is)$/u))) end += 1
  return amountOf(items[end]) ? { words, end } : { words: [], end: at }
}

/** Labels after the number: `24 wide`, `18"H`, `12in round`, `25 in square`, `14in in diameter`, `1/8 saw blade`. */
function suffix(items: readonly Item[], at: number): Labels {
  const words: string[] = []
  let end = at
  for (;;) {
    const skipped = isWord(items[end], /^(?:in|saw|thin|is)$/u) && isLabel(items[end + 1]) ? end + 1 : end
    if (!isLabel(items[skipped]) && !isSquare(items, skipped)) return { words, end }
    if (amountOf(items[skipped + 1]) && !items[skipped + 1]?.gap && items[skipped]?.gap) return { words, end }
    words.push(items[skipped]?.text ?? '')
    end = skipped + 1
  }
}

function shapes(items: readonly Item[], at: number): Labels {
  const word = items[at]
  return isSquare(items, at) || isWord(word, ROUND)
    ? { words: [word?.text ?? ''], end: at + 1 }
    : { words: [], end: at }
}

const isSquare = (items: readonly Item[], at: number): boolean =>
  isWord(items[at], SQUARE) && !isWord(items[at + 1], /^(?:cut|end|corner|edge)$/u)
