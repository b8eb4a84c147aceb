import { z } from 'zod'
import { findSwaps } from '../../core/cutting/order/swaps.ts'
import { kitLabel, type MergedPart } from '../../core/group/mergeParts.ts'
import { INCH } from '../../core/measure/length.ts'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import { csvOf } from '../csv.ts'
import { counted, listTables } from '../cutListReply.ts'
import { fewCautions } from '../fewCautions.ts'
import { swapNote } from '../orderReply.ts'
import type { File, Reply } from '../reply.ts'
import type { Show } from '../show.ts'
import { showKept } from '../showKept.ts'
import { current, type Group, groupOf } from './group.ts'
import { groupFigures, kitCautions } from './groupReply.ts'
import { asCutList, mergedList, problemLines, type WorkedKit, workKits } from './kits.ts'

/** Parts that differ by less are easily taken for one another (common practice). */
const SWAPPED_WITHIN = INCH / 8

export const list = defineAction({
  summary: 'One cut list of all kits: what is the same size is one row',
  options: z.strictObject({}),
  run: async (_input, context) => {
    const group = current(await groupOf(context).read())
    const worked = workKits(group, context)
    return groupList(group, worked, mergedList(group, worked), context)
  },
})

/** The cut list of all kits, with whose each part is in a file. */
export function groupList(
  group: Group,
  worked: readonly WorkedKit[],
  merged: readonly MergedPart[],
  context: Context,
): Reply {
  const show = showKept(context, group.units)
  const rows = asCutList(merged)
  const now = rows.filter(({ later }) => !later)
  const onTheDay = rows.filter(({ later }) => later)
  const spare = merged.reduce((sum, part) => sum + part.spare, 0)
  const figures = groupFigures(group, worked, merged)
  const cautions = fewCautions(kitCautions(worked, context))
  return {
    answer: `Cut ${counted(Number(figures.parts), 'part')} in ${counted(merged.length, 'size')} for ${counted(Number(figures.kits), 'kit')}${group.posted ? `, version ${group.posted.version}` : ''}`,
    cautions: cautions.cautions,
    tables: [
      ...listTables(now, show, context.show).map(titled('Cut now')),
      ...listTables(onTheDay, show, context.show).map(titled('Cut on the day')),
    ],
    notes: [
      ...problemLines(worked),
      ...(spare > 0
        ? [`${counted(spare, 'spare strip')} among them (${group.spare} %, rounded up by row)`]
        : []),
      ...swapNote(
        findSwaps(
          rows.map(({ label, length, width = length }) => ({ id: label, length, width })),
          SWAPPED_WITHIN,
        ),
      ),
      ...worked
        .slice(0, 1)
        .map(
          ({ member }) => `whose each part is stands in the file, and in "group kit ${kitLabel(member.kit)}"`,
        ),
    ],
    files: [ownersFile(merged, show)],
    buttons: [
      { label: 'Sheets and boards', line: 'group layout' },
      { label: 'The group', line: 'group' },
      ...cautions.buttons,
    ],
    figures: { ...figures, sizes: merged.length, spare },
    audience: 'channel',
  }
}

const titled =
  (what: string) =>
  <Table extends { readonly title?: string }>(table: Table): Table => ({
    ...table,
    title: `${what}. ${table.title ?? ''}`,
  })

/** Every row with all its owners, for a spreadsheet. */
function ownersFile(merged: readonly MergedPart[], show: Show): File {
  const heading = [
    'part',
    'what',
    'from',
    'count',
    'spare',
    `length ${show.unit}`,
    `width ${show.unit}`,
    `thickness ${show.unit}`,
    'when',
    'whose',
  ]
  const rows = merged.map((part) => [
    part.label,
    part.names.join(' or '),
    part.from,
    part.count,
    part.spare,
    show.mark(part.length, 'into'),
    show.mark(part.width, 'into'),
    show.mark(part.thickness, 'mark', true),
    part.later ? 'on the day' : 'now',
    part.owners.map(({ label, count }) => (count === 1 ? label : `${count} ${label}`)).join(' '),
  ])
  return { name: 'group-parts.csv', type: 'text/csv', content: csvOf([heading, ...rows]) }
}
