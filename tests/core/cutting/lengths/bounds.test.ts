import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leastBars, leastFor } from '../../../../src/core/cutting/lengths/bounds.ts'
import { createRounding } from '../../../../src/core/cutting/lengths/prices.ts'
import { reduceProblem } from '../../../../src/core/cutting/lengths/task.ts'
import { boardsOf, problemOf } from './examples.ts'
import { exhaust } from './exhaustion.ts'

const taskOf = (parts: [number, number][], stock = boardsOf(100), kerf = 0) =>
  reduceProblem(problemOf(parts, stock, kerf))

describe('leastBars', () => {
  it('counts long parts one to a bar, though their length would fit fewer', () => {
    expect(leastBars(taskOf([[51, 5]]))).toBe(5)
    expect(
      leastBars(
        taskOf([
          [60, 3],
          [45, 3],
        ]),
      ),
    ).toBe(5)
  })

  it('adds what is too much for the room beside the long parts', () => {
    expect(
      leastBars(
        taskOf([
          [70, 2],
          [30, 6],
        ]),
      ),
    ).toBe(4)
  })

  it('is never more than the fewest bars', () => {
    const sizes = fc.array(fc.integer({ min: 5, max: 100 }), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(sizes, (lengths) => {
        const problem = problemOf(
          lengths.map((length) => [length, 1]),
          boardsOf(100),
        )
        expect(leastBars(reduceProblem(problem))).toBeLessThanOrEqual(exhaust(problem)?.pieces ?? 0)
      }),
      { numRuns: 100, seed: 6 },
    )
  })
})

describe('leastFor', () => {
  it('uses up the cheapest length first', () => {
    const stock = [
      { id: 'offcut', length: 50, price: 0, onHand: 1 },
      { id: 'board', length: 100, price: 10 },
    ]
    const task = taskOf(
      [
        [40, 4],
        [30, 1],
      ],
      stock,
    )
    // 190 altogether: 50 from the offcut for nothing, 140 from boards at 1000 for 100.
    expect(leastFor(task, (bar) => (bar.price > 0 ? 1000 : 0))).toBe(1400)
  })
})

describe('createRounding', () => {
  const stock = [
    { id: 'short', length: 60, price: 7 },
    { id: 'long', length: 100, price: 11 },
  ]

  it('rounds up to what whole bars can come to', () => {
    const round = createRounding(taskOf([[50, 3]], stock), 22)
    // 18 is one of each, long enough for 150; 14, 15, 16 and 17 are no sums of 7 and 11, or are too short.
    expect(round(14.2)).toBe(18)
    expect(round(18.01)).toBe(21)
  })

  it('passes over prices that do not buy the length', () => {
    expect(createRounding(taskOf([[50, 3]], stock), 22)(8)).toBe(18)
  })

  it('goes no higher than the price known to do, and only up to a whole number for great prices', () => {
    expect(createRounding(taskOf([[50, 3]], stock), 18)(18)).toBe(18)
    expect(createRounding(taskOf([[50, 3]], stock), 10_000_000)(14.2)).toBe(15)
  })
})
