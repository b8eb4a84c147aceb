import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { layOut } from '../src/bot/layoutJob.ts'
import { isSheets } from '../src/bot/layoutReply.ts'
import { length } from '../src/bot/option.ts'
import { orderTable, stepFigure } from '../src/bot/orderReply.ts'
import { INCH, MILLIMETRE, nanometres, toMillimetres } from '../src/core/measure/length.ts'
import { orderCuts } from '../src/core/cutting/order.ts'

export default defineCommand({
  name: 'cutorder',
  summary: 'The saw settings in order, each used once for all the parts that share it',
  examples: ['cutorder', 'cutorder safe=3in'],
  options: z.strictObject({
    safe: length('narrowest piece you leave between blade and fence', '2in').optional(),
  }),
  run: async ({ safe }, context) => {
    const { show, settings } = context
    const job = await layOut(context, settings.search.seconds)
    const safeWidth = safe ?? settings.safeRip
    const step =
      show.units === 'inch'
        ? nanometres(INCH / settings.jointTape)
        : nanometres(settings.fineMillimetreStep * MILLIMETRE)
    const orders = job.groups.map((laid) =>
      orderCuts({
        safeWidth,
        step,
        ...(isSheets(laid)
          ? { sheets: { problem: laid.group.problem, layouts: laid.layouts } }
          : { lengths: { problem: laid.group.problem, layouts: laid.layouts } }),
      }),
    )
    const steps = orders.flatMap((order) => order.steps)
    const cuts = orders.reduce((sum, { figures }) => sum + figures.cuts, 0)
    const swaps = orders.flatMap((order) => order.swaps)
    const narrowest = Math.min(
      ...steps.filter(({ kind, of }) => kind === 'rip' && of === 'sheet').map(({ setting }) => setting),
    )
    return {
      answer: `${steps.length} saw settings for ${cuts} cuts; start with ${steps[0]?.kind ?? 'nothing'} at ${steps[0] ? show.length(steps[0].mark as typeof safeWidth, 'mark', true) : 'all'}`,
      cautions: context.cautions({
        sheetCut: job.groups.some(isSheets),
        crosscut: true,
        cuts,
        ...(Number.isFinite(narrowest) ? { pieceAtFence: toMillimetres(nanometres(narrowest)) } : {}),
      }),
      tables: orders.map((order, index) => orderTable(order, job.groups[index]?.group.kind ?? 'sheet', show)),
      notes: [
        'each setting is from the fence or stop to the nearest tooth; cut every piece that needs it before you move on',
        ...swaps.map(
          ({ first, second }) => `${first} and ${second} are nearly the same size: mark them as you cut`,
        ),
        ...job.assumed.map((name) => `${name} assumed, for want of stock that suits (stock add)`),
      ],
      figures: {
        settings: orders.reduce((sum, { figures }) => sum + figures.settings, 0),
        cuts,
        steps: steps.map(stepFigure),
      },
    }
  },
})
