import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FOOT, inches, type Length, times, ZERO } from '../../../src/core/measure/length.ts'
import { boardsFor } from '../../../src/core/panelling/boards.ts'

describe('boardsFor', () => {
  it.each([
    [20, 6, 4, 4],
    [18, 6, 3, 0],
    [19, 6, 4, 5],
    [1, 14, 1, 13],
    [0, 5, 0, 0],
  ])('%s strips at %s a board are %s boards and %s strips over', (strips, perBoard, boards, spareStrips) => {
    expect(boardsFor({ strips }, perBoard)).toEqual({ status: 'counted', strips, boards, spareStrips })
  })

  it('counts whole strips for a total length', () => {
    const need = (total: Length) => boardsFor({ total, boardLength: times(FOOT, 8) }, 4)
    expect(need(times(FOOT, 33))).toEqual({ status: 'counted', strips: 5, boards: 2, spareStrips: 3 })
    expect(need(times(FOOT, 32))).toEqual({ status: 'counted', strips: 4, boards: 1, spareStrips: 0 })
    expect(need((times(FOOT, 32) + 1) as Length)).toMatchObject({ strips: 5, boards: 2 })
  })

  it('buys enough and never a board too many', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 1, max: 60 }), (strips, perBoard) => {
        const found = boardsFor({ strips }, perBoard)
        if (found.status === 'impossible') throw new Error('impossible')
        expect(found.boards * perBoard).toBeGreaterThanOrEqual(strips)
        expect((found.boards - 1) * perBoard).toBeLessThan(Math.max(1, strips))
      }),
    )
  })

  it('has no answer where a board gives no strip or has no length', () => {
    expect(boardsFor({ strips: 3 }, 0)).toEqual({ status: 'impossible' })
    expect(boardsFor({ strips: -1 }, 3)).toEqual({ status: 'impossible' })
    expect(boardsFor({ total: inches(9), boardLength: ZERO }, 3)).toEqual({ status: 'impossible' })
  })
})
