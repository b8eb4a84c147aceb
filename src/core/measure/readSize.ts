import { withoutCount } from './count.ts'
import { type Group, groupsOf } from './group.ts'
import { amountOf, isMark, isWord, type Item, type Phrase } from './item.ts'
import type { Length } from './length.ts'
import { outside, sides } from './measureOf.ts'
import type { Ambiguous, Invalid, ReadingSettings, UnitSystem } from './reading.ts'
import { phraseOrAnswer } from './refuseFirst.ts'
import { type Resolved, resolveGroup, systemOf } from './resolve.ts'
import { directionOf, type Role } from './role.ts'
import { isWholeSheet, sheetOrSize } from './sheetChunk.ts'
import { invalid, quoted } from './wording.ts'

/** The size of an object, an opening, a panel or an area. */
export interface SizeRead {
  readonly status: 'read'
  /** A diameter first, then a height where one was given. */
  readonly round: boolean
  /** One to three, in the order typed. */
  readonly lengths: readonly Length[]
  /** What each length is, where any was labelled; those left bare take the first names that are free. */
  readonly roles?: readonly Role[] | undefined
  readonly units: UnitSystem
  /** The other words, lower case: what the thing is. */
  readonly words: readonly string[]
  readonly note?: string | undefined
}

/**
 * A size: `17in x 13in`, `17in round`, `Ø430mm`, `24in square`, `29 hi x 46 wide in`, `generator 24in x 18in`. Bare numbers are
 * asked about unless the units are settled or only mm are possible; no board or sheet name is looked for.
 */
export function readSize(text: string, settings: ReadingSettings): SizeRead | Ambiguous | Invalid {
  const phrase = phraseOrAnswer(text, settings, 'a size')
  if ('status' in phrase) return phrase
  const groups = groupsOf(phrase.items)
  const [group] = groups
  const refusal = refused(phrase, groups)
  if (refusal || !group) return refusal ?? severalSizes(phrase)
  const [first, second] = group.terms.length === 2 ? group.terms.map(({ amount }) => amount) : []
  if (
    first &&
    second &&
    !first.unit &&
    !second.unit &&
    !group.trailing &&
    isWholeSheet(first, second, settings)
  )
    return sheetOrSize(first, second)
  const shaped = group.terms.some(({ roles, shape }) => roles.length > 0 || shape !== undefined)
  const resolved = resolveGroup(roundOf(phrase, group), {
    settings,
    evidence: [],
    expected: true,
    object: shaped,
  })
  return resolved.status === 'read' ? sizeRead(resolved, phrase, group) : resolved
}

function refused(phrase: Phrase, groups: readonly Group[]): Invalid | undefined {
  const [group] = groups
  if (!group) return severalSizes(phrase)
  if (withoutCount(phrase.items).count !== undefined)
    return invalid(
      `cannot read ${quoted(phrase.text)} as a size: it has a count as well; write the size of one, such as 17in x 13in`,
    )
  if (groups.length > 1) return severalSizes(phrase)
  const odd = outside(phrase.items, group).find((item) => !mayStandBeside(item))
  return (
    odd &&
    invalid(
      `cannot read ${quoted(phrase.text)} as a size: ${quoted(odd.text)} has no place there; write 17in x 13in`,
    )
  )
}

const severalSizes = ({ text }: Phrase): Invalid =>
  invalid(
    `cannot read ${quoted(text)} as one size: its numbers do not belong together; write 17in x 13in or 17in round`,
  )

const mayStandBeside = (item: Item): boolean =>
  item.is === 'word' ? item.text !== 'x' : isMark(item, ',', '.', '(', ')', ':', ';', '!', '-', '/', '&')

/** `a round 12in pot`: the shape stands apart from its number. */
function roundOf({ items }: Phrase, group: Group): Group {
  const apart = outside(items, group).some(
    (item, at, rest) => isWord(item, /^(?:round|circular|diameter|dia)$/u) && !isWord(rest[at - 1], /^all$/u),
  )
  const [first, ...others] = group.terms
  if (!apart || !first || first.shape || group.terms.length > 2) return group
  return { ...group, terms: [{ ...first, shape: 'round' }, ...others] }
}

function sizeRead({ measured, note }: Resolved, phrase: Phrase, group: Group): SizeRead | Invalid {
  const lengths = measured.flatMap(sides)
  const round = measured.some(({ term }) => term.shape === 'round')
  if (lengths.length > 3 || (round && lengths.length > 2))
    return invalid(
      `cannot read ${quoted(phrase.text)} as a size: it has too many numbers; write 24 x 36 x 12in, or 17in round x 12in high`,
    )
  const roles = rolesOf(measured, round)
  const words = outside(phrase.items, group).flatMap((item) =>
    item.is === 'word' && !amountOf(item) ? [item.text] : [],
  )
  const units = systemOf(measured.map(({ unit }) => unit))
  return {
    status: 'read',
    round,
    lengths,
    ...(roles && { roles }),
    units,
    words: words.filter((word) => !/^(?:an?|the|of|is|round|circular)$/u.test(word)),
    ...(note !== undefined && { note }),
  }
}

/** The label of each length; undefined when none was labelled. */
function rolesOf(measured: Resolved['measured'], round: boolean): readonly Role[] | undefined {
  const said = measured.flatMap(({ term, size, unit }) => {
    const role =
      term.shape === 'round' ? 'diameter' : term.roles.map(directionOf).find((found) => found !== undefined)
    return sides({ term, size, unit }).map((_side, at) =>
      at === 0 && term.shape !== 'square' && term.shape !== 'cube' ? role : undefined,
    )
  })
  if (!round && said.every((role) => role === undefined)) return undefined
  const free = (round ? ['height'] : ['length', 'width', 'height', 'depth']).filter(
    (role) => !said.includes(role as Role),
  ) as Role[]
  return said.map((role) => role ?? free.shift() ?? 'length')
}
