import { kitLabel } from '../../core/group/mergeParts.ts'
import { type KitSteps, STATIONS } from '../../core/group/stations.ts'
import type { KitProgress } from '../../core/group/ticks.ts'
import type { Context } from '../context.ts'
import { dayOf } from '../group/stations.ts'
import type { Table } from '../reply.ts'
import type { Show } from '../show.ts'
import type { HandoutCell, HandoutTable, Section } from './handout.ts'
import { points } from './points.ts'
import { printTable } from './printTable.ts'

/** The day by station: what there is to do, who does it, and a box for each kit at each; nothing where nothing is built. */
export function stationSection(
  kits: readonly KitSteps[],
  progress: readonly KitProgress[],
  show: Show,
  context: Context,
): readonly Section[] {
  if (kits.length === 0) return []
  const day = dayOf(kits, show, context)
  return [
    {
      title: 'Stations',
      blocks: [
        { block: 'words', text: day.answer, strong: true },
        workTable(day.table, show),
        ...points(day.notes),
        ...day.apart.map((table) => printTable(table, show, { boxes: true, strong: ['Set'] })),
        ticksOf(progress),
      ],
    },
  ]
}

function workTable(work: Table, show: Show): HandoutTable {
  const table = printTable(work, show, {
    headings: { No: 'Pieces', Set: 'Saw settings', Min: 'Minutes', Who: 'People' },
  })
  // The last column takes the rest of the page; set to the right its numbers would stand far from theirs.
  const columns = table.columns.map((column, index) =>
    index === table.columns.length - 1 ? { ...column, right: false } : column,
  )
  return { ...table, columns }
}

/** A box for each kit at each station that it passes, ticked where it is done. */
function ticksOf(progress: readonly KitProgress[]): HandoutTable {
  const used = STATIONS.filter((station) => progress.some(({ states }) => states[station] !== 'none'))
  return {
    block: 'table',
    title: 'Tick off what is done',
    columns: [
      { heading: 'Kit', strong: true },
      ...used.map((station) => ({ heading: `${station.slice(0, 1).toUpperCase()}${station.slice(1)}` })),
    ],
    rows: progress.map(({ kit, states }): readonly HandoutCell[] => [
      kitLabel(kit),
      ...used.map((station): HandoutCell => {
        if (states[station] === 'none') return '-'
        return { boxes: 1, ...(states[station] === 'done' && { ticked: 1 }) }
      }),
    ]),
  }
}
