import type { SawingJob } from '../core/cutting/order.ts'
import type { CutOrder } from '../core/cutting/order/cutOrder.ts'
import type {
  LengthLayout,
  LengthProblem,
  Outcome,
  SheetLayout,
  SheetProblem,
} from '../core/cutting/problem.ts'
import type { Measure, Yield } from '../core/cutting/lengths/most.ts'
import type { MostFromSheets } from '../core/cutting/sheets.ts'
import type { StripProblem } from '../core/cutting/strips/stripProblem.ts'

/** On whose behalf work is done, and how to call it off. */
export interface Terms {
  /** Work of one channel waits for each other before it holds up another channel. */
  readonly channel: string
  /** Aborting ends a search with what was found by then; what still waits, or cannot be ended so, is refused. */
  readonly signal: AbortSignal
}

export interface SearchTerms extends Terms {
  /** How long to look for better, once it is the search's turn. */
  readonly seconds: number
}

/** What a search found, and how long it took. */
export interface Found<Layout> {
  readonly outcome: Outcome<Layout>
  readonly milliseconds: number
}

/** The most that stock yields, and how long it took to find. */
export interface Most<Result> {
  readonly outcome: Result
  readonly milliseconds: number
}

/**
 * Long work, run away from the thread that answers. Searches give the best found when the time is up, checked by the
 * verifier before it is given: a layout that does not hold rejects. All reject with a Refusal when too much waits already
 * or when the time is up before their turn comes.
 */
export interface Search {
  readonly cutLengths: (problem: LengthProblem, terms: SearchTerms) => Promise<Found<LengthLayout>>
  readonly cutStrips: (problem: StripProblem, terms: SearchTerms) => Promise<Found<LengthLayout>>
  readonly cutSheets: (problem: SheetProblem, terms: SearchTerms) => Promise<Found<SheetLayout>>
  readonly mostFromSheets: (problem: SheetProblem, terms: SearchTerms) => Promise<Most<MostFromSheets>>
  readonly mostFromLengths: (
    problem: LengthProblem,
    measure: Measure,
    terms: SearchTerms,
  ) => Promise<Most<Yield>>
  readonly orderCuts: (job: SawingJob, terms: Terms) => Promise<CutOrder>
  readonly close: () => Promise<void>
}
