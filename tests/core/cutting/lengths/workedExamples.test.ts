import { describe, expect, it } from 'vitest'
import { cutLengths } from '../../../../src/core/cutting/lengths.ts'
import { cuttingExamples } from '../../../data/cuttingExamples.ts'
import { boardsOf, neverStop, problemOf, soundly } from './examples.ts'

describe('worked examples', () => {
  it.each(cuttingExamples)('$name: $source', async ({ stock, kerf, parts, fewest }) => {
    const problem = problemOf(parts, boardsOf(stock), kerf)
    const outcome = soundly(problem, await cutLengths(problem, { shouldStop: neverStop }))
    expect(outcome.pieces).toBe(fewest)
    expect(outcome.status).toBe('optimal')
  })

  it.each(cuttingExamples)(
    '$name: the same with a kerf taken off every size and the stock',
    async (example) => {
      const kerf = 1
      const parts = example.parts.map(([length, count]) => [length * 2 - kerf, count] as const)
      const problem = problemOf(parts, boardsOf(example.stock * 2 - kerf), kerf + 2 * example.kerf)
      const bare = problemOf(
        example.parts.map(([length, count]) => [(length + example.kerf) * 2, count] as const),
        boardsOf((example.stock + example.kerf) * 2),
      )
      const withKerf = soundly(problem, await cutLengths(problem, { shouldStop: neverStop }))
      const without = soundly(bare, await cutLengths(bare, { shouldStop: neverStop }))
      expect(withKerf.pieces).toBe(without.pieces)
      expect(without.pieces).toBe(example.fewest)
    },
  )
})
