import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { orderCuts } from '../../../src/core/cutting/order.ts'
import type { CutTree, SheetLayout, SheetProblem } from '../../../src/core/cutting/problem.ts'
import { INCH } from '../../../src/core/measure/length.ts'
import { fewestSettings } from './fewestSettings.ts'
import { growSheet } from './randomSheet.ts'
import { simulateSaw } from './simulateSaw.ts'

const part = (id: string): CutTree => ({ kind: 'part', part: id, turned: false })
const rest: CutTree = { kind: 'rest' }
const cut = (across: 'x' | 'y', at: number, first: CutTree, second: CutTree): CutTree => ({
  kind: 'cut',
  across,
  at,
  first,
  second,
})

/** Only what the order reads of a layout: its stock, its count, its cuts. */
const layoutOf = (cuts: CutTree, count = 1): SheetLayout => ({
  stock: 'S',
  count,
  placements: [],
  offcuts: [],
  cuts,
})

const problemOf = (length: number, width: number, edit: Partial<SheetProblem> = {}): SheetProblem => ({
  parts: [],
  stock: [{ id: 'S', length, width, price: 1 }],
  kerf: 1,
  trim: 0,
  keepable: 10,
  ...edit,
})

const settings = (problem: SheetProblem, layouts: readonly SheetLayout[], safeWidth = 0): string[] =>
  orderCuts({ sheets: { problem, layouts }, safeWidth, step: 1 }).steps.map(
    ({ kind, setting, cuts }) => `${kind} ${setting} x${cuts.length}`,
  )

describe('sheets', () => {
  // Two strips 20 wide from 100 x 48: each holds two of 40 and leaves 18.
  const strip = cut('x', 40, part('A'), cut('x', 40, part('A'), rest))
  const two = cut('y', 20, strip, cut('y', 20, strip, rest))

  it('share one rip and one stop', () => {
    expect(settings(problemOf(100, 48), [layoutOf(two)])).toEqual(['rip 20 x2', 'crosscut 40 x4'])
  })

  it('share settings between copies and between layouts', () => {
    const turned = cut('x', 40, cut('y', 20, part('A'), rest), rest)
    const order = settings(problemOf(100, 48), [layoutOf(two, 3), layoutOf(turned)])
    // The second layout needs its crosscut before its rip, so one of the two is set twice.
    expect(order).toHaveLength(3)
  })

  it('wait until a piece exists, where that saves a setting', () => {
    // 30 is free at once in the first sheet, but the second sheet needs it only below its 25.
    const early = layoutOf(cut('y', 30, part('A'), rest))
    const late = layoutOf(cut('y', 25, cut('x', 60, cut('y', 12, part('B'), rest), rest), rest))
    const both = layoutOf(cut('x', 60, cut('y', 30, part('C'), rest), rest))
    expect(settings(problemOf(100, 48), [early, late, both])).toEqual([
      'rip 25 x1',
      'crosscut 60 x2',
      'rip 30 x2',
      'rip 12 x1',
    ])
  })

  it('need no cut for the last strip when nothing is left', () => {
    const exact = cut('y', 20, part('A'), part('B'))
    expect(settings(problemOf(100, 41), [layoutOf(exact)])).toEqual(['rip 20 x1'])
  })

  it('are trimmed first, each side once, against the raw edge and then the sawn one', () => {
    const problem = problemOf(104, 52, { trim: 2 })
    const order = orderCuts({ sheets: { problem, layouts: [layoutOf(two, 2)] }, safeWidth: 0, step: 1 })
    expect(order.steps.slice(0, 4).map(({ kind, setting }) => `${kind} ${setting}`)).toEqual([
      'trim 50',
      'trim 48',
      'trim 102',
      'trim 100',
    ])
    const references = order.steps.map(({ cuts }) => cuts.map(({ reference }) => reference))
    expect(references.slice(0, 4)).toEqual([
      ['factory', 'factory'],
      ['sawn', 'sawn'],
      ['factory', 'factory'],
      ['sawn', 'sawn'],
    ])
    expect(
      references
        .slice(4)
        .flat()
        .every((reference) => reference === 'sawn'),
    ).toBe(true)
  })

  it('that are a part as they are go in uncut', () => {
    const order = orderCuts({
      sheets: { problem: problemOf(100, 48), layouts: [layoutOf(part('A'))] },
      safeWidth: 0,
      step: 1,
    })
    expect(order.uncut).toMatchObject([{ part: 'A', length: 100, width: 48 }])
    expect(order.figures).toEqual({ settings: 0, steps: 0, cuts: 0 })
  })

  it('say what still waits after each step', () => {
    const order = orderCuts({
      sheets: { problem: problemOf(100, 48), layouts: [layoutOf(two)] },
      safeWidth: 0,
      step: 1,
    })
    expect(order.steps.map((step) => step.remaining)).toEqual([[{ length: 100, width: 20, count: 2 }], []])
    expect(order.steps.map((step) => step.waiting)).toEqual([2, 0])
    expect(order.figures).toEqual({ settings: 2, steps: 2, cuts: 6 })
  })

  it('show the nearest mark of the tape beside the exact setting', () => {
    const order = orderCuts({
      sheets: { problem: problemOf(100, 48), layouts: [layoutOf(cut('y', 21, part('A'), rest))] },
      safeWidth: 0,
      step: 4,
    })
    expect(order.steps[0]).toMatchObject({ setting: 21, mark: 20 })
  })

  it('that name unknown stock are the bug of the caller', () => {
    expect(() => settings(problemOf(100, 48), [{ ...layoutOf(rest), stock: 'T' }])).toThrow('"T"')
  })
})

