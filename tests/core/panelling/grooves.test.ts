import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, ZERO } from '../../../src/core/measure/length.ts'
import { type Grooves, type GroovesAsked, layGrooves } from '../../../src/core/panelling/grooves.ts'
import { lengths } from './specs.ts'

const laid = (asked: GroovesAsked): Grooves => {
  const found = layGrooves(asked)
  if (found.status === 'impossible') throw new Error(found.kind)
  return found
}

const plain = { panel: inches(24), kerf: inches(1, 8), thickness: inches(1, 2), equalOver: 'panel' } as const

const panels = fc.record({
  panel: lengths(200, 2000),
  kerf: lengths(1, 5),
  thickness: lengths(3, 25),
  stile: lengths(0, 60),
  equalOver: fc.constantFrom('panel' as const, 'between stiles' as const),
})

describe('layGrooves', () => {
  it('divides a 24 in panel into four by three grooves', () => {
    const found = laid({ ...plain, count: 3 })
    expect(found.centres).toEqual([inches(6), inches(12), inches(18)])
    expect(found.fences).toEqual([inches(95, 16), inches(191, 16), inches(287, 16)])
    expect(found.settings).toEqual([
      { fence: inches(95, 16), grooves: [1, 3] },
      { fence: inches(191, 16), grooves: [2] },
    ])
    expect([found.boardWidth, found.margin]).toEqual([inches(6), inches(6)])
  })

  it('divides what shows between stiles that cover 1 1/2 in at each end', () => {
    const found = laid({ ...plain, count: 2, stile: inches(3, 2), equalOver: 'between stiles' })
    expect(found.centres).toEqual([inches(17, 2), inches(31, 2)])
    expect([found.boardWidth, found.margin]).toEqual([inches(7), inches(7)])
    expect(laid({ ...plain, count: 2, stile: inches(3, 2) }).centres).toEqual([inches(8), inches(16)])
  })

  it('centres a pitch, and says where the margins are far from it', () => {
    // 23 7/8 in every 2 1/2 in: nine grooves span 20 in and leave 1 15/16 in at each end; eight would leave 3 3/16 in.
    const found = laid({ ...plain, panel: inches(191, 8), pitch: inches(5, 2) })
    expect([found.count, found.margin, found.unevenMargins]).toEqual([9, inches(31, 16), true])
    expect(laid({ ...plain, pitch: inches(2) })).toMatchObject({
      count: 11,
      margin: inches(2),
      unevenMargins: false,
    })
    expect(laid({ ...plain, count: 4, pitch: inches(2) })).toMatchObject({
      margin: inches(9),
      unevenMargins: true,
    })
    expect(laid({ ...plain, count: 3 }).unevenMargins).toBe(false)
    // An eighth of the pitch off is still even, a nanometre more at each end is not.
    const four = { ...plain, count: 4, pitch: inches(2) }
    expect(laid({ ...four, panel: inches(21, 2) }).unevenMargins).toBe(false)
    expect(laid({ ...four, panel: (inches(21, 2) + 2) as Length }).unevenMargins).toBe(true)
  })

  it('takes the fewer grooves when two margins are equally far from the pitch', () => {
    // 15 in every 2 in: six leave 2 1/2 in and seven 1 1/2 in.
    expect(laid({ ...plain, panel: inches(15), pitch: inches(2) })).toMatchObject({
      count: 6,
      margin: inches(5, 2),
    })
  })

  it('lays even grooves where walking board by board comes to', () => {
    fc.assert(
      fc.property(panels, fc.integer({ min: 1, max: 30 }), (asked, count) => {
        const found = layGrooves({ ...asked, count })
        const start = asked.equalOver === 'panel' ? 0 : asked.stile
        const boards = BigInt(count + 1)
        const shows = BigInt(asked.panel - 2 * start)
        if (found.status === 'impossible') {
          expect(shows <= BigInt(asked.kerf) * boards).toBe(true)
          return
        }
        expect(shows > BigInt(asked.kerf) * boards).toBe(true)
        // In units of 1 / boards of a nanometre every board is whole.
        let at = BigInt(start) * boards
        for (const centre of found.centres) {
          at += shows
          const off = BigInt(centre) * boards - at
          expect((off < 0n ? -off : off) * 2n <= boards).toBe(true)
        }
        expect(found.centres.length).toBe(count)
      }),
      { numRuns: 500 },
    )
  })

  it('cuts the groove in the middle of its place: as much kerf on either side', () => {
    fc.assert(
      fc.property(panels, fc.integer({ min: 1, max: 12 }), (asked, count) => {
        const found = layGrooves({ ...asked, count })
        if (found.status === 'impossible') return
        for (const [index, fence] of found.fences.entries()) {
          const beyond = fence + asked.kerf
          expect(Math.abs(fence + beyond - 2 * (found.centres[index] as number))).toBeLessThanOrEqual(1)
        }
      }),
    )
  })

  it('cuts the mirrored groove with the same setting when the panel is turned', () => {
    fc.assert(
      fc.property(panels, fc.integer({ min: 1, max: 13 }), (asked, count) => {
        const found = layGrooves({ ...asked, count })
        if (found.status === 'impossible') return
        const cut = new Map<number, number>()
        for (const { fence, grooves } of found.settings) {
          const [first, turned] = grooves as [number, number | undefined]
          cut.set(first, fence + asked.kerf / 2)
          if (turned !== undefined) cut.set(turned, asked.panel - fence - asked.kerf / 2)
        }
        const places = [...cut].sort(([one], [other]) => one - other).map(([, place]) => place)
        expect(places.length).toBe(count)
        for (const [index, place] of places.entries()) {
          expect(Math.abs(place - (found.centres[index] as number))).toBeLessThanOrEqual(0.5)
        }
        expect(found.settings.length).toBe(Math.ceil(count / 2))
        const mirrored = found.centres.map((centre) => asked.panel - centre).reverse()
        const middle = count % 2 === 1 ? (count - 1) / 2 : -1
        // Only the middle of an odd number of nanometres is no whole place.
        const exact = (places: readonly number[]) => places.filter((_, index) => index !== middle)
        expect(exact(mirrored)).toEqual(exact(found.centres))
      }),
    )
  })

  it('keeps a pitch between all grooves and even margins, the nearest to the pitch that there are', () => {
    fc.assert(
      fc.property(panels, lengths(15, 300), (asked, pitch) => {
        const found = layGrooves({ ...asked, pitch })
        const start = asked.equalOver === 'panel' ? 0 : asked.stile
        const shows = asked.panel - 2 * start
        const miss = (count: number) => Math.abs((shows - (count - 1) * pitch) / 2 - pitch)
        if (found.status === 'impossible') {
          expect(miss(0)).toBeLessThanOrEqual(miss(1))
          return
        }
        const [first, last] = [found.centres[0] as Length, found.centres.at(-1) as Length]
        expect(Math.abs(first - start - (asked.panel - start - last))).toBeLessThanOrEqual(1)
        for (const [index, centre] of found.centres.entries()) {
          expect(Math.abs(centre - first - index * pitch)).toBeLessThanOrEqual(1)
        }
        expect(miss(found.count)).toBeLessThanOrEqual(
          Math.min(miss(found.count + 1), miss(found.count - 1)) + 1,
        )
        expect(found.unevenMargins).toBe(miss(found.count) > pitch / 8)
      }),
      { numRuns: 500 },
    )
  })

  it('saws a third deep and never past half', () => {
    expect(laid({ ...plain, count: 1, thickness: inches(3, 4) })).toMatchObject({
      depth: inches(1, 4),
      deepest: inches(3, 8),
    })
    fc.assert(
      fc.property(panels, (asked) => {
        const { depth, deepest } = laid({ ...asked, count: 1 })
        expect(Math.abs(3 * depth - asked.thickness)).toBeLessThanOrEqual(1)
        expect(2 * deepest).toBeLessThanOrEqual(asked.thickness)
        expect(2 * (deepest + 1)).toBeGreaterThan(asked.thickness)
      }),
    )
  })

  it('says how many grooves go where too many would meet', () => {
    const narrow = { ...plain, panel: inches(1) }
    expect(layGrooves({ ...narrow, count: 7 })).toEqual({ status: 'impossible', kind: 'meet', most: 6 })
    expect(laid({ ...narrow, count: 6 }).count).toBe(6)
    expect(layGrooves({ ...narrow, panel: inches(33, 32), count: 8 })).toMatchObject({
      kind: 'meet',
      most: 7,
    })
    expect(laid({ ...narrow, panel: inches(33, 32), count: 7 }).count).toBe(7)
    expect(layGrooves({ ...narrow, panel: inches(1, 16), count: 1 })).toMatchObject({ kind: 'meet', most: 0 })
    // Grooves on a pitch can run off the panel though they do not meet one another.
    expect(layGrooves({ ...plain, count: 13, pitch: inches(2) })).toMatchObject({ kind: 'meet' })
    expect(layGrooves({ ...plain, count: 3, pitch: inches(1, 8) })).toMatchObject({ kind: 'meet' })
  })

  it('has no answer for a pitch wider than the panel bears', () => {
    expect(layGrooves({ ...plain, pitch: inches(16) })).toEqual({
      status: 'impossible',
      kind: 'pitchTooWide',
    })
    expect(laid({ ...plain, pitch: inches(15) }).count).toBe(1)
  })

  it.each([
    { panel: ZERO, count: 1 },
    { kerf: ZERO, count: 1 },
    { thickness: ZERO, count: 1 },
    { stile: inches(12), equalOver: 'between stiles' as const, count: 1 },
    { stile: inches(-1), equalOver: 'between stiles' as const, count: 1 },
    { count: 0 },
    { count: 1.5 },
    { count: 2, pitch: ZERO },
    { pitch: ZERO },
    {},
  ])('has no answer for %o', (change) => {
    expect(layGrooves({ ...plain, ...change })).toEqual({ status: 'impossible', kind: 'notPositive' })
  })
})
