/** So many boxes of so many. */
export interface BoxCount {
  readonly size: number
  readonly count: number
}

export interface BoxesNeeded {
  /** With the spares. */
  readonly fasteners: number
  readonly boxes: readonly BoxCount[]
  readonly left: number
}

/** A tenth more than are driven: some bend, some drop (hobby builders' rule, 10 to 15 %). */
export const USUAL_SPARE = 0.1

/**
 * Boxes for `count` fasteners and a spare part of them: as many of the largest as are filled, and the smallest that holds the
 * rest. None for none; throws for no box size and for a count below 0.
 */
export function fillBoxes(count: number, sizes: readonly number[], spare: number = USUAL_SPARE): BoxesNeeded {
  if (!(count >= 0 && spare >= 0))
    throw new RangeError(`count and spare must be at least 0: ${count}, ${spare}`)
  const largest = Math.max(...sizes)
  if (!(largest > 0 && Number.isFinite(largest))) throw new RangeError('no boxes to fill')
  // A hair off, so that 100 and a tenth are 110 and not 111.
  const fasteners = Math.max(0, Math.ceil(count * (1 + spare) - 1e-9))
  const full = Math.floor(fasteners / largest)
  const rest = fasteners - full * largest
  const last = rest > 0 ? Math.min(...sizes.filter((size) => size >= rest)) : 0
  const boxes =
    last === largest
      ? [{ size: largest, count: full + 1 }]
      : [
          { size: largest, count: full },
          { size: last, count: 1 },
        ]
  const bought = boxes.filter((box) => box.size > 0 && box.count > 0)
  const total = bought.reduce((sum, box) => sum + box.size * box.count, 0)
  return { fasteners, boxes: bought, left: total - fasteners }
}
