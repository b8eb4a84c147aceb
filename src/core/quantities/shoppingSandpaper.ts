/** How far a sheet of sandpaper goes, mm2, and which grits are used. */
export interface Sanding {
  /** On the bare wood, one after the other. */
  readonly grits: readonly number[]
  readonly covers: number
  /** Between coats that make a film. */
  readonly betweenGrit: number
  readonly betweenCovers: number
}

/** Sheets of one grit. */
export interface GritCount {
  readonly grit: number
  readonly sheets: number
}

/** What is sanded: mm2, and how many coats make a film on it (0 for what soaks in). */
export interface Sanded {
  readonly area: number
  readonly filmCoats: number
}

/**
 * Sheets of each grit for the bare wood, and for the film before every coat but the first; none for no area. Throws where the
 * area is no finite number of at least 0.
 */
export function sandpaperNeeded({ area, filmCoats }: Sanded, sanding: Sanding): readonly GritCount[] {
  if (!(Number.isFinite(area) && area >= 0)) throw new RangeError(`area must be at least 0: ${area}`)
  const between = area * Math.max(0, filmCoats - 1)
  // A hair off, so that the rounding of an area buys no sheet.
  const sheets = (of: number, covers: number): number => Math.max(0, Math.ceil(of / covers - 1e-9))
  return [
    ...sanding.grits.map((grit) => ({ grit, sheets: sheets(area, sanding.covers) })),
    { grit: sanding.betweenGrit, sheets: sheets(between, sanding.betweenCovers) },
  ].filter((each) => each.sheets > 0)
}
