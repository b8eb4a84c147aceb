import { describe, expect, it } from 'vitest'
import { inches, minus } from '../../../src/core/measure/length.ts'
import { type Fastening, fastenJoint, type JointRequest } from '../../../src/core/quantities/fastener.ts'
import { fasteners, woodOf } from './shippedFasteners.ts'

const request: JointRequest = {
  kind: 'screw',
  region: 'US',
  held: inches(3, 4),
  receiver: inches(3, 2),
  into: 'face',
  glued: false,
  jointLength: inches(30),
  wood: woodOf('SPF'),
}

const ask = (over: Partial<JointRequest>) => fastenJoint({ ...request, ...over }, fasteners)

function fastened(over: Partial<JointRequest> = {}): Fastening {
  const fastening = ask(over)
  if (fastening.status !== 'fastened') throw new Error(fastening.reason)
  return fastening
}

describe('fastenJoint', () => {
  it('gives size, row, holes and strength together', () => {
    const { size, grip, bite, tipShort, row, holes, withdrawal } = fastened()
    expect(size).toMatchObject({ name: '#8', length: inches(2) })
    expect({ grip, bite, tipShort }).toEqual({ grip: 'full', bite: inches(5, 4), tipShort: inches(1, 4) })
    expect(row.count).toBe(5)
    expect(holes).toEqual({ pilot: inches(5, 64), depth: inches(5, 8), clear: inches(11, 64), needed: true })
    // 2850 x .42^2 x .164 x 1.25 lb.
    expect(withdrawal!.allowable / 4.4482216).toBeCloseTo(103.06, 1)
    expect(withdrawal!.ultimate).toBeUndefined()
  })

  it('takes more for a load, up to what the joint has room for', () => {
    const { withdrawal } = fastened()
    const load = 8 * withdrawal!.allowable
    expect(fastened({ load }).row.count).toBe(8)
    expect(fastened({ load: load + 1 }).row.count).toBe(9)
    expect(ask({ load: 1e6 })).toMatchObject({ status: 'impossible', reason: 'overloaded' })
  })

  it('claims no strength in end grain or in unknown wood, and takes no load there', () => {
    expect(fastened({ into: 'end', receiver: inches(9) }).withdrawal).toBeUndefined()
    expect(fastened({ wood: undefined }).withdrawal).toBeUndefined()
    expect(ask({ wood: undefined, load: 1 })).toEqual({ status: 'impossible', reason: 'no strength' })
    expect(ask({ into: 'end', receiver: inches(9), load: 1 })).toEqual({
      status: 'impossible',
      reason: 'no strength',
    })
  })

  it('stands nails in hard wood closer to the end, since they have to be drilled for', () => {
    const nail = { kind: 'nail', held: inches(3, 4), receiver: inches(6) } as const
    const [oak, fir] = [
      fastened({ ...nail, wood: woodOf('red oak') }),
      fastened({ ...nail, wood: woodOf('SPF') }),
    ]
    expect(oak.holes?.needed).toBe(true)
    expect(fir.holes?.needed).toBe(false)
    expect(oak.row.end).toBeLessThan(fir.row.end)
  })

  it('passes on what stands against it', () => {
    expect(ask({ receiver: inches(3, 8) })).toMatchObject({ reason: 'receiver thin' })
    expect(ask({ jointLength: inches(1) })).toMatchObject({ reason: 'joint short' })
    expect(() => ask({ load: -1 })).toThrow(RangeError)
    expect(minus(request.receiver, fastened().bite)).toBe(fastened().tipShort)
  })
})
