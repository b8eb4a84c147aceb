/** Square feet per US gallon in one m2/L: 3.785411784 L to the gallon, 0.09290304 m2 to the square foot. */
const SQUARE_FEET_PER_GALLON = 3.785411784 / 0.09290304

/** A coverage in m2/L as ft2 per US gallon. */
export const toSquareFeetPerGallon = (rate: number): number => rate * SQUARE_FEET_PER_GALLON

/** A coverage in ft2 per US gallon as m2/L. */
export const fromSquareFeetPerGallon = (rate: number): number => rate / SQUARE_FEET_PER_GALLON

/**
 * How far a finish goes, m2/L, when it is to dry to a film of `dryFilm` micrometres; `solids` is the part of its volume
 * that stays (0.4 is 40 %). 1000 VS / DFT, which is 1604.17 VS / DFT in ft2/gal and mils (paint spreading-rate guides).
 */
export const spreadingRate = (dryFilm: number, solids: number): number => (1000 * solids) / dryFilm

/** The wet film, micrometres, that a coverage in m2/L leaves: 1000 over the coverage. */
export const wetFilm = (rate: number): number => 1000 / rate

/**
 * What a wet film dries to, in the unit given; `thinner` is the part of thinner added to one of finish.
 * WFT VS / (1 + r), from paint spreading-rate guides.
 */
export const dryFilm = (wet: number, solids: number, thinner = 0): number => (wet * solids) / (1 + thinner)

/** The wet film to lay, so that it dries to `dry`: the other way about. */
export const wetFilmFor = (dry: number, solids: number, thinner = 0): number => (dry * (1 + thinner)) / solids
