import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { SheetLayout, SheetProblem } from '../../../src/core/cutting/problem.ts'
import { verifySheets, verifyWorth } from '../../../src/core/cutting/verify.ts'
import type { Fault } from '../../../src/core/cutting/verify/fault.ts'
import { canSawApart, paintsApart } from './pixels.ts'
import { growSheet, randomSheet } from './randomSheet.ts'

const rules = (faults: readonly Fault[]): string[] => [...new Set(faults.map((fault) => fault.rule))].sort()

/** Two 40 x 20 and one 40 x 30 (turned) from 100 x 60 with a kerf of 1 and a trim of 2. */
const problem: SheetProblem = {
  parts: [
    { id: 'A', length: 40, width: 20, count: 2, turnable: false },
    { id: 'B', length: 40, width: 30, count: 1, turnable: true },
  ],
  stock: [{ id: 'S', length: 100, width: 60, price: 500, onHand: 1 }],
  kerf: 1,
  trim: 2,
  keepable: 10,
}

const layout: SheetLayout = {
  stock: 'S',
  count: 1,
  placements: [
    { part: 'A', turned: false, x: 2, y: 2, length: 40, width: 20 },
    { part: 'A', turned: false, x: 2, y: 23, length: 40, width: 20 },
    { part: 'B', turned: true, x: 43, y: 2, length: 30, width: 40 },
  ],
  offcuts: [
    { x: 2, y: 44, length: 40, width: 14 },
    { x: 74, y: 2, length: 24, width: 56 },
    { x: 43, y: 43, length: 30, width: 15 },
  ],
  cuts: {
    kind: 'cut',
    across: 'x',
    at: 40,
    first: {
      kind: 'cut',
      across: 'y',
      at: 20,
      first: { kind: 'part', part: 'A', turned: false },
      second: {
        kind: 'cut',
        across: 'y',
        at: 20,
        first: { kind: 'part', part: 'A', turned: false },
        second: { kind: 'rest' },
      },
    },
    second: {
      kind: 'cut',
      across: 'x',
      at: 30,
      first: {
        kind: 'cut',
        across: 'y',
        at: 40,
        first: { kind: 'part', part: 'B', turned: true },
        second: { kind: 'rest' },
      },
      second: { kind: 'rest' },
    },
  },
}

const moved = (index: number, change: Partial<SheetLayout['placements'][number]>): SheetLayout => ({
  ...layout,
  placements: layout.placements.map((placement, at) =>
    at === index ? { ...placement, ...change } : placement,
  ),
})

const check = (changed: SheetLayout, about: Partial<SheetProblem> = {}): string[] =>
  rules(verifySheets({ ...problem, ...about }, [changed]))

describe('sheets that are sound', () => {
  it('are accepted', () => expect(verifySheets(problem, [layout])).toEqual([]))

  it('are accepted when many are cut alike', () => {
    const many = {
      ...problem,
      parts: problem.parts.map((part) => ({ ...part, count: 3 * part.count })),
      stock: [{ ...problem.stock[0]!, onHand: 3 }],
    }
    expect(verifySheets(many, [{ ...layout, count: 3 }])).toEqual([])
  })

  it('are accepted when a net offcut is not trimmed', () => {
    const net = { ...problem, stock: [{ ...problem.stock[0]!, length: 40, width: 20, net: true }] }
    const one: SheetLayout = {
      stock: 'S',
      count: 1,
      placements: [{ part: 'A', turned: false, x: 0, y: 0, length: 40, width: 20 }],
      offcuts: [],
      cuts: { kind: 'part', part: 'A', turned: false },
    }
    expect(verifySheets({ ...net, parts: [{ ...problem.parts[0]!, count: 1 }] }, [one])).toEqual([])
  })

  it('are accepted when the blade takes all that is left', () => {
    const tight = { ...problem, stock: [{ ...problem.stock[0]!, length: 45, width: 24 }] }
    const one: SheetLayout = {
      stock: 'S',
      count: 1,
      placements: [{ part: 'A', turned: false, x: 2, y: 2, length: 40, width: 20 }],
      offcuts: [],
      cuts: {
        kind: 'cut',
        across: 'x',
        at: 40,
        first: { kind: 'part', part: 'A', turned: false },
        second: { kind: 'rest' },
      },
    }
    expect(verifySheets({ ...tight, parts: [{ ...problem.parts[0]!, count: 1 }] }, [one])).toEqual([])
  })
})

