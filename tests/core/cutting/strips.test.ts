import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boardsTaken, cutStrips } from '../../../src/core/cutting/strips.ts'
import { leastSum } from '../../../src/core/cutting/strips/leastSum.ts'
import type { StockBoard, StripProblem } from '../../../src/core/cutting/strips/stripProblem.ts'
import { verifyStrips } from '../../../src/core/cutting/verify/strips.ts'

const never = { shouldStop: () => false }

const problemOf = (
  parts: readonly (readonly [length: number, count: number])[],
  stock: readonly StockBoard[],
): StripProblem => ({
  parts: parts.map(([length, count], index) => ({ id: `P${index}`, length, count })),
  stock,
  kerf: 1,
  trim: 0,
  keepable: 5,
})

const board = (id: string, length: number, strips: number, price: number, onHand?: number): StockBoard => ({
  id,
  length,
  strips,
  price,
  ...(onHand === undefined ? {} : { onHand }),
})

async function solve(problem: StripProblem) {
  const outcome = await cutStrips(problem, never)
  expect(verifyStrips(problem, outcome)).toEqual([])
  return outcome
}

describe('cutStrips', () => {
  it('counts boards, not strips', async () => {
    // Nine strips of one part each, four to a board: three boards.
    const outcome = await solve(problemOf([[60, 9]], [board('B', 100, 4, 500)]))
    expect(outcome).toMatchObject({ status: 'optimal', pieces: 3, cost: 1500, lowerBound: 1500 })
  })

  it('does not begin two boards where one would do', async () => {
    // By shares a short strip (250) and a long one (300) are the least for 48 and 98; but that is two boards for 1100.
    const stock = [board('short', 50, 2, 500), board('long', 100, 2, 600)]
    const outcome = await solve(
      problemOf(
        [
          [48, 1],
          [98, 1],
        ],
        stock,
      ),
    )
    expect(outcome).toMatchObject({ status: 'optimal', pieces: 1, cost: 600 })
  })

  it('takes boards on hand first, and no more than there are', async () => {
    const stock = [board('shop', 100, 3, 700), board('own', 100, 3, 0, 1)]
    const outcome = await solve(problemOf([[60, 5]], stock))
    expect(outcome).toMatchObject({ status: 'optimal', pieces: 2, cost: 700 })
  })

  it('names the part that no board is long enough for, or that what is on hand does not reach', async () => {
    expect(await solve(problemOf([[120, 1]], [board('B', 100, 4, 500)]))).toMatchObject({
      status: 'impossible',
      part: 'P0',
      proven: true,
    })
    expect(await solve(problemOf([[60, 9]], [board('B', 100, 4, 0, 2)]))).toMatchObject({
      status: 'impossible',
      part: 'P0',
    })
  })

  it('gives what it has when it is stopped at once, with a bound that holds', async () => {
    const problem = problemOf(
      [
        [33, 7],
        [41, 9],
      ],
      [board('a', 100, 3, 500), board('b', 120, 3, 580)],
    )
    const stopped = await cutStrips(problem, { shouldStop: () => true })
    expect(verifyStrips(problem, stopped)).toEqual([])
    const best = await solve(problem)
    if (stopped.status === 'impossible' || best.status === 'impossible') throw new Error('it can be cut')
    expect(stopped.lowerBound).toBeLessThanOrEqual(best.cost)
    expect(stopped.cost).toBeGreaterThanOrEqual(best.cost)
  })

  it('is the least of all choices of boards', async () => {
    const sizes = fc.array(fc.tuple(fc.integer({ min: 8, max: 40 }), fc.integer({ min: 1, max: 3 })), {
      minLength: 1,
      maxLength: 3,
    })
    const price = fc.integer({ min: 1, max: 9 })
    const strips = fc.integer({ min: 1, max: 4 })
    await fc.assert(
      fc.asyncProperty(
        sizes,
        fc.tuple(price, price),
        fc.tuple(strips, strips),
        async (parts, prices, counts) => {
          const problem = problemOf(parts, [
            board('short', 41, counts[0], prices[0]),
            board('long', 67, counts[1], prices[1]),
          ])
          const outcome = await solve(problem)
          if (outcome.status === 'impossible') throw new Error('it can be cut')
          expect(outcome.status).toBe('optimal')
          expect(outcome.cost).toBe(leastByTrying(problem))
        },
      ),
      { numRuns: 40 },
    )
  })
})

