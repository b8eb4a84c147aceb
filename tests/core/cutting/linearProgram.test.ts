import { describe, expect, it } from 'vitest'
import { createProgram, loadSolver, solveWhole } from '../../../src/core/cutting/linearProgram.ts'

const AT_LEAST = (least: number) => ({ least, most: Number.POSITIVE_INFINITY })

describe('createProgram', () => {
  it('solves again after columns, prices and bounds change', async () => {
    const program = createProgram(await loadSolver(), [AT_LEAST(4), AT_LEAST(6)])
    program.addColumns([
      { price: 3, rows: [0], amounts: [1] },
      { price: 2, rows: [1], amounts: [1] },
    ])
    expect(program.solve()?.value).toBeCloseTo(24)
    program.addColumns([{ price: 4, rows: [0, 1], amounts: [1, 1] }])
    const solution = program.solve()
    expect(solution?.value).toBeCloseTo(20)
    expect([...(solution?.worth ?? [])].map(Math.round)).toEqual([2, 2])
    program.setRows([1], [AT_LEAST(4)])
    expect(program.solve()?.value).toBeCloseTo(16)
    program.setPrices(Float64Array.of(1, 1, 4))
    expect(program.solve()?.value).toBeCloseTo(8)
    program.setColumn(0, 0, 1)
    expect(program.solve()?.value).toBeCloseTo(1 + 3 * 4 + 1)
    program.dispose()
  })

  it('has no solution where the rows cannot be met', async () => {
    const program = createProgram(await loadSolver(), [{ least: 2, most: 1 }])
    expect(program.solve()).toBeUndefined()
    program.dispose()
  })
})

describe('solveWhole', () => {
  it('finds whole amounts and says that they are the best', async () => {
    const column = (price: number, amount: number) => ({ price, rows: [0], amounts: [amount] })
    const whole = solveWhole(
      await loadSolver(),
      { columns: [column(5, 3), column(3, 2)], rows: [AT_LEAST(7)], start: Float64Array.of(3, 0) },
      { seconds: 10, seed: 0, shouldStop: () => false },
    )
    expect(whole.settled).toBe(true)
    expect([...(whole.amounts ?? [])].map(Math.round)).toEqual([1, 2])
  })
})
