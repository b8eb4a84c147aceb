import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createDescent, worthWith } from '../../../../src/core/cutting/lengths/descent.ts'
import { listPatterns } from '../../../../src/core/cutting/lengths/enumeration.ts'
import type { Table } from '../../../../src/core/cutting/lengths/knapsack.ts'
import { createTable, fillTable, worthFrom } from '../../../../src/core/cutting/lengths/knapsack.ts'
import { neverStop } from './examples.ts'

interface Thing {
  readonly size: number
  readonly value: number
  readonly limit: number
}

interface Held {
  readonly counts: readonly number[]
  readonly value: number
  readonly room: number
}

/** Every way to hold the things in a room. */
function everyHolding(things: readonly Thing[], capacity: number): Held[] {
  let held: Held[] = [{ counts: [], value: 0, room: capacity }]
  for (const { size, value, limit } of things)
    held = held.flatMap((before) =>
      Array.from({ length: Math.min(limit, Math.floor(before.room / size)) + 1 }, (_, count) => ({
        counts: [...before.counts, count],
        value: before.value + count * value,
        room: before.room - count * size,
      })),
    )
  return held
}

function tableOf(things: readonly Thing[], capacity: number): Table {
  const table = createTable(things.length, capacity)
  const sizes = Float64Array.from(things, (thing) => thing.size)
  const values = Float64Array.from(things, (thing) => thing.value)
  const limits = Int32Array.from(things, (thing) => thing.limit)
  fillTable(table, sizes, values, limits, neverStop, 0)
  return table
}

const thing = fc.record({
  size: fc.integer({ min: 3, max: 40 }),
  value: fc.integer({ min: 0, max: 50 }),
  limit: fc.integer({ min: 1, max: 4 }),
})
const things = fc
  .uniqueArray(thing, { minLength: 1, maxLength: 5, selector: ({ size }) => size })
  .map((list) => list.sort((a, b) => b.size - a.size))

const bestOf = (list: readonly Thing[], capacity: number): number =>
  Math.max(...everyHolding(list, capacity).map((held) => held.value))

describe('the table of a knapsack', () => {
  it('holds the best of every holding', () => {
    fc.assert(
      fc.property(things, fc.integer({ min: 1, max: 100 }), (list, capacity) => {
        expect(worthFrom(tableOf(list, capacity), 0, capacity)).toBe(bestOf(list, capacity))
      }),
      { seed: 1 },
    )
  })

  it('is a bound when one cell stands for many units', () => {
    fc.assert(
      fc.property(things, fc.integer({ min: 20, max: 100 }), (list, capacity) => {
        const large = list.map((one) => ({ ...one, size: one.size * 1_000_003 }))
        const room = capacity * 1_000_003
        const table = tableOf(large, room)
        expect(table.grain).toBeGreaterThan(1)
        expect(worthFrom(table, 0, room)).toBeGreaterThanOrEqual(bestOf(list, capacity))
      }),
      { seed: 1 },
    )
  })

  it('stops when told to', () => {
    const table = createTable(1, 10)
    expect(fillTable(table, Float64Array.of(2), Float64Array.of(1), Int32Array.of(1), () => true)).toBe(false)
  })
})

describe('the descent', () => {
  it.each([1, 1_000_003])('finds the best contents, sizes times %i', (factor) => {
    fc.assert(
      fc.property(things, fc.integer({ min: 1, max: 100 }), (list, capacity) => {
        const large = list.map((one) => ({ ...one, size: one.size * factor }))
        const table = tableOf(large, capacity * factor)
        const descent = createDescent(table, 100_000, neverStop)
        let best = 0
        for (let row = 0; row < table.count; row++) {
          const contents = descent.packFrom(row, capacity * factor, best)
          if (contents === undefined) continue
          const size = contents.types.reduce(
            (sum, type, place) => sum + list[type]!.size * contents.counts[place]!,
            0,
          )
          expect(size).toBeLessThanOrEqual(capacity)
          expect(contents.value).toBeLessThanOrEqual(worthWith(table, row, capacity * factor))
          best = contents.value
        }
        expect(best).toBe(bestOf(list, capacity))
      }),
      { seed: 2 },
    )
  })
})

describe('the list of patterns', () => {
  it('holds every full pattern that is worth enough, and no other', () => {
    fc.assert(
      fc.property(
        things,
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 80 }),
        (list, capacity, floor) => {
          const full = everyHolding(list, capacity).filter(
            ({ counts, room, value }) =>
              value >= floor && list.every((one, place) => counts[place] === one.limit || one.size > room),
          )
          const expected = full.map(({ counts }) => counts.join(' ')).sort()
          const listed = listPatterns(tableOf(list, capacity), 0, capacity, floor, 5000) ?? []
          const found = listed.map(({ types, counts }) =>
            list.map((_, type) => counts[types.indexOf(type)] ?? 0).join(' '),
          )
          expect(found.sort()).toEqual(expected)
        },
      ),
      { seed: 3 },
    )
  })

  it('says nothing when there are too many', () => {
    const list = Array.from({ length: 20 }, (_, place) => ({ size: 30 - place, value: 0, limit: 1 }))
    expect(listPatterns(tableOf(list, 100), 0, 100, 0, 50)).toBeUndefined()
  })
})
