import { z } from 'zod'
import { kitLabel } from '../../core/group/mergeParts.ts'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import { counted } from '../cutListReply.ts'
import type { PlanChoices } from '../planChoices.ts'
import type { Cell, Reply, Table } from '../reply.ts'
import type { Show } from '../show.ts'
import { showKept } from '../showKept.ts'
import { current, FIRST_PLAN, type Group, groupOf } from './group.ts'
import { groupFigures, missing, namesOf } from './groupReply.ts'
import { mergedList, problemLines, type WorkedKit, workKits } from './kits.ts'

export const show = defineAction({
  summary: 'Where the group stands: who builds what, and what is still open',
  options: z.strictObject({}),
  run: async (_input, context) => standing(current(await groupOf(context).read()), context),
})

/** Where a group stands: who builds what, and what is still open. */
export async function standing(group: Group, context: Context): Promise<Reply> {
  const worked = workKits(group, context)
  const merged = mergedList(group, worked)
  const taken = group.members.filter(({ waiting }) => !waiting).length
  const waiting = group.members.length - taken
  const open = group.needs.filter((need) => missing(need) > 0)
  return {
    answer: [
      `${group.title}${group.date ? `, ${group.date}` : ''}: ${taken} of ${group.places} places taken`,
      waiting > 0 ? `${waiting} waiting` : '',
      group.locked ? 'the list is locked' : '',
    ]
      .filter((part) => part !== '')
      .join(', '),
    tables: await memberTables(group, worked, context),
    notes: [
      ...problemLines(worked),
      ...planWords(group),
      ...(open.length > 0 ? [`nobody brings yet: ${open.map(({ name }) => name).join(', ')}`] : []),
      ...(group.posted ? [`version ${group.posted.version} is posted`] : []),
    ],
    buttons: [
      ...(group.locked ? [] : [{ label: 'Join', line: 'group join' }]),
      { label: 'The list', line: 'group list' },
      ...(open.length > 0 ? [{ label: 'Who brings what', line: 'group needs' }] : []),
    ],
    figures: groupFigures(group, worked, merged),
    audience: 'channel',
  }
}

async function memberTables(
  group: Group,
  worked: readonly WorkedKit[],
  context: Context,
): Promise<readonly Table[]> {
  const names = await namesOf(
    group.members.map(({ user }) => user),
    context,
  )
  const show = showKept(context, group.units)
  const rows = worked.map(({ member, choices }): Cell[] => [
    kitLabel(member.kit),
    sizeOf(choices, show),
    names.get(member.user) ?? member.user,
  ])
  const waiting = group.members
    .filter((member) => member.waiting)
    .map((member, index): Cell[] => [index + 1, names.get(member.user) ?? member.user])
  return [
    { title: `Kits (round what, ${show.unit})`, columns: ['Kit', 'Size', 'Who'], rows },
    { title: 'Waiting', columns: ['', 'Who'], rows: waiting },
  ].filter((table) => table.rows.length > 0)
}

/** `17x13`, or `14 round`: what the kit goes round. */
export function sizeOf({ object }: PlanChoices, show: Show): string {
  if (!object) return '-'
  return object.shape === 'round'
    ? `${show.mark(object.diameter)} round`
    : `${show.mark(object.length)}x${show.mark(object.width)}`
}

/** `2 plans: main, low`; nothing where there is only the first. */
function planWords({ plans }: Group): readonly string[] {
  const names = Object.keys(plans)
  return names.length === 1 && names[0] === FIRST_PLAN
    ? []
    : [`${counted(names.length, 'plan')}: ${names.join(', ')}`]
}
