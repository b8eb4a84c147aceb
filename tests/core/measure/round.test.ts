import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { INCH, inches, type Length, MILLIMETRE, nanometres } from '../../../src/core/measure/length.ts'
import { roundFor, roundTo } from '../../../src/core/measure/round.ts'

const length = fc.integer({ min: -20_000_000_000, max: 20_000_000_000 }).map(nanometres)
const step = fc
  .constantFrom(INCH / 8, INCH / 16, INCH / 32, INCH / 64, MILLIMETRE, MILLIMETRE / 2, MILLIMETRE / 10)
  .map(nanometres)

describe('roundTo', () => {
  it.each<[Length, 'nearest' | 'down' | 'up', Length]>([
    [inches(33, 32), 'nearest', inches(17, 16)],
    [inches(31, 32), 'nearest', inches(1)],
    [inches(-33, 32), 'nearest', inches(-1)],
    [inches(33, 32), 'down', inches(1)],
    [inches(33, 32), 'up', inches(17, 16)],
    [inches(-33, 32), 'down', inches(-17, 16)],
    [inches(-33, 32), 'up', inches(-1)],
    [nanometres(INCH + 1), 'up', inches(17, 16)],
    [nanometres(INCH - 1), 'down', inches(15, 16)],
  ])('rounds %d %s to %d in sixteenths of an inch', (from, direction, to) => {
    expect(roundTo(from, inches(1, 16), direction)).toBe(to)
  })

  it('never gives a negative zero', () => {
    expect(Object.is(roundTo(nanometres(-1), inches(1, 16), 'up'), 0)).toBe(true)
    expect(Object.is(roundTo(nanometres(-1), inches(1, 16), 'nearest'), 0)).toBe(true)
  })

  it('gives whole steps, no further off than a step, on the side that was asked for', () => {
    fc.assert(
      fc.property(length, step, (from, size) => {
        const [down, nearest, up] = (['down', 'nearest', 'up'] as const).map((way) =>
          roundTo(from, size, way),
        )
        for (const mark of [down, nearest, up]) expect(Math.abs(mark! % size)).toBe(0)
        expect(down).toBeLessThanOrEqual(from)
        expect(up).toBeGreaterThanOrEqual(from)
        expect(up! - down!).toBe(from % size === 0 ? 0 : size)
        expect(Math.abs(nearest! - from) * 2).toBeLessThanOrEqual(size)
      }),
    )
  })

  it('moves with the length by whole steps, and mirrors down into up', () => {
    fc.assert(
      fc.property(length, step, fc.integer({ min: -1000, max: 1000 }), (from, size, count) => {
        const moved = nanometres(from + count * size)
        for (const way of ['down', 'nearest', 'up'] as const)
          expect(roundTo(moved, size, way)).toBe(roundTo(from, size, way) + count * size)
        expect(roundTo(nanometres(-from), size, 'up') + roundTo(from, size, 'down')).toBe(0)
      }),
    )
  })
})

describe('roundFor', () => {
  it('rounds what goes into something down, what covers up, and a mark to the nearest', () => {
    const third = inches(10, 3)
    expect(roundFor(third, inches(1, 16), 'into')).toBe(inches(53, 16))
    expect(roundFor(third, inches(1, 16), 'cover')).toBe(inches(54, 16))
    expect(roundFor(third, inches(1, 16), 'mark')).toBe(inches(53, 16))
  })
})