describe('narrow strips', () => {
  const strips = (count: number): CutTree => (count === 0 ? rest : cut('y', 2, part('N'), strips(count - 1)))

  it('fall on the free side, the fence moving with each: W - i(s + k)', () => {
    // 40 less 3 each time: the strip of 2 and the kerf of 1.
    expect(settings(problemOf(100, 40), [layoutOf(strips(4))], 10)).toEqual([
      'rip 37 x1',
      'rip 34 x1',
      'rip 31 x1',
      'rip 28 x1',
    ])
  })

  it('are flagged where even what is held is too narrow', () => {
    const order = orderCuts({
      sheets: { problem: problemOf(100, 12), layouts: [layoutOf(strips(3))] },
      safeWidth: 8,
      step: 1,
    })
    const flags = order.steps.flatMap((step) => step.cuts.map(({ narrow }) => narrow))
    expect(flags).toEqual(['free side', 'both sides', 'both sides'])
  })

  it('come off before the wide strip that they are held by', () => {
    // 20 + 1 + 2 + 1 + 2 + 1 fills 27 and leaves nothing to hold the narrow ones by.
    const tree = cut('y', 20, part('W'), strips(2))
    const order = orderCuts({
      sheets: { problem: problemOf(100, 27), layouts: [layoutOf(tree)] },
      safeWidth: 8,
      step: 1,
    })
    expect(order.steps.map((step) => step.setting)).toEqual([24, 21, 20])
    expect(order.steps.flatMap((step) => step.cuts.map(({ narrow }) => narrow))).toEqual([
      'free side',
      'free side',
      undefined,
    ])
  })
})

describe('boards', () => {
  const problem = {
    parts: [
      { id: 'A', length: 40, count: 4 },
      { id: 'B', length: 25, count: 3 },
    ],
    stock: [{ id: '8 ft', length: 96, price: 1 }],
    kerf: 1,
    trim: 2,
    keepable: 10,
  }
  const layouts = [
    { stock: '8 ft', count: 1, parts: ['A', 'B', 'B'], offcut: 1 },
    { stock: '8 ft', count: 1, parts: ['A', 'A'], offcut: 12 },
    { stock: '8 ft', count: 1, parts: ['B', 'A'], offcut: 27 },
  ]

  it('are trimmed together, then cut with one stop for each length, longest first', () => {
    const order = orderCuts({ lengths: { problem, layouts }, safeWidth: 5, step: 1 })
    expect(order.steps.map(({ kind, setting, cuts }) => `${kind} ${setting} x${cuts.length}`)).toEqual([
      'trim 2 x3',
      'crosscut 40 x4',
      'crosscut 25 x3',
    ])
    const sawn = simulateSaw(order, { kerf: 1, safe: 5 })
    expect(sawn.wrong).toEqual([])
    expect(sawn.parts.map((piece) => piece.part).sort()).toEqual(['A', 'A', 'A', 'A', 'B', 'B', 'B'])
    expect(sawn.offcuts.map((piece) => piece.length).sort()).toEqual([12, 27])
  })
})

