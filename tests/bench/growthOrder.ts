import { cutLengths } from '../../src/core/cutting/lengths.ts'
import { orderCuts, type SawingJob } from '../../src/core/cutting/order.ts'
import type { LengthProblem, SheetProblem } from '../../src/core/cutting/problem.ts'
import { cutSheets } from '../../src/core/cutting/sheets.ts'
import { stopAfter, timed } from './cutting/clock.ts'
import { showTime } from './table.ts'

const INCH = 25_400_000

export const ORDER_HEADINGS = ['saw settings', 'count', 'time', 'settings', 'sets', 'cuts', 'faults']

/** The time for the order of cutting of `count` parts, with the settings and cuts it has; parts not cut once are faults. */
async function timeOrder(
  name: string,
  count: number,
  job: Pick<SawingJob, 'sheets' | 'lengths'>,
): Promise<readonly string[]> {
  const { answer, milliseconds } = await timed(() =>
    orderCuts({ ...job, safeWidth: 2 * INCH, step: INCH / 32 }, stopAfter(2)),
  )
  const { settings, steps, cuts } = answer.figures
  const made = answer.steps.reduce(
    (sum, step) => sum + step.cuts.reduce((all, { parts }) => all + parts.length, 0),
    answer.uncut.length,
  )
  const wanted = (job.sheets ?? job.lengths)!.problem.parts.reduce((sum, part) => sum + part.count, 0)
  return [
    name,
    `${count}`,
    showTime(milliseconds),
    `${settings}`,
    `${steps}`,
    `${cuts}`,
    `${made === wanted ? 0 : 1}`,
  ]
}

/** Lays the parts out in a moment and times the order in which they are sawn. */
export async function orderRows(
  kinds: string,
  count: number,
  lengths: LengthProblem,
  sheets: SheetProblem,
): Promise<readonly (readonly string[])[]> {
  const boards = await cutLengths(lengths, { shouldStop: stopAfter(0) })
  const panels = await cutSheets(sheets, { shouldStop: stopAfter(0) })
  if (boards.status === 'impossible' || panels.status === 'impossible') return []
  return [
    await timeOrder(`lengths, ${kinds}`, count, { lengths: { problem: lengths, layouts: boards.layouts } }),
    await timeOrder(`sheets, ${kinds}`, count, { sheets: { problem: sheets, layouts: panels.layouts } }),
  ]
}
