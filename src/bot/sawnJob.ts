import type { CutOrder } from '../core/cutting/order/cutOrder.ts'
import { INCH, type Length, MILLIMETRE, nanometres, toMillimetres } from '../core/measure/length.ts'
import type { Context } from './context.ts'
import { isSheets, type LaidGroup, type LaidJob } from './laidJob.ts'
import type { Terms } from './layoutJob.ts'
import { jobNotes } from './layoutReply.ts'
import { orderTable, roundingNote, stepFigure, swapNote, uncutNote } from './orderReply.ts'
import { orderPictures } from './picturesOfLayouts.ts'
import type { Reply } from './reply.ts'
import { type Rips, ripFigures, ripsOf, ripTable } from './ripTable.ts'
import type { Show } from './show.ts'
import { type Marking, markingOf } from './showCovering.ts'

/** One group of parts: its boards ripped, then everything sawn to size. */
interface Sawn {
  readonly laid: LaidGroup
  readonly rips: readonly Rips[]
  readonly order: CutOrder
}

/**
 * The saw settings of a whole job in order, as a reply. `chosen` is the narrowest piece the person leaves between blade and
 * fence; the settings' own where it is left out.
 */
export async function cutOrderReply(
  job: LaidJob,
  context: Context,
  terms: Terms,
  chosen: Length | undefined,
): Promise<Reply> {
  const safe = chosen ?? context.settings.safeRip
  const step = stepOf(context, job.show)
  const sawn: Sawn[] = []
  for (const laid of job.groups) {
    const order = await orderOf(laid, job, context, terms, safe)
    sawn.push({ laid, rips: ripsOf(laid, context.settled.kerf), order })
  }
  return reply(job, sawn, { safe, step, context })
}

/** The saw settings of one group of a job in order. */
export const orderOf = (
  laid: LaidGroup,
  { show }: LaidJob,
  context: Context,
  terms: Terms,
  safe: Length = context.settings.safeRip,
): Promise<CutOrder> =>
  context.search.orderCuts({ safeWidth: safe, step: stepOf(context, show), ...sawing(laid) }, terms)

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

function reply(job: LaidJob, sawn: readonly Sawn[], { safe, step, context }: Sawing): Reply {
  const { show } = job
  const rips = sawn.flatMap((each) => each.rips)
  const ripped = rips.flatMap(({ steps }) => steps)
  const orders = sawn.map(({ order }) => order)
  const steps = orders.flatMap((order) => order.steps)
  const cuts = [...ripped.map(({ boards }) => boards), ...orders.map(({ figures }) => figures.cuts)]
  const allCuts = cuts.reduce((sum, count) => sum + count, 0)
  const marking = markingOf(job.parts, show, context)
  const figures = [
    ...rips.flatMap((each) => ripFigures(each, safe, step)),
    ...steps.map((each) => stepFigure(each, marking)),
  ]
  const marked = [
    ...ripped.map(({ setting }) => ({ setting, mark: Math.round(setting / step) * step, isSide: false })),
    ...steps.map(({ setting }) => ({
      setting,
      mark: marking.exact(setting as Length),
      isSide: marking.isSide(setting as Length),
    })),
  ]
  return {
    answer: firstLine(sawn, { settings: marked.length, cuts: allCuts }, show, marking),
    cautions: context.cautions({
      sheetCut: job.groups.some(isSheets),
      crosscut: steps.some(({ kind }) => kind === 'crosscut'),
      cuts: allCuts,
      ...narrowest(sawn),
    }),
    tables: sawn.flatMap(({ laid, rips: own, order }) => [
      ...own.map((each) => ripTable(each, safe, show)),
      ...(order.steps.length > 0 ? [orderTable(order, laid.group.kind, show, marking)] : []),
    ]),
    pictures: orderPictures(sawn, job),
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
function firstLine(
  sawn: readonly Sawn[],
  { settings, cuts }: { readonly settings: number; readonly cuts: number },
  show: Show,
  marking: Marking,
): string {
  const said = `${settings} saw ${settings === 1 ? 'setting' : 'settings'} for ${cuts} ${cuts === 1 ? 'cut' : 'cuts'}`
  for (const { rips, order } of sawn) {
    const [rip] = rips[0]?.steps ?? []
    if (rip) return `${said}; start with rip at ${show.length(rip.setting, 'mark', true)}`
    const [step] = order.steps
    if (step) return `${said}; start with ${step.kind} at ${marking.words(step.setting as Length)}`
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