describe('large jobs', () => {
  // Boards of 100 with parts 20 to 39 long, no two alike in more than a few boards.
  const count = 900
  const parts = Array.from({ length: count }, (_, index) => ({
    id: `P${index}`,
    length: 20_000 + ((index * 7919) % 19_000),
    count: 1,
  }))
  const problem = { parts, stock: [{ id: 'S', length: 100_000, price: 1 }], kerf: 1, trim: 0, keepable: 500 }
  const layouts = Array.from({ length: count / 2 }, (_, index) => ({
    stock: 'S',
    count: 1,
    parts: [`P${2 * index}`, `P${2 * index + 1}`],
    offcut: 0,
  }))

  it('have every part cut once, each length at one setting, and tell the largest kinds that wait', () => {
    const order = orderCuts({ lengths: { problem, layouts }, safeWidth: 0, step: 1 })
    const made = order.steps.flatMap((step) => step.cuts.flatMap((one) => one.parts))
    expect(made.sort()).toEqual(parts.map(({ id }) => id).sort())
    expect(order.figures.settings).toBe(new Set(parts.map(({ length }) => length)).size)
    const [first] = order.steps
    expect(first?.remaining[0]).toEqual({ length: 100_000, width: 0, count: 449 })
    expect(first).toMatchObject({ waiting: 450 })
    const middle = order.steps[300]!
    expect(middle.remaining).toHaveLength(50)
    const lengths = middle.remaining.map(({ length }) => length)
    expect(lengths).toEqual(lengths.toSorted((a, b) => b - a))
    expect(order.steps.at(-1)).toMatchObject({ remaining: [], waiting: 0 })
  })
})

describe('parts that are easy to swap', () => {
  const sized = (id: string, length: number, width: number) => ({
    id,
    length: length * INCH,
    width: width * INCH,
    count: 1,
    turnable: false,
  })
  const swapsOf = (parts: SheetProblem['parts']): string[] =>
    orderCuts({
      sheets: { problem: problemOf(1, 1, { parts }), layouts: [] },
      safeWidth: 0,
      step: 1,
    }).swaps.map(({ first, second }) => `${first}-${second}`)

  it('are named when both sides differ by 1/8 in at most', () => {
    const parts = [sized('A', 24, 18), sized('B', 24.125, 18), sized('C', 24, 18.25), sized('D', 18.0625, 24)]
    expect(swapsOf(parts)).toEqual(['A-B', 'A-D', 'B-D'])
  })

  it('are no trouble when they are the same size', () => {
    expect(swapsOf([sized('A', 24, 18), sized('B', 18, 24)])).toEqual([])
  })
})

/** Several random sheets of one size as one problem; every part has its own name. */
const randomJob = fc
  .tuple(
    fc.record({
      length: fc.integer({ min: 12, max: 40 }),
      width: fc.integer({ min: 12, max: 40 }),
      kerf: fc.integer({ min: 0, max: 2 }),
      trim: fc.integer({ min: 0, max: 2 }),
      keepable: fc.integer({ min: 1, max: 9 }),
      depth: fc.integer({ min: 1, max: 4 }),
    }),
    fc.array(fc.array(fc.nat({ max: 9 }), { minLength: 50, maxLength: 50 }), { minLength: 1, maxLength: 4 }),
    fc.integer({ min: 1, max: 3 }),
  )
  .map(([size, draws, count]) => {
    const grown = draws.map((one) => growSheet(size, one)).filter((one) => one.problem.parts.length > 0)
    const rename = (tree: CutTree, prefix: string): CutTree => {
      if (tree.kind === 'part') return { ...tree, part: prefix + tree.part }
      if (tree.kind === 'rest') return tree
      return { ...tree, first: rename(tree.first, prefix), second: rename(tree.second, prefix) }
    }
    const parts = grown.flatMap(({ problem }, index) =>
      problem.parts.map((one) => ({ ...one, id: `${index}.${one.id}`, count })),
    )
    const layouts = grown.map(({ layout }, index) => ({
      ...layout,
      count,
      cuts: rename(layout.cuts, `${index}.`),
      placements: layout.placements.map((one) => ({ ...one, part: `${index}.${one.part}` })),
    }))
    const stock = [{ id: 'sheet', length: size.length, width: size.width, price: 1 }]
    const problem: SheetProblem = { parts, stock, kerf: size.kerf, trim: size.trim, keepable: size.keepable }
    return { problem, layouts }
  })
  .filter(({ layouts }) => layouts.length > 0)

