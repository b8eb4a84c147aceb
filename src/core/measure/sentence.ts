import { boardChunk } from './boardChunk.ts'
import { countIn, withoutCount } from './count.ts'
import { type Group, groupsOf } from './group.ts'
import { amountOf, isMark, isWord, type Item, type Phrase } from './item.ts'
import type { Length } from './length.ts'
import { evidenceOf, sides } from './measureOf.ts'
import { withoutNumber } from './noNumber.ts'
import type { Ambiguous, AngleRead, Invalid, LengthsRead, ReadingSettings } from './reading.ts'
import { asked, resolveGroup, systemOf } from './resolve.ts'
import { isWholeSheet, sheetChunk } from './sheetChunk.ts'
import { isMaterial } from './sheetThickness.ts'
import { isPanelWord } from './stockWords.ts'
import { MM, type Unit } from './unit.ts'
import { ambiguous, invalid, quoted } from './wording.ts'

interface Found {
  readonly status: 'read'
  readonly lengths: readonly Length[]
  readonly units: readonly Unit[]
  readonly name?: string | undefined
  readonly note?: string | undefined
}

/**
 * A phrase of several numbers: labelled sides, counts, edits and questions. Its lengths come in the order typed; counts are
 * left out, boards are given at their real section, and a sheet at the thickness named, since a sentence may ask about it.
 */
export function sentenceOf(
  phrase: Phrase,
  settings: ReadingSettings,
): LengthsRead | AngleRead | Ambiguous | Invalid {
  const { items, count } = withoutCount(phrase.items)
  const groups = groupsOf(items).filter((group) => !isCount(items, group) && !isShare(group))
  if (groups.length === 0 && groupsOf(items).some(isShare)) return withoutNumber(phrase)
  if (groups.length === 0)
    return invalid(
      `cannot read ${quoted(phrase.text)}: it has a count and no length; write one, such as 3 @ 24in`,
    )
  const loose = unlinked(phrase, items, groups, count)
  if (loose) return loose
  const boards = groups.map((group) => stockIn(items, group, settings))
  const evidence = evidenceOf(groups.filter((_group, at) => boards[at] === undefined))
  const found: Found[] = []
  for (const [at, group] of groups.entries()) {
    const part = boards[at] ?? plain(items, group, evidence, settings)
    if (part.status !== 'read') return part
    found.push(part)
  }
  return combined(found, count)
}

/** Several numbers with no word to link them: `24" x 36", 18" x 24"`, `2x6-10`. */
function unlinked(
  { text }: Phrase,
  items: readonly Item[],
  groups: readonly Group[],
  count: number | undefined,
): Ambiguous | undefined {
  if (groups.length < 2 || count !== undefined || items.some((item) => item.is === 'word')) return undefined
  const first = items
    .slice(groups[0]?.start, groups[0]?.end)
    .map((item) => item.text)
    .join(' ')
  return ambiguous(
    `${quoted(text)} has numbers with nothing to say how they belong together; write one measure, such as ${/[\d}]$/u.test(first) ? `${first}in` : first}`,
  )
}

function combined(found: readonly Found[], count: number | undefined): LengthsRead {
  const notes = found.flatMap(({ note }) => note ?? [])
  const name = found.find((part) => part.name !== undefined)?.name
  return {
    status: 'read',
    kind: 'dimension',
    lengths: found.flatMap(({ lengths }) => lengths),
    units: systemOf(found.flatMap(({ units }) => units)),
    ...(name !== undefined && { name }),
    ...(count !== undefined && { count }),
    ...(notes.length > 0 && { note: notes.join('; ') }),
  }
}

function plain(
  items: readonly Item[],
  group: Group,
  evidence: readonly Unit[],
  settings: ReadingSettings,
): Found | Ambiguous | Invalid {
  const { terms } = group
  if (isThicknessInMillimetres(items, group)) return inMillimetres(group)
  const labelled = terms.some(({ roles, shape }) => roles.length > 0 || shape === 'round')
  const resolved = resolveGroup(group, { settings, evidence, expected: true, object: labelled })
  if (resolved.status !== 'read') return resolved
  const { measured, note } = resolved
  return { status: 'read', lengths: measured.flatMap(sides), units: measured.map(({ unit }) => unit), note }
}

