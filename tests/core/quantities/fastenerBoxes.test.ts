import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fillBoxes } from '../../../src/core/quantities/fastenerBoxes.ts'

describe('fillBoxes', () => {
  it('adds a tenth and takes the smallest box that holds them', () => {
    expect(fillBoxes(100, [100, 200, 1000])).toEqual({
      fasteners: 110,
      boxes: [{ size: 200, count: 1 }],
      left: 90,
    })
    expect(fillBoxes(91, [100], 0.1)).toMatchObject({ fasteners: 101, boxes: [{ size: 100, count: 2 }] })
    expect(fillBoxes(100, [100, 200], 0)).toMatchObject({ boxes: [{ size: 100, count: 1 }], left: 0 })
    expect(fillBoxes(90, [100], 0.1)).toMatchObject({ fasteners: 99, boxes: [{ size: 100, count: 1 }] })
  })

  it('fills the largest first', () => {
    expect(fillBoxes(2050, [1000, 100], 0).boxes).toEqual([
      { size: 1000, count: 2 },
      { size: 100, count: 1 },
    ])
    expect(fillBoxes(1950, [1000, 100], 0).boxes).toEqual([{ size: 1000, count: 2 }])
  })

  it('buys nothing for nothing, and refuses no boxes and fewer than none', () => {
    expect(fillBoxes(0, [100])).toEqual({ fasteners: 0, boxes: [], left: 0 })
    expect(() => fillBoxes(1, [])).toThrow(RangeError)
    expect(() => fillBoxes(-1, [100])).toThrow(RangeError)
  })

  it('always holds what is needed and never leaves a largest box full, and takes more for more', () => {
    const sizes = fc.uniqueArray(fc.integer({ min: 10, max: 5000 }), { minLength: 1, maxLength: 4 })
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20_000 }), sizes, (count, boxes) => {
        const bought = fillBoxes(count, boxes)
        const total = bought.boxes.reduce((sum, box) => sum + box.size * box.count, 0)
        expect(total - bought.fasteners).toBe(bought.left)
        expect(bought.left).toBeGreaterThanOrEqual(0)
        expect(bought.left).toBeLessThan(Math.max(...boxes))
        expect(bought.fasteners).toBeGreaterThanOrEqual(count)
        expect(fillBoxes(count + 1, boxes).fasteners).toBeGreaterThanOrEqual(bought.fasteners)
      }),
    )
  })
})
