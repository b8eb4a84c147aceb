/** Square feet per US gallon in one m2/L: 3.785411784 L to the gallon, 0.09290304 m2 to the square foot. */
const SQUARE_FEET_PER_GALLON = 3.785411784 / 0.09290304

/** A coverage in m2/L as ft2 per US gallon. */
export const toSquareFeetPerGallon = (rate: number): number => rate * SQUARE_FEET_PER_GALLON

/**
 * The wet film, micrometres, that a coverage in m2/L leaves: 1000 over the coverage, which is 1604.17 over ft2/gal in mils
 * (paint spreading-rate guides).
 */
export const wetFilm = (rate: number): number => 1000 / rate

/** What a wet film dries to, in the unit given, where `solids` of its volume stays (0.4 is 40 %): WFT VS, from the same guides. */
export const dryFilm = (wet: number, solids: number): number => wet * solids
