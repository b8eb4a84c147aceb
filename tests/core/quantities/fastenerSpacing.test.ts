import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, millimetres, times } from '../../../src/core/measure/length.ts'
import { type FastenerRow, type RowRequest, spaceRow } from '../../../src/core/quantities/fastenerSpacing.ts'
import { fasteners } from './shippedFasteners.ts'

const brad = fasteners.sizes.find(({ name, region }) => name === '18 gauge' && region === 'UK')!
const { distances } = fasteners

const ask = (over: Partial<RowRequest>): RowRequest => ({
  size: brad,
  jointLength: inches(40),
  drilled: false,
  atLeast: 1,
  ...over,
})

function spaced(over: Partial<RowRequest>): FastenerRow {
  const row = spaceRow(ask(over), distances)
  if (row.status !== 'spaced') throw new Error(row.reason)
  return row
}

describe('spaceRow', () => {
  it('18 gauge, 40 in, no more than 6 in apart: 8 brads', () => {
    const row = spaced({})
    // 15 diameters of 1.25 mm is more than half an inch.
    expect(row).toMatchObject({ count: 8, end: millimetres(18.75), edge: millimetres(3.125), close: false })
    expect(row.spacing).toBeLessThanOrEqual(inches(6))
  })

  it('puts one in the middle of a short joint, and none where even a drilled hole splits out', () => {
    expect(spaced({ jointLength: millimetres(50) })).toMatchObject({
      count: 1,
      end: millimetres(25),
      close: false,
    })
    expect(spaced({ jointLength: millimetres(30) })).toMatchObject({ count: 1, spacing: 0, close: true })
    expect(spaceRow(ask({ jointLength: millimetres(24) }), distances)).toEqual({
      status: 'impossible',
      reason: 'joint short',
      lengthAtLeast: millimetres(25),
    })
  })

  it('says how many a joint can take', () => {
    expect(spaceRow(ask({ atLeast: 999 }), distances)).toEqual({
      status: 'impossible',
      reason: 'overloaded',
      countAtMost: 53,
    })
    expect(spaced({ atLeast: 53 }).count).toBe(53)
  })

  it('keeps its distances over random joints, and never asks fewer of a longer joint or a heavier load', () => {
    const any = fc.record({
      size: fc.constantFrom(...fasteners.sizes),
      jointLength: fc.integer({ min: 10_000_000, max: 3_000_000_000 }).map((count) => count as Length),
      drilled: fc.boolean(),
      atLeast: fc.integer({ min: 1, max: 12 }),
    })
    fc.assert(
      fc.property(any, fc.integer({ min: 0, max: 1_000_000_000 }), (request, more) => {
        const row = spaceRow(request, distances)
        const { diameter, kind } = request.size
        if (row.status !== 'spaced') return
        const rule = request.drilled ? distances.drilled : distances.undrilled
        const run = 2 * row.end + row.spacing * (row.count - 1)
        expect(run).toBeLessThanOrEqual(request.jointLength)
        expect(request.jointLength - run).toBeLessThanOrEqual(row.count)
        expect(row.count).toBeGreaterThanOrEqual(request.atLeast)
        if (row.count > 1) {
          expect(row.spacing).toBeGreaterThanOrEqual(times(diameter, rule.row))
          expect(row.spacing).toBeLessThanOrEqual(distances.apart[kind])
        }
        if (!row.close) expect(row.end).toBeGreaterThanOrEqual(times(diameter, rule.end))
        const longer = spaced({ ...request, jointLength: (request.jointLength + more) as Length })
        expect(longer.count).toBeGreaterThanOrEqual(row.count)
        const heavier = spaceRow({ ...request, atLeast: request.atLeast + 1 }, distances)
        if (heavier.status === 'spaced') expect(heavier.count).toBeGreaterThanOrEqual(row.count)
      }),
      { numRuns: 1000 },
    )
  })
})
