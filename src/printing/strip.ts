/** A piece of a page that is never broken: a line, a row of a table, a picture. */
export interface Strip {
  readonly height: number
  /** Draws it with its top at `y`, so high as it was placed. */
  readonly draw: (y: number, height: number) => void
  /** How low it may become, to find room on a page that it nearly fits on. */
  readonly least?: number
  /** Blank before it, left out at the top of a page. */
  readonly gap?: number
  /** Stays on the page of the strip after it. */
  readonly keep?: boolean
  /** Begins a page. */
  readonly onNewPage?: boolean
  /** Drawn once more where a page begins with this strip. */
  readonly head?: Strip
}

/** Where a strip goes: `page` from 0, `y` of its top; a head that is said again is placed too. */
export interface Placed {
  readonly strip: Strip
  readonly page: number
  readonly y: number
  readonly height: number
}

/**
 * Strips on pages from `top` down to `bottom`, in their order: those that keep together stay on one page as long as a page
 * holds them all, and what goes on to another page begins with its head.
 */
export function placeStrips(strips: readonly Strip[], top: number, bottom: number): readonly Placed[] {
  const placed: Placed[] = []
  let [page, y] = [0, top]
  const put = (strip: Strip): void => {
    if (y > top) y += strip.gap ?? 0
    // Only what is the last on its page gives way; and on a page of its own there is room enough.
    const height = Math.max(strip.least ?? strip.height, Math.min(strip.height, bottom - y))
    placed.push({ strip, page, y, height })
    y += height
  }
  const turn = (): void => {
    page += 1
    y = top
  }
  for (const run of runsOf(strips)) {
    const [first] = run
    if (first?.onNewPage && y > top) turn()
    const needed = heightOf(run) + (y > top ? (first?.gap ?? 0) : 0)
    if (y > top && y + needed > bottom) turn()
    for (const strip of run) {
      const isOver = y > top && y + (strip.gap ?? 0) + (strip.least ?? strip.height) > bottom
      if (isOver) turn()
      if (y === top && strip.head) put(strip.head)
      put(strip)
    }
  }
  return placed
}

/** Strips that stay together, each run up to one that need not stay with the next. */
function runsOf(strips: readonly Strip[]): readonly (readonly Strip[])[] {
  const runs: Strip[][] = []
  let run: Strip[] = []
  for (const strip of strips) {
    run.push(strip)
    if (strip.keep) continue
    runs.push(run)
    run = []
  }
  return run.length === 0 ? runs : [...runs, run]
}

/** Of a run, without the blank before its first. */
const heightOf = (run: readonly Strip[]): number =>
  run.reduce((sum, { height, least = height, gap = 0 }, index) => sum + least + (index === 0 ? 0 : gap), 0)
