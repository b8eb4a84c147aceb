import type { Length } from '../measure/length.ts'

/** Where a box stands: what its wood goes through in a year. */
export const PLACES = ['heated', 'unheated', 'outdoors'] as const
export type PlaceName = (typeof PLACES)[number]

/** Percent of moisture that wood comes to in the driest and in the wettest month. */
export interface Year {
  readonly driest: number
  readonly wettest: number
}

/** What is assumed of wood, air and paint where nobody has said, from config/seasons.yaml. */
export interface Seasons {
  /** Name of the wood that construction lumber is taken for. */
  readonly wood: string
  /** Degrees Celsius of the shop. */
  readonly temperature: number
  /** Percent of humidity in the shop. */
  readonly humidity: number
  /** Percent of moisture of wood that is not looked at closer, for its weight. */
  readonly moisture: number
  readonly places: Readonly<Record<PlaceName, Year>>
  readonly coats: number
  /** What a hand needs at each end to slide a corner. */
  readonly pushFit: Length
}
