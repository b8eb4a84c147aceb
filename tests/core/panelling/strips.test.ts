import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, ZERO } from '../../../src/core/measure/length.ts'
import { countStrips, type StripCount } from '../../../src/core/panelling/strips.ts'
import { lengths } from './specs.ts'

const counted = (board: Length, strip: Length, kerf: Length): StripCount => {
  const found = countStrips({ board, strip, kerf })
  if (found.status === 'impossible') throw new Error('impossible')
  return found
}

const EIGHTH = inches(1, 8)

describe('countStrips', () => {
  it('halves a 30 in bat into two of 14 15/16 in, an eighth lost to the kerf', () => {
    // toolboxtoday.com, kerf example: 30 in less 1/8 in, halved.
    expect(counted(inches(30), inches(239, 16), EIGHTH)).toMatchObject({ count: 2, spare: 0, safeCount: 1 })
    expect(counted(inches(30), (inches(239, 16) + 1) as Length, EIGHTH).count).toBe(1)
  })

  // 5 1/2 in is the dressed width of a 1x6 or 2x6, 3 1/2 in of a 2x4; each worked by hand, kerf 1/8 in.
  it.each([
    [
      '1/4 in from 5 1/2: 15 strips and 14 kerfs are 5 1/2 exactly',
      inches(11, 2),
      inches(1, 4),
      15,
      14,
      ZERO,
      ZERO,
      true,
    ],
    ['1 1/4 in from 3 1/2', inches(7, 2), inches(5, 4), 2, 2, inches(7, 8), inches(3, 4), false],
    ['1 1/8 in from 3 1/2', inches(7, 2), inches(9, 8), 2, 2, inches(9, 8), inches(1), false],
    ['3/4 in from 3 1/2: the rest is one kerf', inches(7, 2), inches(3, 4), 4, 4, EIGHTH, ZERO, false],
    ['3/4 in from 5 1/2', inches(11, 2), inches(3, 4), 6, 6, inches(3, 8), inches(1, 4), false],
    ['1 1/2 in from 5 1/2', inches(11, 2), inches(3, 2), 3, 3, inches(3, 4), inches(5, 8), false],
    ['four equal from 5 1/2', inches(11, 2), inches(41, 32), 4, 3, ZERO, ZERO, true],
    ['8 in from 96', inches(96), inches(8), 11, 11, inches(27, 4), inches(53, 8), false],
    ['24 in from 96', inches(96), inches(24), 3, 3, inches(95, 4), inches(189, 8), false],
    ['11 in from 100', inches(100), inches(11), 9, 8, ZERO, ZERO, true],
    ['a strip as wide as the board', inches(3), inches(3), 1, 1, ZERO, ZERO, true],
    ['a strip wider than the board', inches(3), inches(4), 0, 0, inches(3), inches(3), false],
    ['1/16 in spare is still tight', inches(33, 16), inches(2), 1, 1, inches(1, 16), ZERO, true],
    ['1/8 in spare is not', inches(17, 8), inches(2), 1, 1, EIGHTH, ZERO, false],
  ] as const)('%s', (_, board, strip, count, safeCount, spare, offcut, tight) => {
    expect(counted(board, strip, EIGHTH)).toEqual({
      status: 'counted',
      count,
      safeCount,
      spare,
      offcut,
      tight,
    })
  })

  it('is what a saw gives that takes one strip at a time', () => {
    fc.assert(
      fc.property(lengths(5, 300), lengths(2, 60), lengths(0, 6), (board, strip, kerf) => {
        // Cut at the strip's width while there is wood for it; the blade takes the kerf or what is left of it.
        let left = BigInt(board)
        let strips = 0
        let spare = left
        while (left >= BigInt(strip)) {
          strips += 1
          left -= BigInt(strip)
          spare = left
          left = left > BigInt(kerf) ? left - BigInt(kerf) : 0n
        }
        const found = counted(board, strip, kerf)
        expect([found.count, BigInt(found.spare), BigInt(found.offcut)]).toEqual([strips, spare, left])
      }),
      { numRuns: 2000 },
    )
  })

  it('counts on one fewer exactly where nothing is spare', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 40 }), lengths(2, 60), lengths(0, 6), (count, strip, kerf) => {
        const board = (count * strip + (count - 1) * kerf) as Length
        expect(counted(board, strip, kerf)).toMatchObject({
          count,
          safeCount: count - 1,
          spare: 0,
          tight: true,
        })
        expect(counted((board + 1) as Length, strip, kerf)).toMatchObject({
          count,
          safeCount: count,
          spare: 1,
        })
        expect(counted((board - 1) as Length, strip, kerf).count).toBe(count - 1)
      }),
    )
  })

  it('never gains by a thicker blade or strip, nor loses by a wider board', () => {
    fc.assert(
      fc.property(
        lengths(5, 300),
        lengths(2, 60),
        lengths(0, 6),
        lengths(1, 9),
        (board, strip, kerf, more) => {
          const { count } = counted(board, strip, kerf)
          expect(counted(board, strip, (kerf + more) as Length).count).toBeLessThanOrEqual(count)
          expect(counted(board, (strip + more) as Length, kerf).count).toBeLessThanOrEqual(count)
          expect(counted((board + more) as Length, strip, kerf).count).toBeGreaterThanOrEqual(count)
        },
      ),
    )
  })

  it.each([
    [0, 1, 1],
    [1, 0, 1],
    [1, 1, -1],
    [Number.NaN, 1, 1],
  ])('has no answer for %s, %s, %s', (board, strip, kerf) => {
    const asked = { board: board as Length, strip: strip as Length, kerf: kerf as Length }
    expect(countStrips(asked)).toEqual({ status: 'impossible' })
  })
})
