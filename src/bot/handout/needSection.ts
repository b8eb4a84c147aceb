import type { Group, Need } from '../group/group.ts'
import { missing } from '../group/groupReply.ts'
import type { HandoutCell, HandoutTable, Section } from './handout.ts'

/** Who brings what, with what nobody brings first; nothing where nothing is needed. */
export function needSection(
  { needs, brought }: Group,
  names: ReadonlyMap<string, string>,
): readonly Section[] {
  const who = ({ claims }: Need): string =>
    claims.map(({ user, count }) => `${names.get(user) ?? user}${count > 1 ? ` ${count}` : ''}`).join(', ') ||
    '-'
  const open = needs.filter((need) => missing(need) > 0)
  const covered = needs.filter((need) => missing(need) === 0)
  const blocks = [
    table(
      'Nobody brings yet',
      'Missing',
      open.map((need) => [{ boxes: 1 }, String(missing(need)), need.name, who(need)]),
    ),
    table(
      'Taken care of',
      'No.',
      covered.map((need) => [{ boxes: 1 }, String(need.count), need.name, who(need)]),
    ),
    table(
      'Sheets and boards that members bring',
      'No.',
      brought.map(({ user, item }) => [
        { boxes: 1 },
        String(item.onHand ?? 1),
        `${item.label}, ${item.name ?? item.kind}`,
        names.get(user) ?? user,
      ]),
    ),
  ].filter(({ rows }) => rows.length > 0)
  return blocks.length === 0 ? [] : [{ title: 'Who brings what', blocks }]
}

const table = (title: string, number: string, rows: readonly (readonly HandoutCell[])[]): HandoutTable => ({
  block: 'table',
  title,
  columns: [
    { heading: 'There' },
    { heading: number, strong: true, right: true },
    { heading: 'What' },
    { heading: 'Who' },
  ],
  rows,
})
