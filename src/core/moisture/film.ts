import { type Length, nanometres, times } from '../measure/length.ts'

/** How thick one dry coat is, from the thinnest to the thickest. */
export interface Film {
  readonly low: Length
  readonly high: Length
}

/** A topcoat dries to 0.9 to 1.5 mil, 23 to 38 um (woodworkers' forum on mil thickness, from 3 to 5 mil wet). */
export const USUAL_FILM: Film = { low: nanometres(23_000), high: nanometres(38_000) }

/** The dry coat to reckon with where one number is wanted: 30 um. */
export const TYPICAL_COAT: Length = nanometres(30_000)

/** What paint takes from a gap when both faces of it have `coats` coats. */
export const filmBetween = (coats: number, coat: Length): Length => times(coat, 2 * coats)
