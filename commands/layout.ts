import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { isSheets } from '../src/bot/laidJob.ts'
import { layoutFigures } from '../src/bot/layoutFigures.ts'
import { layOut, searchTerms } from '../src/bot/layoutJob.ts'
import { jobNotes, layoutAnswer, takeTable } from '../src/bot/layoutReply.ts'
import { layoutTables } from '../src/bot/layoutTables.ts'
import { wasteOf } from '../src/bot/layoutValue.ts'
import { count } from '../src/bot/option.ts'
import { shopStockSchema } from '../src/bot/shopStock.ts'

export default defineCommand({
  name: 'layout',
  summary: 'How many sheets and boards to take, and which part comes out of which',
  examples: ['layout', 'layout seconds=5'],
  options: z.strictObject({
    seconds: count('how long to look for better', 1, 8).optional(),
  }),
  run: async ({ seconds = 0 }, context) => {
    const { settings, settled } = context
    const job = await layOut(context, seconds || settings.search.seconds, searchTerms(context))
    const stock = await context.ofChannel('stock', shopStockSchema).read()
    const waste = Math.round(wasteOf(job) * 100)
    const more = job.groups.some(({ optimal }) => !optimal) && seconds < 8
    return {
      answer: layoutAnswer(job, stock?.currency),
      cautions: context.cautions({ sheetCut: job.groups.some(isSheets), crosscut: true }),
      tables: [...takeTable(job), ...layoutTables(job)],
      notes: [
        `${waste} % waste, kept offcuts not counted; kerf ${job.show.length(settled.kerf, 'mark', true)}`,
        ...jobNotes(job),
        ...(more ? ['more time may find better: layout seconds=8'] : []),
      ],
      buttons: [{ label: 'Cut order', line: 'cutorder' }],
      figures: layoutFigures(job),
    }
  },
})
