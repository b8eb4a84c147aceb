import type { Part, Spec } from '../core/plan.ts'
import type { PartChange, PlanDifference } from '../core/plan/difference.ts'
import { type Length, toMillimetres } from '../core/measure/length.ts'
import { purposeOf } from './planReply.ts'
import type { Cell, Figure, Table } from './reply.ts'
import type { Show } from './show.ts'
import { stockSize } from './stockSize.ts'

/** What a change of the plan did, as tables that fit a phone: parts as they were and are now, new ones, and those not needed. */
export function differenceTables({ parts }: PlanDifference, show: Show): readonly Table[] {
  const titled = { columns: ['', 'No', 'Long', 'For'] }
  return [
    {
      title: `Parts that changed (${show.unit})`,
      columns: ['', 'Was', 'Now', 'For'],
      rows: parts.flatMap((change) => changeRows(change, show)),
    },
    { title: `New parts (${show.unit})`, ...titled, rows: wholeRows(parts.filter(({ before }) => !before)) },
    { title: 'No longer needed', ...titled, rows: wholeRows(parts.filter(({ after }) => !after)) },
  ].filter(({ rows }) => rows.length > 0)
}

const wholeRows = (changes: readonly PartChange[]): readonly Cell[][] =>
  changes.flatMap(({ label, name, before, after }) => {
    const part = after ?? before
    return part ? [[label, part.count, { length: part.length, purpose: purposeOf(part) }, name]] : []
  })

/** Sides only: how thick the stock is says differenceNotes, once for all that is cut from it. */
const SIDES = ['length', 'width'] as const

function changeRows({ label, name, before, after, change }: PartChange, show: Show): readonly Cell[][] {
  if (!before || !after || !change) return []
  const short = name.replace(/ panel$/u, '')
  const rows = SIDES.filter((side) => isSeen(before[side], after[side], show)).map((side): Cell[] => [
    label,
    { length: before[side], purpose: purposeOf(before) },
    { length: after[side], purpose: purposeOf(after) },
    side === 'length' ? short : `${short} wide`,
  ])
  const count: Cell[][] = change.count === 0 ? [] : [[label, `${before.count}x`, `${after.count}x`, short]]
  return [...count, ...rows]
}

/** Whether the tape shows two lengths as different marks. */
const isSeen = (before: Length, after: Length, show: Show): boolean =>
  show.mark(before, 'into') !== show.mark(after, 'into')

const WORDS = { length: ['longer', 'shorter'], width: ['wider', 'narrower'] } as const

/** By how much, one line for all the parts with the same change; stock that got thicker; what the tape does not show. */
export function differenceNotes({ parts }: PlanDifference, show: Show): readonly string[] {
  const lines = new Map<string, string[]>()
  const unseen: string[] = []
  const cut = parts.filter(({ cutouts }) => cutouts).map(({ label }) => label)
  for (const { label, before, after, change } of parts) {
    if (!before || !after || !change) continue
    for (const line of changeLines(before, after, change, show))
      lines.set(line, [...(lines.get(line) ?? []), label])
    if (SIDES.some((side) => change[side] !== 0 && !isSeen(before[side], after[side], show)))
      unseen.push(label)
  }
  return [
    ...letterNote(parts),
    ...(cut.length > 0
      ? [`${cut.join(', ')} cut out otherwise: "project parts" has slots, notches and holes`]
      : []),
    ...[...lines].map(([line, which]) => `${which.join(', ')} ${line}`),
    ...(unseen.length > 0
      ? [`${unseen.join(', ')} changed by less than the tape shows: cut to the same mark`]
      : []),
  ]
}

const changeLines = (
  before: Part,
  after: Part,
  change: NonNullable<PartChange['change']>,
  show: Show,
): readonly string[] => [
  ...SIDES.filter((side) => change[side] !== 0).map((side) => {
    const by = stockSize(Math.abs(change[side]) as Length, show)
    return `${WORDS[side][change[side] > 0 ? 0 : 1]} by ${by}`
  }),
  ...(change.thickness === 0
    ? []
    : [`now ${stockSize(after.thickness, show)} thick, not ${stockSize(before.thickness, show)}`]),
]

/** The first line after a change of a plan from the first to the second spec: what it did to the whole. */
export function differenceAnswer(
  { parts, sizes }: PlanDifference,
  [was, is]: readonly [Spec, Spec],
  show: Show,
): string {
  const grooves = was.grooves === is.grooves ? [] : [`grooves in each panel now ${is.grooves || 'none'}`]
  const whole = sizes
    .filter(({ name }) => name.startsWith('outside') || name === 'height' || name.startsWith('inside'))
    .map(({ name, after }) => `${name} now ${show.length(after, 'cover')}`)
  const said = [...partWords(parts), ...grooves, ...whole]
  return said.length === 0 ? 'Nothing changes: every part stays as it is' : said.join('; ')
}

/** Cut as before, under another letter. */
const isMoved = ({ change, cutouts }: PartChange): boolean =>
  change !== undefined && cutouts === undefined && Object.values(change).every((amount) => amount === 0)

/** Parts may be marked with their letters already, so that every other letter is said, whatever else changed. */
function letterNote(parts: readonly PartChange[]): readonly string[] {
  const letters = parts.flatMap(({ before, after }) =>
    before && after && before.label !== after.label ? [`${before.label} is ${after.label} now`] : [],
  )
  return letters.length === 0 ? [] : [`other letters: ${letters.join(', ')}`]
}

/** `4 parts change, 2 are new, 1 goes`; nothing where none does. */
function partWords(parts: readonly PartChange[]): readonly string[] {
  const fresh = parts.filter(({ before }) => !before).length
  const gone = parts.filter(({ after }) => !after).length
  const moved = parts.filter(isMoved).length
  const same = parts.length - fresh - gone - moved
  const words = [
    same === 0 ? '' : same === 1 ? '1 part changes' : `${same} parts change`,
    fresh === 0 ? '' : fresh === 1 ? '1 part is new' : `${fresh} parts are new`,
    gone === 0 ? '' : gone === 1 ? '1 part goes' : `${gone} parts go`,
    moved === 0 ? '' : moved === 1 ? '1 has another letter' : `${moved} have other letters`,
  ].filter((word) => word !== '')
  return words.length === 0 ? [] : [words.join(', ')]
}

export const differenceFigures = ({ parts, sizes }: PlanDifference): Readonly<Record<string, Figure>> => ({
  changedParts: parts.map(({ label, name, before, after, change, cutouts }) => ({
    label,
    name,
    before: before ? inMillimetres(before) : null,
    after: after ? inMillimetres(after) : null,
    change: change ? inMillimetres(change) : null,
    ...(cutouts ? { cutouts } : {}),
  })),
  changedSizes: sizes.map(({ name, before, after }) => ({
    name,
    before: toMillimetres(before),
    after: toMillimetres(after),
  })),
})

const inMillimetres = ({
  count,
  length,
  width,
  thickness,
}: Pick<Part, 'count' | 'length' | 'width' | 'thickness'>): Figure => ({
  count,
  length: toMillimetres(length),
  width: toMillimetres(width),
  thickness: toMillimetres(thickness),
})
