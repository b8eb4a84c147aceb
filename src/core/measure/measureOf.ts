import type Fraction from 'fraction.js'
import { withoutCount } from './count.ts'
import { type Group, groupsOf } from './group.ts'
import { amountOf, isMark, isWord, type Item, type Phrase, wordsOf } from './item.ts'
import type { Ambiguous, Invalid, LengthsRead, ReadingSettings } from './reading.ts'
import { impliedUnit, lengthOf, type Measured, type Resolved, resolveGroup, systemOf } from './resolve.ts'
import { roleOf } from './role.ts'
import { isSentence } from './sentenceWords.ts'
import type { Unit } from './unit.ts'
import { isKnownThing, NAMES_OF_LENGTHS } from './things.ts'
import { ambiguous, couldBe, invalid, quoted, typed } from './wording.ts'

/**
 * One length (`24in`, `3/32 kerf`), or a size: numbers joined by x, or a shape (`12in round pot`). Undefined when roles, a
 * count or the words of a sentence make it a phrase of several things.
 */
export function measureOf(
  phrase: Phrase,
  settings: ReadingSettings,
): LengthsRead | Ambiguous | Invalid | undefined {
  const groups = groupsOf(phrase.items)
  const [group] = groups
  const crowded = tooMany(phrase, groups)
  if (crowded) return crowded
  if (!group || groups.length > 1 || withoutCount(phrase.items).count !== undefined) return undefined
  const shaped = group.terms.some(({ shape }) => shape !== undefined)
  if (
    isSentence(outside(phrase.items, group)) ||
    (!shaped && group.terms.some(({ roles }) => roles.length > 0))
  )
    return undefined
  if (outside(phrase.items, group).some((item) => item.is === 'word' && roleOf(item.text))) return undefined
  const strange = strangeWord(phrase, group)
  if (strange) return strange
  const resolved = resolveGroup(group, {
    settings,
    evidence: [],
    expected: hasLengthName(phrase.items),
    object: shaped,
  })
  return resolved.status === 'read' ? sizeRead(resolved, group) : resolved
}

/** A size of more than three numbers, or an x with no number on one side. */
function tooMany({ text, items }: Phrase, groups: readonly Group[]): Invalid | undefined {
  if (groups.some(({ terms }) => terms.length > 3))
    return invalid(`cannot read ${quoted(text)}: a size has at most three numbers; write 24 x 36 x 12in`)
  const stray = withoutCount(items).items.some(
    (item, at, all) => item.is === 'by' && !groupsOf(all).some(({ start, end }) => at >= start && at < end),
  )
  return stray
    ? invalid(`cannot read ${quoted(text)}: an x has no number on one side; write 24 x 36in`)
    : undefined
}

const hasLengthName = (items: readonly Item[]): boolean =>
  wordsOf(items).some((word) => NAMES_OF_LENGTHS.test(word))

/** The items that no number of the group has taken. */
export const outside = (items: readonly Item[], { start, end }: Group): readonly Item[] => [
  ...items.slice(0, start),
  ...items.slice(end),
]

function sizeRead({ measured, note }: Resolved, { terms }: Group): LengthsRead | Invalid {
  const round = terms.some(({ shape }) => shape === 'round')
  const lengths = measured.flatMap(sides)
  if (lengths.length > 3) return invalid('a size has at most three numbers; write 24 x 36 x 12in')
  const kind = lengths.length > 1 || round ? 'size' : 'length'
  return {
    status: 'read',
    kind,
    lengths,
    units: systemOf(measured.map(({ unit }) => unit)),
    ...(round && { round }),
    ...(note !== undefined && { note }),
  }
}

const SIDES = { round: 1, square: 2, cube: 3 } as const

/** A number that is said to be square is two sides, and one of a cube three. */
export const sides = ({ term, size }: Measured): readonly LengthsRead['lengths'][number][] =>
  Array.from({ length: SIDES[term.shape ?? 'round'] }, () => lengthOf(size))

