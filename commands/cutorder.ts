import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { isSheets, type LaidGroup, type LaidJob } from '../src/bot/laidJob.ts'
import { layOut, searchTerms } from '../src/bot/layoutJob.ts'
import { jobNotes } from '../src/bot/layoutReply.ts'
import { length } from '../src/bot/option.ts'
import { orderTable, roundingNote, stepFigure, swapNote, uncutNote } from '../src/bot/orderReply.ts'
import { ripFigures, type Rips, ripsOf, ripTable } from '../src/bot/ripTable.ts'
import type { Show } from '../src/bot/show.ts'
import type { CutOrder } from '../src/core/cutting/order/cutOrder.ts'
import { INCH, type Length, MILLIMETRE, nanometres, toMillimetres } from '../src/core/measure/length.ts'

/** One group of parts: its boards ripped, then everything sawn to size. */
interface Sawn {
  readonly laid: LaidGroup
  readonly rips: readonly Rips[]
  readonly order: CutOrder
}

export default defineCommand({
  name: 'cutorder',
  summary: 'The saw settings in order, each used once for all the parts that share it',
  examples: ['cutorder', 'cutorder safe=3in'],
  options: z.strictObject({
    safe: length('narrowest piece you leave between blade and fence', '2in').optional(),
  }),
  run: async ({ safe: chosen }, context) => {
    const terms = searchTerms(context)
    const job = await layOut(context, context.settings.search.seconds, terms)
    const { show } = job
    const safe = chosen ?? context.settings.safeRip
    const step = stepOf(context, show)
    const sawn: Sawn[] = []
    for (const laid of job.groups) {
      const order = await context.search.orderCuts({ safeWidth: safe, step, ...sawing(laid) }, terms)
      sawn.push({ laid, rips: ripsOf(laid, context.settled.kerf), order })
    }
    return reply(job, sawn, { safe, step, context })
  },
})

const sawing = (laid: LaidGroup) =>
  isSheets(laid)
    ? { sheets: { problem: laid.group.problem, layouts: laid.layouts } }
    : { lengths: { problem: laid.group.problem, layouts: laid.layouts } }

/** The finest mark of the tape. */
const stepOf = ({ settings, settled }: Context, { units }: Show): Length =>
  units === 'inch'
    ? nanometres(INCH / Math.max(settled.tape, settings.jointTape))
    : nanometres(settings.fineMillimetreStep * MILLIMETRE)

interface Sawing {
  readonly safe: Length
  readonly step: Length
  readonly context: Context
}

function reply(job: LaidJob, sawn: readonly Sawn[], { safe, step, context }: Sawing) {
  const { show } = job
  const rips = sawn.flatMap((each) => each.rips)
  const ripped = rips.flatMap(({ steps }) => steps)
  const orders = sawn.map(({ order }) => order)
  const steps = orders.flatMap((order) => order.steps)
  const cuts = [...ripped.map(({ boards }) => boards), ...orders.map(({ figures }) => figures.cuts)]
  const allCuts = cuts.reduce((sum, count) => sum + count, 0)
  const figures = [...rips.flatMap((each) => ripFigures(each, safe, step)), ...steps.map(stepFigure)]
  const marked = [
    ...ripped.map(({ setting }) => ({ setting, mark: Math.round(setting / step) * step })),
    ...steps,
  ]
  return {
    answer: firstLine(sawn, marked.length, allCuts, show),
    cautions: context.cautions({
      sheetCut: job.groups.some(isSheets),
      crosscut: steps.some(({ kind }) => kind === 'crosscut'),
      cuts: allCuts,
      ...narrowest(sawn),
    }),
    tables: sawn.flatMap(({ laid, rips: own, order }) => [
      ...own.map((each) => ripTable(each, safe, show)),
      ...(order.steps.length > 0 ? [orderTable(order, laid.group.kind, show)] : []),
    ]),
    notes: [
      'each setting is from the fence or stop to the nearest tooth; cut every piece that needs it before you move on',
      ...roundingNote(marked, show),
      ...swapNote(orders.flatMap((order) => order.swaps)),
      ...uncutNote(orders),
      ...jobNotes(job),
    ],
    figures: {
      settings: ripped.length + orders.reduce((sum, order) => sum + order.figures.settings, 0),
      cuts: allCuts,
      steps: figures,
    },
  }
}

/** What to set the saw to first, and how much there is to do. */
function firstLine(sawn: readonly Sawn[], settings: number, cuts: number, show: Show): string {
  const said = `${settings} saw ${settings === 1 ? 'setting' : 'settings'} for ${cuts} ${cuts === 1 ? 'cut' : 'cuts'}`
  for (const { rips, order } of sawn) {
    const [rip] = rips[0]?.steps ?? []
    if (rip) return `${said}; start with rip at ${show.length(rip.setting, 'mark', true)}`
    const [step] = order.steps
    if (step)
      return `${said}; start with ${step.kind} at ${show.length(step.setting as Length, 'mark', true)}`
  }
  return 'Nothing to saw: the stock is the parts as it stands'
}

/** The narrowest strip that is ripped, and the narrowest piece that lies at the fence. */
function narrowest(sawn: readonly Sawn[]) {
  const rips = sawn.flatMap((each) => each.rips)
  const strips = rips.map(({ strip }) => strip)
  const atFence = [
    ...rips.flatMap(({ steps }) => steps.map(({ setting }) => setting as number)),
    ...sawn.flatMap(({ order }) =>
      order.steps.filter(({ kind, of }) => kind === 'rip' && of === 'sheet').map(({ setting }) => setting),
    ),
  ]
  return {
    ...(strips.length > 0 ? { ripWidth: toMillimetres(nanometres(Math.min(...strips))) } : {}),
    ...(atFence.length > 0 ? { pieceAtFence: toMillimetres(nanometres(Math.min(...atFence))) } : {}),
  }
}
