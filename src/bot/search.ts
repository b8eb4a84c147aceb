import type {
  LengthLayout,
  LengthProblem,
  Outcome,
  SheetLayout,
  SheetProblem,
} from '../core/cutting/problem.ts'

/** How long a search may take, on whose behalf, and how to call it off. */
export interface SearchTerms {
  /** Searches of one channel wait for each other before they hold up another channel. */
  readonly channel: string
  readonly seconds: number
  /** Aborting ends the search; what was found by then is still the answer. */
  readonly signal: AbortSignal
}

/** What a search found, and how long it took. */
export interface Found<Layout> {
  readonly outcome: Outcome<Layout>
  readonly milliseconds: number
}

/**
 * Long searches, run away from the thread that answers. Both give the best found when the time is up; both reject with a
 * Refusal when too many searches wait already.
 */
export interface Search {
  readonly cutLengths: (problem: LengthProblem, terms: SearchTerms) => Promise<Found<LengthLayout>>
  readonly cutSheets: (problem: SheetProblem, terms: SearchTerms) => Promise<Found<SheetLayout>>
  readonly close: () => Promise<void>
}
