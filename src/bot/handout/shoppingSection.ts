import type { ShoppingJob } from '../shoppingJob.ts'
import { shoppingReply } from '../shoppingReply.ts'
import type { Show } from '../show.ts'
import type { Section } from './handout.ts'
import { points } from './points.ts'
import { printTable } from './printTable.ts'

/** What to buy, on a page to take along. */
export function shoppingSection(job: ShoppingJob, show: Show): Section {
  const { answer, tables = [], notes = [] } = shoppingReply(job)
  const money = job.book.currency === undefined ? 'Cost' : `Cost (${job.book.currency})`
  return {
    title: 'Shopping',
    onNewPage: true,
    blocks: [
      { block: 'words', text: answer, strong: true },
      ...tables.map((table) =>
        printTable(table, show, {
          headings: { No: 'No.', Cost: money, '': 'What' },
          boxes: true,
          strong: ['No'],
        }),
      ),
      ...points(notes),
    ],
  }
}
