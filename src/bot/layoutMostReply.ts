import { showMoney } from '../core/measure/money.ts'
import { toMillimetres } from '../core/measure/length.ts'
import { counted, labelled } from './cutListReply.ts'
import { isSheets, type LaidJob, takenOf } from './laidJob.ts'
import { layoutFigures } from './layoutFigures.ts'
import type { By, MostAsked, MostFound } from './layoutMost.ts'
import type { Cell, Figure, Table } from './reply.ts'
import type { Show } from './show.ts'

/** The most that was found, with what it comes to. */
export interface MostReplied {
  readonly asked: MostAsked
  readonly found: MostFound
  readonly show: Show
  readonly currency?: string | undefined
}

/** What came out, as a job whose layouts can be shown like any other. */
export const jobOf = ({ asked, found, show }: MostReplied): LaidJob => {
  const groups = found.groups.map(({ laid }) => laid)
  const milliseconds = groups.reduce((sum, laid) => sum + laid.milliseconds, 0)
  return { parts: asked.parts, show, groups, assumed: [], milliseconds }
}

/** How many of each part come out, by label. */
export function madeOf({ groups }: MostFound): ReadonlyMap<string, number> {
  const made = new Map<string, number>()
  for (const { laid } of groups)
    for (const layout of laid.layouts) {
      const parts = 'placements' in layout ? layout.placements.map(({ part }) => part) : layout.parts
      for (const part of parts) made.set(part, (made.get(part) ?? 0) + layout.count)
    }
  return made
}

/** What the most is worth in cents; undefined where nobody said what the parts are. */
const worthOf = ({ asked, found }: MostReplied): number | undefined =>
  asked.worths.size === 0
    ? undefined
    : [...madeOf(found)].reduce((sum, [label, count]) => sum + count * (asked.worths.get(label) ?? 0), 0)

/** How far below its bound the group is that is furthest below, as a part of the bound; 0 where all are proven. */
const gapOf = ({ groups }: MostFound): number =>
  Math.max(
    0,
    ...groups.map(({ laid, value, upperBound }) =>
      laid.optimal || upperBound <= 0 ? 0 : (upperBound - value) / upperBound,
    ),
  )

/** Proven of all together: none of them could have had what another took. */
const isProven = ({ groups }: MostFound): boolean =>
  groups.every(({ laid }) => laid.optimal) &&
  !groups.some(({ laid }, at) =>
    groups.some((other, place) => place !== at && [...takenOf(laid).keys()].some((key) => suits(other, key))),
  )

const suits = ({ laid }: MostFound['groups'][number], label: string): boolean =>
  laid.group.stock.some((item) => item.label === label)

/** Kinds of parts that the first line has room for. */
const MOST_KINDS = 5

/** The first line: how many come out of how much, and whether more could. */
export function mostAnswer(replied: MostReplied): string {
  const { found, currency, asked } = replied
  const made = madeOf(found)
  const all = [...made.values()].reduce((sum, count) => sum + count, 0)
  const kinds = [...made].map(([label, count]) => `${count} ${label}`)
  const which = made.size > 1 && made.size <= MOST_KINDS ? ` (${kinds.join(', ')})` : ''
  const worth = worthOf(replied)
  const price = worth === undefined ? '' : `, worth ${showMoney(worth, currency)}`
  if (all === 0) return 'Nothing: no part comes out of this stock'
  return `${all === 1 || asked.parts.length > 1 ? counted(all, 'part') : `${all} parts`}${which} out of ${stockWords(found)}${price}; ${proof(found)}`
}

function stockWords({ groups }: MostFound): string {
  const count = (sheets: boolean) =>
    groups.filter(({ laid }) => isSheets(laid) === sheets).reduce((sum, { laid }) => sum + laid.pieces, 0)
  const said = [[count(true), 'sheet'] as const, [count(false), 'board'] as const].filter(
    ([pieces]) => pieces > 0,
  )
  return said.map(([pieces, what]) => counted(pieces, what)).join(' and ')
}

function proof(found: MostFound): string {
  if (isProven(found)) return 'proven, no more will come out'
  const gap = gapOf(found)
  return gap > 0
    ? `at most ${Math.max(0.1, Math.ceil(gap * 1000 - 1e-9) / 10)} % more could`
    : 'not proven to be the most'
}

/** How many of each part, with its size, and how many stay uncut. */
export function madeTable({ asked, found, show }: MostReplied, limited: ReadonlySet<string>): Table {
  const made = madeOf(found)
  const rows = asked.parts.map(({ label, count, length, width, from }): Cell[] => {
    const size = from === 'sheet' && width !== undefined ? [length, width] : [length]
    const out = made.get(label) ?? 0
    return [
      label,
      limited.has(label) ? `${out} of ${count}` : out,
      size.map((side) => show.mark(side, 'into')).join(' x '),
    ]
  })
  return { title: `Comes out (${show.unit})`, columns: ['', 'No', 'Size'], rows }
}

const BY_WORDS: Readonly<Record<By, string>> = {
  count: 'as many pieces as there can be',
  size: 'as much wood as there can be in the parts (by=count for the most pieces)',
  worth: 'as much worth as there can be',
}

/** What was meant by the most, and what does not come out of this stock at all. */
export function mostNotes({ asked, found }: MostReplied): readonly string[] {
  const made = madeOf(found)
  const none = asked.parts
    .map(({ label }) => label)
    .filter((label) => !made.has(label) && !found.unsuited.includes(label))
  return [
    ...(asked.parts.length > 1 ? [BY_WORDS[asked.by]] : []),
    ...(none.length > 0 ? [`${labelled(none)}: none comes out`] : []),
    ...(found.unsuited.length > 0 ? [`${labelled(found.unsuited)}: nothing on hand suits`] : []),
  ]
}

/**
 * The most as numbers: `count` pieces; `worth` in units of the currency, null where none is given; `upperBound` what
 * cannot be passed, in pieces, units of the currency or mm2 (mm of boards), null where sheets and boards do not add up. Nothing
 * is bought, so `cost` and `lowerBound` are null.
 */
export function mostFigures(replied: MostReplied): Readonly<Record<string, Figure>> {
  const { asked, found } = replied
  const { sheets, boards, waste, offcuts, sheetLayouts, boardLayouts, milliseconds } = layoutFigures(
    jobOf(replied),
  )
  const made = madeOf(found)
  const worth = worthOf(replied)
  const isOneKind = new Set(found.groups.map(({ laid }) => isSheets(laid))).size <= 1
  const bound = found.groups.reduce((sum, { upperBound }) => sum + upperBound, 0)
  const adds = asked.by !== 'size' || isOneKind
  return {
    count: [...made.values()].reduce((sum, count) => sum + count, 0),
    worth: worth === undefined ? null : worth / 100,
    cost: null,
    lowerBound: null,
    by: asked.by,
    upperBound: adds ? (asked.by === 'worth' ? bound / 100 : bound) : null,
    optimal: isProven(found),
    gap: gapOf(found),
    parts: asked.parts.map(({ label, length, width, from }) => ({
      label,
      count: made.get(label) ?? 0,
      length: toMillimetres(length),
      width: from === 'sheet' && width !== undefined ? toMillimetres(width) : null,
    })),
    sheets: sheets ?? 0,
    boards: boards ?? 0,
    waste: waste ?? 0,
    offcuts: offcuts ?? [],
    sheetLayouts: sheetLayouts ?? [],
    boardLayouts: boardLayouts ?? [],
    milliseconds: milliseconds ?? 0,
  }
}