/** Words that change the number beside them by something that is not said in figures. */
const CHANGES =
  /^(?:less|plus|minus|under|over|below|above|past|beyond|more|half|twice|double|triple|times|without|except|short|extra|another|almost|not)$/u

/** `5 bananas`: a bare number before a word that is no unit and no known thing. */
function strangeWord({ text, items }: Phrase, group: Group): Invalid | Ambiguous | undefined {
  const rest = outside(items, group)
  const stray = rest.find(
    (item) => (item.is === 'mark' && !isMark(item, ',', '.', '(', ')', '!', ':', ';')) || item.is === 'by',
  )
  const changed = rest.find((item) => isWord(item, CHANGES))
  if (changed)
    return ambiguous(
      `${quoted(text)} says something more about its number (${changed.text}) that is not given in figures; write the length itself, such as ${united(group.terms[0]?.amount.text ?? '24')}`,
    )
  if (stray)
    return invalid(
      `cannot read ${quoted(text)}: ${quoted(stray.text)} has no place there; write 24in or 24 x 36in`,
    )
  const bare = group.terms.every(({ amount }) => !amount.unit) && !group.trailing
  const after = items[group.end]
  const odd = bare && after?.is === 'word' && !isKnownThing(after.text) ? after.text : undefined
  if (odd === undefined) return undefined
  return invalid(
    `cannot read ${quoted(text)}: ${quoted(odd)} is no unit that a board is measured in; write ${group.terms.at(-1)?.amount.text ?? '24'}in or ${group.terms.at(-1)?.amount.text ?? '600'}mm`,
  )
}

/** What the units and fractions of some groups say about the bare numbers of the others. */
export const evidenceOf = (groups: readonly Group[]): readonly Unit[] =>
  groups.flatMap(({ terms, trailing }) => [
    ...terms.flatMap(({ amount }) => impliedUnit(amount) ?? []),
    ...(trailing ? [trailing] : []),
  ])

/** Two numbers side by side with nothing to say how they belong together: `1 1/2 1/4"`, `24 36`. */
export function adjacent({ text, items }: Phrase): Ambiguous | Invalid | undefined {
  const at = items.findIndex((item, index) => amountOf(item) && amountOf(items[index + 1]))
  const [first, second] = [amountOf(items[at]), amountOf(items[at + 1])]
  if (!first || !second || withoutCount(items).count !== undefined) return undefined
  const fractions = [first, second].every(
    ({ number }) => number.form === 'fraction' || number.form === 'mixed',
  )
  if (fractions && !first.unit && items.every((item) => item.is === 'amount'))
    return invalid(
      `cannot read ${quoted(text)}: it has two fractions in a row; write one, such as 1 3/4in, or a size, such as 1 1/2 x 1/4in`,
    )
  if (
    items.length === 2 &&
    !first.unit &&
    !second.unit &&
    /^\d{1,2}$/u.test(first.text) &&
    /^\d{3}$/u.test(second.text)
  )
    return couldBe(
      text,
      [`${first.text}${second.text}mm`, `${first.text}in x ${second.text}in`],
      'one number or two',
    )
  if (items.length === 2 && !first.unit && !second.unit && first.number.spoken && second.number.spoken)
    return spokenPair(text, first.number.value, second.number.value)
  return items.every((item) => item.is === 'amount' || isWord(item, /^(?:and|or)$/u))
    ? ambiguous(
        `${quoted(text)} could be a size or numbers apart; write ${items.map((item) => united(item.text)).join(' x ')} for a size, or one of them, such as ${united(first.text)}`,
      )
    : undefined
}

/** `six three`: 6 ft 3 in or 6 in x 3 in; `six twenty` is no feet and inches. */
function spokenPair(text: string, first: Fraction, second: Fraction): Ambiguous {
  const [a, b] = [typed(first), typed(second)]
  const inches = `${a}in x ${b}in`
  return second.compare(12) < 0
    ? couldBe(text, [`${a}ft ${b}in`, inches], 'feet and inches, or a size')
    : couldBe(text, [inches, `${a}mm x ${b}mm`])
}

const united = (text: string): string => (/[\d}]$/u.test(text) ? `${text}in` : text)
