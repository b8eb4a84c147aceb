import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LengthLayout, LengthProblem, Outcome } from '../../../src/core/cutting/problem.ts'
import { verifyCost, verifyLengths } from '../../../src/core/cutting/verify.ts'

/** From 96 with a kerf of 1 and 2 trimmed: 40 + 1 + 40 + 1 = 82 of 94, so 12 is left. */
const problem: LengthProblem = {
  parts: [
    { id: 'A', length: 40, count: 4 },
    { id: 'B', length: 93, count: 1 },
  ],
  stock: [{ id: '8 ft', length: 96, price: 700, onHand: 3 }],
  kerf: 1,
  trim: 2,
  keepable: 6,
}

const layouts: LengthLayout[] = [
  { stock: '8 ft', count: 2, parts: ['A', 'A'], offcut: 12 },
  { stock: '8 ft', count: 1, parts: ['B'], offcut: 0 },
]

const check = (changed: readonly LengthLayout[], about: Partial<LengthProblem> = {}): string[] =>
  verifyLengths({ ...problem, ...about }, changed).map((fault) => fault.rule)

const change = (edit: Partial<LengthLayout>): LengthLayout[] => [{ ...layouts[0]!, ...edit }, layouts[1]!]

describe('boards that are sound', () => {
  it('are accepted', () => expect(check(layouts)).toEqual([]))
  it('may fill the board to the last unit without a last kerf', () =>
    expect(check(layouts, { parts: [problem.parts[0]!, { id: 'B', length: 94, count: 1 }] })).toEqual([]))
  it('may give a remainder too short to keep as it is or as 0', () => {
    expect(check(change({ offcut: 0 }), { keepable: 20 })).toEqual([])
    expect(check(layouts, { keepable: 20 })).toEqual([])
  })
})

describe('each rule broken', () => {
  it('parts past the end', () => expect(check(layouts, { trim: 20 })).toContain('inside'))
  it('kerfs past the end', () => {
    // 23 x 4 = 92 and three kerfs of 1 make 95, one more than the 94 there are.
    const quarters: LengthProblem = { ...problem, parts: [{ id: 'Q', length: 23, count: 4 }] }
    const board = { stock: '8 ft', count: 1, parts: ['Q', 'Q', 'Q', 'Q'], offcut: 0 }
    expect(verifyLengths(quarters, [board]).map((fault) => fault.rule)).toEqual(['inside'])
    expect(verifyLengths({ ...quarters, trim: 1 }, [board])).toEqual([])
  })
  it('an offcut that is not there', () => expect(check(change({ offcut: 13 }))).toEqual(['offcut']))
  it('an offcut left out', () => expect(check(change({ offcut: 0 }))).toEqual(['offcut']))
  it('a part made too often', () => expect(check(change({ count: 3 }))).toContain('demand'))
  it('a part not made', () => expect(check(layouts.slice(1))).toEqual(['demand']))
  it('a part that nobody asked for', () => expect(check(change({ parts: ['A', 'Z'] }))).toContain('demand'))
  it('more boards than are on hand', () =>
    expect(check(layouts, { stock: [{ ...problem.stock[0]!, onHand: 2 }] })).toEqual(['onHand']))
  it('stock that nobody sells', () => expect(check(change({ stock: '9 ft' }))).toEqual(['stock']))
  it('a count that is none', () => expect(check(change({ count: -2 }))).toContain('count'))
  it('a board with nothing cut from it', () =>
    expect(check([...layouts, { stock: '8 ft', count: 1, parts: [], offcut: 94 }])).toContain('count'))
  it('names layout and part', () =>
    expect(verifyLengths({ ...problem, trim: 20 }, layouts)[0]).toMatchObject({
      layout: 0,
      part: 'A',
      sentence: 'layout 1: part "A" ends past the end of "8 ft"',
    }))
})

describe('boards filled at random', () => {
  it('agree with painting the board unit by unit', () => {
    const parts = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 6 })
    const sizes = fc.record({
      length: fc.integer({ min: 8, max: 40 }),
      kerf: fc.integer({ min: 0, max: 3 }),
      trim: fc.integer({ min: 0, max: 3 }),
      offcut: fc.nat({ max: 40 }),
    })
    fc.assert(
      fc.property(parts, sizes, (lengths, { length, kerf, trim, offcut }) => {
        const board = Array.from({ length: length - trim }, () => 'free')
        const fitsAll = lengths.every((wanted) => {
          const start = board.indexOf('free')
          if (start < 0 || start + wanted > board.length) return false
          board.fill('part', start, start + wanted).fill('dust', start + wanted, start + wanted + kerf)
          return true
        })
        const left = board.filter((unit) => unit === 'free').length
        const about: LengthProblem = {
          parts: lengths.map((wanted, index) => ({ id: `${index}`, length: wanted, count: 1 })),
          stock: [{ id: 'S', length, price: 1 }],
          kerf,
          trim,
          keepable: 1,
        }
        const layout = { stock: 'S', count: 1, parts: lengths.map((_, index) => `${index}`), offcut }
        expect(verifyLengths(about, [layout]).length === 0).toBe(fitsAll && left === offcut)
        if (fitsAll) expect(verifyLengths(about, [{ ...layout, offcut: left }])).toEqual([])
      }),
    )
  })
})

describe('the cost', () => {
  const outcome: Outcome<LengthLayout> = {
    status: 'optimal',
    layouts,
    cost: 2100,
    pieces: 3,
    lowerBound: 2100,
  }
  const wrongs = (edit: Partial<Extract<Outcome<LengthLayout>, { cost: number }>>): number =>
    verifyCost(problem, { ...outcome, ...edit } as Outcome<LengthLayout>).length

  it('adds up', () => expect(wrongs({})).toBe(0))
  it('is caught when it does not', () => expect(wrongs({ cost: 2200 })).toBeGreaterThan(0))
  it('needs the right number of pieces', () => expect(wrongs({ pieces: 2 })).toBe(1))
  it('is not optimal on a lower bound below it', () => expect(wrongs({ lowerBound: 1400 })).toBe(1))
  it('may be above the bound when the search was stopped', () =>
    expect(wrongs({ lowerBound: 1400, status: 'stopped' })).toBe(0))
  it('cannot be below its bound', () => expect(wrongs({ lowerBound: 2200, status: 'stopped' })).toBe(1))
  it('has nothing to say of the impossible', () =>
    expect(
      verifyCost(problem, { status: 'impossible', part: 'B', reason: 'too long', proven: true }),
    ).toEqual([]))
})