/** Every number of short and long boards is tried, and every way to fill their strips. */
function leastByTrying({ parts, stock, kerf }: StripProblem): number {
  const pieces = parts.flatMap(({ length, count }) => Array.from({ length: count }, () => length + kerf))
  const [short, long] = stock as readonly [StockBoard, StockBoard]
  const sorted = pieces.toSorted((a, b) => b - a)
  let best = Number.POSITIVE_INFINITY
  for (let longs = 0; longs <= pieces.length; longs += 1)
    for (let shorts = 0; shorts <= pieces.length; shorts += 1) {
      const cost = longs * long.price + shorts * short.price
      if (cost >= best) break
      const bins = [
        ...Array.from({ length: longs * long.strips }, () => long.length + kerf),
        ...Array.from({ length: shorts * short.strips }, () => short.length + kerf),
      ]
      if (fits(sorted, bins.slice(-pieces.length - longs * long.strips))) best = cost
    }
  return best
}

function fits([first, ...others]: readonly number[], bins: readonly number[]): boolean {
  if (first === undefined) return true
  const tried = new Set<number>()
  return bins.some((room, at) => {
    if (room < first || tried.has(room)) return false
    tried.add(room)
    return fits(others, bins.with(at, room - first))
  })
}

describe('boardsTaken', () => {
  it('rounds strips up to boards, for each stock by itself', () => {
    const layouts = [
      { stock: 'a', count: 5, parts: ['P'], offcut: 0 },
      { stock: 'b', count: 1, parts: ['P'], offcut: 0 },
      { stock: 'a', count: 4, parts: ['P', 'P'], offcut: 0 },
    ]
    const stock = [
      { id: 'a', strips: 4 },
      { id: 'b', strips: 3 },
      { id: 'c', strips: 3 },
    ]
    expect([...boardsTaken(stock, layouts)]).toEqual([
      ['a', 3],
      ['b', 1],
    ])
  })
})

describe('leastSum', () => {
  it.each([
    [[500], 1, 500],
    [[500], 501, 1000],
    [[480, 620], 900, 960],
    [[480, 620], 1101, 1240],
    [[480, 620], 0, 0],
    [[0, 300], 301, 600],
    [[0], 7, 7],
    [[], 7, 7],
  ])('of %j from %i on is %i', (prices, atLeast, sum) => expect(leastSum(prices, atLeast)).toBe(sum))

  it('stays below every sum that there is, where there are too many to list', () =>
    expect(leastSum([2, 4], 9_000_001)).toBe(9_000_002))
})

describe('verifyStrips', () => {
  const problem = problemOf([[60, 3]], [board('B', 100, 2, 500, 2)])
  const layouts = [{ stock: 'B', count: 3, parts: ['P0'], offcut: 39 }]
  const outcome = { status: 'optimal' as const, layouts, cost: 1000, pieces: 2, lowerBound: 1000 }

  it('accepts what is sound', () => expect(verifyStrips(problem, outcome)).toEqual([]))
  it('counts whole boards', () => {
    expect(verifyStrips(problem, { ...outcome, pieces: 3 })).not.toEqual([])
    expect(verifyStrips(problem, { ...outcome, cost: 750, lowerBound: 750 })).not.toEqual([])
  })
  it('counts the boards on hand', () => {
    const fewer = problemOf([[60, 3]], [board('B', 100, 2, 500, 1)])
    expect(verifyStrips(fewer, outcome).map(({ rule }) => rule)).toEqual(['onHand'])
  })
  it('looks at every strip', () =>
    expect(verifyStrips(problem, { ...outcome, layouts: [{ ...layouts[0]!, offcut: 40 }] })).not.toEqual([]))
})
