import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Placed, placeStrips, type Strip } from '../../src/printing/strip.ts'

const strip = (height: number, more: Partial<Strip> = {}): Strip => ({
  height,
  draw: () => undefined,
  ...more,
})
const where = (placed: readonly Placed[]) => placed.map(({ page, y }) => [page, y])

describe('strips on pages', () => {
  it('go down the page and on to the next, without the blank at its top', () => {
    const placed = placeStrips([strip(40), strip(40, { gap: 10 }), strip(40, { gap: 10 })], 10, 110)
    expect(where(placed)).toEqual([
      [0, 10],
      [0, 60],
      [1, 10],
    ])
  })

  it('stay with the strip after them: no heading stands alone at the foot', () => {
    const placed = placeStrips([strip(60), strip(20, { keep: true }), strip(30)], 0, 100)
    expect(placed.map(({ page }) => page)).toEqual([0, 1, 1])
  })

  it('say their head again at the top of each page that a table goes on to', () => {
    const head = strip(10, { keep: true })
    const rows = Array.from({ length: 5 }, () => strip(30, { head }))
    const placed = placeStrips([head, ...rows], 0, 100)
    expect(placed.filter((each) => each.strip === head).map(({ page, y }) => [page, y])).toEqual([
      [0, 0],
      [1, 0],
    ])
    expect(placed.map(({ page }) => page)).toEqual([0, 0, 0, 0, 1, 1, 1])
  })

  it('begin a page where they are told to, and give way a little to find room', () => {
    const placed = placeStrips([strip(10), strip(10, { onNewPage: true }), strip(100, { least: 75 })], 0, 90)
    expect(placed.map(({ page, y, height }) => [page, y, height])).toEqual([
      [0, 0, 10],
      [1, 0, 10],
      [1, 10, 80],
    ])
  })

  it('all come once, in order, inside the page, and what is kept together is on one page', () => {
    const strips = fc.array(
      fc.record({
        height: fc.integer({ min: 1, max: 60 }),
        gap: fc.integer({ min: 0, max: 20 }),
        keep: fc.boolean(),
      }),
      { maxLength: 60 },
    )
    fc.assert(
      fc.property(strips, (asked) => {
        const given = asked.map(({ height, ...more }) => strip(height, more))
        const placed = placeStrips(given, 20, 220)
        expect(placed.map((each) => each.strip)).toEqual(given)
        placed.forEach(({ y, height, page }, index) => {
          expect(y + height).toBeLessThanOrEqual(220)
          const before = placed[index - 1]
          if (before?.page === page) expect(y).toBeGreaterThanOrEqual(before.y + before.height)
          else expect(y).toBe(20)
        })
        for (const run of runs(placed))
          if (run.reduce((sum, { strip: { height, gap = 0 } }) => sum + height + gap, 0) <= 200)
            expect(new Set(run.map(({ page }) => page)).size).toBe(1)
      }),
    )
  })
})

/** What keeps together. */
function runs(placed: readonly Placed[]): readonly (readonly Placed[])[] {
  const all: Placed[][] = [[]]
  for (const each of placed) {
    all.at(-1)?.push(each)
    if (!each.strip.keep) all.push([])
  }
  return all.filter(({ length }) => length > 0)
}