describe('each rule broken', () => {
  it('stock that nobody sells', () => expect(check({ ...layout, stock: 'T' })).toContain('stock'))
  it('a count that is none', () => expect(check({ ...layout, count: 0.5 })).toContain('count'))
  it('a sheet with nothing on it', () =>
    expect(check({ ...layout, placements: [], cuts: { kind: 'rest' } })).toContain('count'))
  it('a place between two whole numbers', () => expect(check(moved(0, { x: 2.5 }))).toContain('whole'))
  it('a part laid in another size', () => expect(check(moved(2, { width: 39 }))).toContain('size'))
  it('a part turned across its grain', () =>
    expect(check(layout, { parts: problem.parts.map((part) => ({ ...part, turnable: false })) })).toEqual([
      'grain',
    ]))
  it('a part marked turned that is not', () => expect(check(moved(2, { turned: false }))).toContain('size'))
  it('a part in the trim', () => expect(check(moved(0, { x: 1 }))).toContain('inside'))
  it('a part past the far trim', () => expect(check(moved(2, { x: 69 }))).toContain('inside'))
  it('two parts over one another', () => expect(check(moved(1, { y: 21 }))).toContain('overlap'))
  it('two parts closer than the kerf', () => expect(check(moved(1, { y: 22 }))).toContain('kerf'))
  it('corners closer than the kerf', () =>
    expect(rules(verifySheets(problem, [moved(2, { x: 42, y: 18 })]))).toContain('overlap'))
  it('a part that nobody asked for', () => expect(check(moved(0, { part: 'Z' }))).toContain('demand'))
  it('a part made too often', () =>
    expect(check(layout, { parts: [{ ...problem.parts[0]!, count: 1 }, problem.parts[1]!] })).toEqual([
      'demand',
    ]))
  it('a part not made often enough', () =>
    expect(check(layout, { parts: [{ ...problem.parts[0]!, count: 3 }, problem.parts[1]!] })).toEqual([
      'demand',
    ]))
  it('more sheets than are on hand', () => expect(check({ ...layout, count: 2 })).toContain('onHand'))
  it('an offcut that is no leaf', () =>
    expect(check({ ...layout, offcuts: [{ x: 74, y: 2, length: 24, width: 50 }] })).toContain('offcut'))
  it('an offcut left out', () =>
    expect(check({ ...layout, offcuts: layout.offcuts.slice(1) })).toEqual(['offcut']))
  it('an offcut counted twice', () =>
    expect(check({ ...layout, offcuts: [...layout.offcuts, layout.offcuts[0]!] })).toContain('offcut'))
  it('an offcut too small to keep', () => expect(check(layout, { keepable: 15 })).toEqual(['offcut']))
  it('an offcut over a part', () =>
    expect(check({ ...layout, offcuts: [{ x: 60, y: 2, length: 24, width: 50 }] })).toContain('overlap'))
  it('cuts that set free other parts than are drawn', () =>
    expect(check({ ...layout, cuts: { kind: 'part', part: 'A', turned: false } })).toContain('cuts'))
  it('a cut that misses its piece', () =>
    expect(
      check({
        ...layout,
        cuts: { kind: 'cut', across: 'x', at: 96, first: layout.cuts, second: { kind: 'rest' } },
      }),
    ).toContain('cuts'))
  it('a cut at the very edge', () =>
    expect(
      check({
        ...layout,
        cuts: { kind: 'cut', across: 'x', at: 0, first: { kind: 'rest' }, second: layout.cuts },
      }),
    ).toContain('cuts'))

  it('fewer parts are no fault when the most is asked', () => {
    const more = { ...problem, parts: problem.parts.map((part) => ({ ...part, count: 9 })) }
    expect(verifySheets(more, [layout], 'most')).toEqual([])
    const fewer = { ...problem, parts: problem.parts.map((part) => ({ ...part, count: 1 })) }
    expect(rules(verifySheets(fewer, [layout], 'most'))).toEqual(['demand'])
  })

  it('one of each sheet is all there is for the most, where nothing is said', () => {
    const more = {
      ...problem,
      parts: problem.parts.map((part) => ({ ...part, count: 9 })),
      stock: [{ id: 'S', length: 100, width: 60, price: 500 }],
    }
    expect(verifySheets(more, [layout], 'most')).toEqual([])
    expect(rules(verifySheets(more, [{ ...layout, count: 2 }], 'most'))).toEqual(['onHand'])
  })

  it('a worth that is not laid, above its bound, or called optimal below it', () => {
    // 2 x (40 x 20) by area and one of 40 x 30 said to be worth 7.
    const valued = { ...problem, parts: [problem.parts[0]!, { ...problem.parts[1]!, worth: 7 }] }
    const most = { status: 'optimal', layouts: [layout], worth: 1607, upperBound: 1607 } as const
    expect(verifyWorth(valued, most)).toEqual([])
    expect(rules(verifyWorth(valued, { ...most, worth: 1600 }))).toEqual(['worth'])
    expect(rules(verifyWorth(valued, { ...most, upperBound: 1606 }))).toEqual(['worth'])
    expect(rules(verifyWorth(valued, { ...most, upperBound: 1700 }))).toEqual(['worth'])
    expect(verifyWorth(valued, { ...most, upperBound: 1700, status: 'stopped' })).toEqual([])
  })

  it('says which layout and which part', () => {
    const [fault] = verifySheets(problem, [moved(0, { x: 1 })])
    expect(fault).toMatchObject({ layout: 0, part: 'A' })
    expect(fault?.sentence).toBe('layout 1: part "A" at (1, 2) sticks out of the trimmed sheet')
  })
})

