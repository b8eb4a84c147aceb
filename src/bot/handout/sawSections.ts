import type { LaidJob } from '../laidJob.ts'
import { jobNotes, layoutAnswer, takeTable } from '../layoutReply.ts'
import { layoutTables } from '../layoutTables.ts'
import { wasteOf } from '../layoutValue.ts'
import { allLayoutPictures } from '../picturesOfLayouts.ts'
import type { Reply } from '../reply.ts'
import type { Block, Section } from './handout.ts'
import { points } from './points.ts'
import { printTable } from './printTable.ts'

/** How every sheet, board and strip is cut: what to take, each way with its picture. */
export function layoutSection(job: LaidJob, currency: string | undefined, kerf: string): Section {
  const waste = Math.round(wasteOf(job) * 100)
  const pictures = allLayoutPictures(job)
  return {
    title: 'Layouts',
    blocks: [
      { block: 'words', text: layoutAnswer(job, currency), strong: true },
      ...takeTable(job).map((table) => printTable(table, job.show, { headings: { No: 'No.', '': 'Of' } })),
      ...layoutTables(job).map((table) =>
        printTable(table, job.show, {
          headings: { '': 'Way', No: 'How many', Left: 'Left over', Parts: 'Parts' },
          strong: ['No', 'Parts'],
        }),
      ),
      ...points([`${waste} % waste, kept offcuts not counted; kerf ${kerf}`, ...jobNotes(job)]),
      ...pictures.map(
        ({ name, alt, scene }): Block => ({
          block: 'picture',
          alt,
          scene,
          tallest: name.startsWith('sheet') ? 0.47 : 0.75,
        }),
      ),
    ],
  }
}

/** The saw settings in order, each with a box to tick. */
export const orderSection = (order: Reply, job: LaidJob): Section => ({
  title: 'Cut order',
  blocks: [
    { block: 'words', text: order.answer, strong: true },
    ...(order.tables ?? []).map((table) =>
      printTable(table, job.show, { headings: { '': 'Step', Set: 'Set' }, boxes: true, strong: ['Set'] }),
    ),
    // What the layouts say already is not said again.
    ...points((order.notes ?? []).filter((note) => !jobNotes(job).includes(note))),
  ],
})