const areaOf = (pieces: readonly { length: number; width: number }[]): number =>
  pieces.reduce((sum, { length, width }) => sum + length * width, 0)

describe('random jobs', () => {
  it('sawn through with rectangles end with exactly the parts', () => {
    fc.assert(
      fc.property(randomJob, fc.integer({ min: 0, max: 8 }), fc.boolean(), (random, safeWidth, stopped) => {
        const { problem, layouts } = random
        const order = orderCuts({ sheets: { problem, layouts }, safeWidth, step: 1 }, () => stopped)
        const sawn = simulateSaw(order, { kerf: problem.kerf, safe: safeWidth })
        expect(sawn.wrong).toEqual([])
        const placed = layouts.flatMap(({ placements, count }) =>
          Array.from({ length: count }, () => placements).flat(),
        )
        const name = (id: string | undefined, length: number, width: number) => `${id} ${length} x ${width}`
        expect(sawn.parts.map((one) => name(one.part, one.length, one.width)).sort()).toEqual(
          placed.map((one) => name(one.part, one.length, one.width)).sort(),
        )
        expect(sawn.stock).toHaveLength(layouts.reduce((sum, { count }) => sum + count, 0))
        // Remainders side by side stay one piece, so no offcut of the layout is lost, but some are larger.
        const offcuts = layouts.flatMap((one) => Array.from({ length: one.count }, () => one.offcuts).flat())
        expect(areaOf(sawn.offcuts)).toBeGreaterThanOrEqual(areaOf(offcuts))
      }),
      { numRuns: 150 },
    )
  })

  it('use no raw edge after the trim', () => {
    fc.assert(
      fc.property(randomJob, ({ problem, layouts }) => {
        fc.pre(problem.trim > 0)
        const { steps } = orderCuts({ sheets: { problem, layouts }, safeWidth: 0, step: 1 })
        const raw = steps.filter((step) => step.kind !== 'trim').flatMap((step) => step.cuts)
        expect(raw.every((one) => one.reference === 'sawn')).toBe(true)
      }),
    )
  })

  it('set the saw as seldom as trying every order can, or nearly', () => {
    let [tried, worse] = [0, 0]
    fc.assert(
      fc.property(randomJob, ({ problem, layouts }) => {
        fc.pre(problem.trim === 0)
        const { length, width } = problem.stock[0]!
        const fewest = fewestSettings(layouts, { length, width, kerf: problem.kerf }, 600)
        fc.pre(fewest !== undefined)
        const { figures } = orderCuts({ sheets: { problem, layouts }, safeWidth: 0, step: 1 })
        expect(figures.steps).toBeGreaterThanOrEqual(fewest!)
        expect(figures.steps).toBeLessThanOrEqual(fewest! + 1)
        tried += 1
        if (figures.steps > fewest!) worse += 1
      }),
      { numRuns: 80, seed: 3, maxSkipsPerRun: 1000 },
    )
    expect(worse / tried).toBeLessThan(0.03)
  })

  it('have an order at once, with a setting more now and then, and no better one when stopped', () => {
    let [few, many] = [0, 0]
    fc.assert(
      fc.property(randomJob, ({ problem, layouts }) => {
        const job = { sheets: { problem, layouts }, safeWidth: 2, step: 1 }
        const at = { once: orderCuts(job, () => true).figures, length: orderCuts(job).figures }
        expect(at.length.steps).toBeLessThanOrEqual(at.once.steps)
        expect(at.once.cuts).toBeGreaterThan(0)
        few += at.length.steps
        many += at.once.steps
      }),
      { numRuns: 60, seed: 5 },
    )
    expect(many / few).toBeLessThan(1.1)
  })

  it('come out the same each time', () => {
    fc.assert(
      fc.property(randomJob, ({ problem, layouts }) => {
        const job = { sheets: { problem, layouts }, safeWidth: 3, step: 1 }
        expect(orderCuts(job)).toEqual(orderCuts(job))
      }),
      { numRuns: 20 },
    )
  })
})