describe('a pinwheel', () => {
  const sizes = [
    { id: 'N', x: 0, y: 0, length: 6, width: 3 },
    { id: 'E', x: 7, y: 0, length: 3, width: 6 },
    { id: 'S', x: 4, y: 7, length: 6, width: 3 },
    { id: 'W', x: 0, y: 4, length: 3, width: 6 },
  ]
  const pinwheel = {
    problem: {
      parts: sizes.map(({ id, length, width }) => ({ id, length, width, count: 1, turnable: false })),
      stock: [{ id: 'S', length: 10, width: 10, price: 1 }],
      kerf: 1,
      trim: 0,
      keepable: 2,
    },
    layout: {
      stock: 'S',
      count: 1,
      placements: sizes.map(({ id, ...at }) => ({ ...at, part: id, turned: false })),
      offcuts: [],
      cuts: { kind: 'rest' as const },
    },
  }

  it('is apart but cannot be sawn', () => {
    const found = rules(verifySheets(pinwheel.problem, [pinwheel.layout]))
    expect(found).toContain('guillotine')
    expect(found).not.toContain('overlap')
    expect(found).not.toContain('kerf')
    expect(found).not.toContain('inside')
  })

  it('is found below a first cut too', () => {
    const beside = { id: 'L', length: 5, width: 10, count: 1, turnable: false }
    const wide = {
      ...pinwheel.problem,
      parts: [...pinwheel.problem.parts, beside],
      stock: [{ id: 'S', length: 16, width: 10, price: 1 }],
    }
    const placements = [
      ...pinwheel.layout.placements,
      { part: 'L', turned: false, x: 11, y: 0, length: 5, width: 10 },
    ]
    const faults = verifySheets(wide, [{ ...pinwheel.layout, placements }])
    expect(faults.filter((fault) => fault.rule === 'guillotine').map((fault) => fault.sentence)).toEqual([
      expect.not.stringContaining('"L"'),
    ])
  })
})

describe('random sheets', () => {
  it('cut by straight cuts are sound', () => {
    fc.assert(
      fc.property(randomSheet, (sheet) => {
        expect(verifySheets(sheet.problem, [sheet.layout])).toEqual([])
      }),
    )
  })

  it('with one part moved are caught, unless the pixels say they are still sound', () => {
    const move = fc.record({
      pick: fc.nat(),
      dx: fc.integer({ min: -2, max: 2 }),
      dy: fc.integer({ min: -2, max: 2 }),
    })
    let [caught, passed] = [0, 0]
    fc.assert(
      fc.property(randomSheet, move, ({ problem: about, layout: sound }, { pick, dx, dy }) => {
        fc.pre(dx !== 0 || dy !== 0)
        const at = pick % sound.placements.length
        const placements = sound.placements.map((placement, index) =>
          index === at ? { ...placement, x: placement.x + dx, y: placement.y + dy } : placement,
        )
        const faults = verifySheets(about, [{ ...sound, offcuts: [], placements }])
        // The cuts set the part free at its old place: that alone must be seen.
        expect(rules(faults)).toContain('cuts')
        const sheet = about.stock[0]!
        const whole = {
          x: about.trim,
          y: about.trim,
          length: sheet.length - 2 * about.trim,
          width: sheet.width - 2 * about.trim,
        }
        const isApart = paintsApart(placements, whole, about.kerf)
        const isSound = isApart && canSawApart(placements, whole, about.kerf)
        const seen = rules(faults).filter((rule) => rule !== 'cuts' && rule !== 'offcut')
        expect(seen.length === 0).toBe(isSound)
        if (isSound) passed += 1
        else caught += 1
      }),
      { numRuns: 1500, seed: 7 },
    )
    expect(Math.min(caught, passed)).toBeGreaterThan(30)
  })

  it('scattered by several moves agree with trying every cut', () => {
    const moves = fc.array(fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 })), {
      minLength: 8,
      maxLength: 8,
    })
    fc.assert(
      fc.property(randomSheet, moves, ({ problem: about, layout: sound }, shifts) => {
        const placements = sound.placements.map((placement, index) => {
          const [dx, dy] = shifts[index % shifts.length]!
          return { ...placement, x: placement.x + dx, y: placement.y + dy }
        })
        const whole = { x: -9, y: -9, length: 60, width: 60 }
        fc.pre(paintsApart(placements, whole, about.kerf))
        const faults = verifySheets(about, [{ ...sound, offcuts: [], placements }])
        const inseparable = faults.some((fault) => fault.rule === 'guillotine')
        expect(inseparable).toBe(!canSawApart(placements, whole, about.kerf))
      }),
      { numRuns: 300 },
    )
  })
})

describe('a large layout', () => {
  it('of 1000 parts is read in full', () => {
    const draws = Array.from({ length: 90_000 }, (_, index) => 7 * index * index + 13 * index)
    const big = growSheet(
      { length: 4_000_000, width: 4_000_000, kerf: 1, trim: 0, keepable: 50, depth: 15 },
      draws,
    )
    expect(big.problem.parts.length).toBeGreaterThan(1000)
    expect(verifySheets(big.problem, [big.layout])).toEqual([])
  })
})
