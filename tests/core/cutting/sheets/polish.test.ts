import { describe, expect, it } from 'vitest'
import { readJob } from '../../../../src/core/cutting/sheets/job.ts'
import { emptyPacking, type Packing } from '../../../../src/core/cutting/sheets/packing.ts'
import { finishOf, polish } from '../../../../src/core/cutting/sheets/polish.ts'
import { createRandom } from '../../../../src/core/cutting/sheets/random.ts'
import { startPacking } from '../../../../src/core/cutting/sheets/start.ts'

const packingOf = (sizes: readonly (readonly [number, number, number])[]): Packing => {
  const job = readJob({
    parts: sizes.map(([length, width, count], index) => ({
      id: `part ${index}`,
      length,
      width,
      count,
      turnable: true,
    })),
    stock: [{ id: 'sheet', length: 240, width: 120, price: 5 }],
    kerf: 3,
    trim: 0,
    keepable: 20,
  })
  const packing = emptyPacking(job)
  startPacking(packing, createRandom(1), () => false)
  return packing
}

describe('finishOf', () => {
  it('counts a fence setting once, however many cuts it makes', () => {
    expect(finishOf(packingOf([[50, 120, 4]])).settings).toBe(1)
  })

  it('measures the largest offcut without the kerf that frees it', () => {
    const { offcut } = finishOf(packingOf([[50, 120, 4]]))
    expect(offcut).toBe((240 - 4 * 53) * 120)
  })
})

describe('polish', () => {
  it('needs no more settings than before, at the same cost, with all parts laid', () => {
    const sizes = [
      [71, 40, 5],
      [43, 40, 5],
      [71, 46, 3],
      [30, 12, 9],
      [55, 33, 4],
    ] as const
    const packing = packingOf(sizes)
    const before = { cost: packing.cost, ...finishOf(packing) }
    polish(packing, 2e7, createRandom(2), () => false)
    const after = finishOf(packing)
    expect(packing.cost).toBeLessThanOrEqual(before.cost)
    expect(packing.leftCount).toBe(0)
    expect(after.settings).toBeLessThan(before.settings)
  })
})
