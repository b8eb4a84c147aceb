import { describe, expect, it } from 'vitest'
import type { CutTree, Placement, Rectangle, SheetProblem } from '../../../../src/core/cutting/problem.ts'
import { cutSheets } from '../../../../src/core/cutting/sheets.ts'
import { afterSteps } from './steps.ts'

/** Cuts a rectangle as the tree says; gives the parts where they come free. */
const replay = (tree: CutTree, region: Rectangle, kerf: number): Placement[] => {
  if (tree.kind === 'rest') return []
  if (tree.kind === 'part') return [{ ...region, part: tree.part, turned: tree.turned }]
  const { at } = tree
  const [first, second] =
    tree.across === 'x'
      ? [
          { ...region, length: at },
          { ...region, x: region.x + at + kerf, length: region.length - at - kerf },
        ]
      : [
          { ...region, width: at },
          { ...region, y: region.y + at + kerf, width: region.width - at - kerf },
        ]
  return [...replay(tree.first, first, kerf), ...replay(tree.second, second, kerf)]
}

const problem: SheetProblem = {
  parts: [
    { id: 'side', length: 711_200_000, width: 406_400_000, count: 7, turnable: true },
    { id: 'end', length: 431_800_000, width: 406_400_000, count: 7, turnable: false },
    { id: 'bottom', length: 711_200_000, width: 457_200_000, count: 5, turnable: true },
    { id: 'cleat', length: 300_000_000, width: 38_100_000, count: 30, turnable: false },
  ],
  stock: [
    { id: 'full', length: 2_438_400_000, width: 1_219_200_000, price: 6250 },
    { id: 'scrap', length: 900_000_000, width: 500_000_000, price: 0, onHand: 1, net: true },
  ],
  kerf: 3_175_000,
  trim: 6_350_000,
  keepable: 100_000_000,
}

const outcome = await cutSheets(problem, { shouldStop: afterSteps(2000), seed: 1 })
const layouts = outcome.status === 'impossible' ? [] : outcome.layouts

describe('a layout', () => {
  it.each(layouts.map((layout, index) => [index, layout] as const))(
    'number %i is what its cuts make',
    (_, layout) => {
      const sheet = problem.stock.find(({ id }) => id === layout.stock)
      if (sheet === undefined) throw new Error(layout.stock)
      const edge = sheet.net ? 0 : problem.trim
      const whole = { x: edge, y: edge, length: sheet.length - 2 * edge, width: sheet.width - 2 * edge }
      const freed = replay(layout.cuts, whole, problem.kerf)
      expect(freed).toHaveLength(layout.placements.length)
      expect(freed).toEqual(expect.arrayContaining([...layout.placements]))
    },
  )

  it('cuts as many parts as are asked for', () => {
    const made = new Map<string, number>()
    for (const { placements, count } of layouts)
      for (const { part } of placements) made.set(part, (made.get(part) ?? 0) + count)
    expect(Object.fromEntries(made)).toEqual({ side: 7, end: 7, bottom: 5, cleat: 30 })
  })

  it('keeps only offcuts with both sides worth keeping', () => {
    const offcuts = layouts.flatMap((layout) => layout.offcuts)
    expect(offcuts.length).toBeGreaterThan(0)
    for (const { length, width } of offcuts)
      expect(Math.min(length, width)).toBeGreaterThanOrEqual(problem.keepable)
  })

  it('joins sheets cut alike and shares their parts out among names', async () => {
    const alike: SheetProblem = {
      parts: [
        { id: 'left', length: 50, width: 50, count: 6, turnable: true },
        { id: 'right', length: 50, width: 50, count: 6, turnable: true },
      ],
      stock: [{ id: 'sheet', length: 100, width: 100, price: 1 }],
      kerf: 0,
      trim: 0,
      keepable: 1,
    }
    const found = await cutSheets(alike, { shouldStop: afterSteps(100) })
    expect(found).toMatchObject({ status: 'optimal', pieces: 3 })
    if (found.status !== 'impossible') expect(found.layouts.length).toBeLessThanOrEqual(2)
  })
})
