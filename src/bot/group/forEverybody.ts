import type { Context } from '../context.ts'
import { showFor } from '../createContext.ts'
import { showCell } from '../format.ts'
import { settle } from '../preferences.ts'
import type { Cell, Reply, Table } from '../reply.ts'
import type { Show } from '../show.ts'
import type { Group } from './group.ts'

/** The context in which what is put up for a group is made: the same whoever asks, in whatever units they ask. */
export type ForEverybody = (group: Group) => Context

/**
 * What goes up for a whole channel is as the channel has settled it, else in the units that the shared plan was typed in.
 * What one member prefers, or typed for their own kit, changes nothing of it.
 */
export async function forEverybody(context: Context): Promise<ForEverybody> {
  const settled = settle({}, (await context.preferences.channel.read()) ?? {}, context.settings)
  return ({ units }) => ({
    ...context,
    settled,
    typed: undefined,
    show: showFor(settled, units, context.settings),
  })
}

/** The reply with every length printed already, for what is not shown in the units of the person who asks. */
export const inWords = ({ tables = [], ...reply }: Reply, show: Show): Reply => ({
  ...reply,
  tables: tables.map((table) => ({ ...table, rows: printed(table, show) })),
})

/** Lengths as words of one width, so that they stand to the right as numbers do. */
function printed({ columns, rows }: Table, show: Show): readonly (readonly Cell[])[] {
  const words = (cell: Cell | undefined) => (typeof cell === 'object' ? showCell(cell, show) : '')
  const widths = columns.map((_, column) => Math.max(0, ...rows.map((row) => words(row[column]).length)))
  return rows.map((row) =>
    row.map((cell, column) => (typeof cell === 'object' ? words(cell).padStart(widths[column] ?? 0) : cell)),
  )
}
