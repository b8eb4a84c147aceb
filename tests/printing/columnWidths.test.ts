import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { columnWidths } from '../../src/printing/columnWidths.ts'

const wishes = fc.array(
  fc
    .tuple(fc.double({ min: 1, max: 400, noNaN: true }), fc.double({ min: 0.05, max: 1, noNaN: true }))
    .map(([natural, part]) => ({ natural, least: natural * part })),
  { minLength: 1, maxLength: 9 },
)
const sum = (list: readonly number[]) => list.reduce((total, each) => total + each, 0)

describe('widths of columns', () => {
  it('gives each what it likes where there is room, and the rest to the last', () => {
    expect(
      columnWidths(
        [
          { natural: 20, least: 20 },
          { natural: 50, least: 30 },
        ],
        100,
      ),
    ).toEqual([20, 80])
  })

  it('lets the widest give way first', () => {
    const [number = 0, words = 0, others = 0] = columnWidths(
      [
        { natural: 30, least: 30 },
        { natural: 300, least: 40 },
        { natural: 100, least: 40 },
      ],
      230,
    )
    expect(number).toBe(30)
    expect([words, others]).toEqual([expect.closeTo(100, 2), expect.closeTo(100, 2)])
  })

  it('fills the room exactly, and none is narrower than its longest word while that can be had', () => {
    fc.assert(
      fc.property(wishes, fc.double({ min: 50, max: 900, noNaN: true }), (asked, room) => {
        const widths = columnWidths(asked, room)
        expect(sum(widths)).toBeCloseTo(room, 2)
        const canBeHad = sum(asked.map(({ least }) => least)) < room
        asked.forEach(({ least }, index) => {
          if (canBeHad) expect(widths[index]).toBeGreaterThanOrEqual(least - 1e-6)
        })
      }),
    )
  })
})