/** `18 MDF`, `ply is 18 not 19`: nobody has a sheet 18 in thick. */
function isThicknessInMillimetres(items: readonly Item[], { terms, start, end }: Group): boolean {
  const [term] = terms
  if (!term || terms.length > 1 || term.amount.unit || term.amount.number.form !== 'whole') return false
  const { value } = term.amount.number
  const back = isWord(items[start - 1], /^(?:not|vs)$/u) ? 5 : 2
  const near = [items[end], ...items.slice(Math.max(0, start - back), start)].some(
    (item) => item?.is === 'word' && isMaterial(item.text),
  )
  return near && value.compare(3) >= 0 && value.compare(40) <= 0
}

function inMillimetres({ terms }: Group): Found {
  const lengths = terms.map(({ amount }) => (Number(amount.number.value) * 1_000_000) as Length)
  return {
    status: 'read',
    lengths,
    units: [MM],
    note: `${terms[0]?.amount.text ?? ''} read as mm, a thickness`,
  }
}

/** A board (`from a 2x4`) or a sheet (`a 4x8 sheet`) inside a sentence; undefined for other numbers. */
function stockIn(
  items: readonly Item[],
  group: Group,
  settings: ReadingSettings,
): Found | Ambiguous | undefined {
  const { terms, end } = group
  if (terms.length < 2 || terms.some(({ roles, shape }) => roles.length > 0 || shape)) return undefined
  const after = [items[end], items[end + 1]].flatMap((item) => (item?.is === 'word' ? [item.text] : []))
  const chunk = { amounts: terms.map(({ amount }) => amount), after, of: false, tight: true }
  const context = {
    words: after,
    chunks: [chunk],
    settings,
    text: terms.map(({ amount }) => amount.text).join('x'),
  }
  const panel =
    after.slice(0, 1).some(isPanelWord) ||
    (isNamedSheet(items, group, settings) && chunk.amounts.length === 2)
  const part = panel
    ? sheetChunk(context, chunk, true)
    : boardChunk({ ...context, words: after.length > 0 ? after : ['from'] }, chunk)
  if (!part && isSheetPair(terms, settings)) return asked(group)
  if (!part || (part.status === 'ambiguous' && !panel))
    return part?.status === 'ambiguous' ? asked(group) : undefined
  return part.status === 'ambiguous'
    ? part
    : {
        status: 'read',
        lengths: part.lengths,
        units: part.lengths.map(() => part.unit),
        name: part.name,
        note: part.note,
      }
}

const isSheetPair = ([first, second]: Group['terms'], settings: ReadingSettings): boolean =>
  first !== undefined &&
  second !== undefined &&
  !first.amount.unit &&
  !second.amount.unit &&
  isWholeSheet(first.amount, second.amount, settings)

/** `from a 4x8`: in a sentence the name of a whole sheet, with a word before it that makes it a thing, is the sheet. */
function isNamedSheet(items: readonly Item[], { terms, start }: Group, settings: ReadingSettings): boolean {
  const [first, second] = terms
  const thing = isWord(items[start - 1], /^(?:an?|from|of|per|the|one|each)$/u)
  return (
    thing &&
    first !== undefined &&
    second !== undefined &&
    !first.amount.unit &&
    !second.amount.unit &&
    isWholeSheet(first.amount, second.amount, settings)
  )
}

/** The `half` of `half the thickness`: a share of something else, not a length. */
const isShare = ({ terms }: Group): boolean =>
  terms.length === 1 &&
  terms.every(({ amount }) => !amount.unit && /^(?:half|quarter|third)$/u.test(amount.text))

const COUNT_AFTER =
  /^(?:equal|equally|even|evenly|off|ea|each|pcs|pc|pieces?|sets?|kits?|times|of|more|identical|same)$/u
const NOT_PLURAL = /^(?:is|this|his|its|across|as|was|plus|less|ins|has)$/u

/** `four 24s`, `six 3-1/2 slats`, `into 4 equal`, `3 shelves`, `3 @ 4 ft`: a number of things, not a length. */
function isCount(items: readonly Item[], { terms, start, end }: Group): boolean {
  const [term] = terms
  if (!term || terms.length > 1 || term.kerf || term.roles.length > 0 || countIn(term.amount) === undefined)
    return false
  const [before, after] = [items[start - 1], items[end]]
  if (isWord(before, /^(?:into|qty|quantity)$/u) || isMark(after, '@')) return true
  if (amountOf(after) && !isWord(before, /^an?$/u)) return true
  if (after?.is !== 'word' || isWord(before, /^(?:an?|to)$/u)) return false
  if (COUNT_AFTER.test(after.text) || (after.text === 'at' && amountOf(items[end + 1]))) return true
  const things = /[^s]s$/u.test(after.text) && !NOT_PLURAL.test(after.text)
  return things || (term.amount.number.spoken === true && after.gap && term.amount.number.value.equals(1))
}
