import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { layOut } from '../src/bot/layoutJob.ts'
import { isOptimal, layoutAnswer, layoutFigures, layoutTables, wasteOf } from '../src/bot/layoutReply.ts'
import { count } from '../src/bot/option.ts'

export default defineCommand({
  name: 'layout',
  summary: 'How many sheets and boards to take, and which part comes out of which',
  examples: ['layout', 'layout seconds=5'],
  options: z.strictObject({
    seconds: count('how long to look for better', 1, 8).optional(),
  }),
  run: async ({ seconds }, context) => {
    const job = await layOut(context, seconds ?? context.settings.search.seconds)
    return {
      answer: layoutAnswer(job),
      cautions: context.cautions({
        sheetCut: job.groups.some(({ group }) => group.kind === 'sheet'),
        crosscut: true,
      }),
      tables: layoutTables(job, context.show),
      notes: [
        `${Math.round(wasteOf(job) * 100)} % waste, kept offcuts not counted; kerf ${context.show.length(context.settled.kerf, 'mark', true)}`,
        ...job.assumed.map((name) => `${name} assumed, for want of stock that suits (stock add)`),
        ...(isOptimal(job) ? [] : ['more time may find better: layout seconds=8']),
      ],
      buttons: [{ label: 'Cut order', line: 'cutorder' }],
      figures: layoutFigures(job),
    }
  },
})
