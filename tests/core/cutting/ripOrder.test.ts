import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ripOrder } from '../../../src/core/cutting/ripOrder.ts'
import { INCH, type Length, nanometres } from '../../../src/core/measure/length.ts'
import { ripSettings } from '../../../src/core/panelling/rips.ts'

const inch = (value: number): Length => nanometres(value * INCH)
const twoBySix = { width: inch(5.5), strip: inch(0.5), kerf: inch(0.125), perBoard: 8 }

describe('ripOrder', () => {
  it('sets the fence at B - i(s + k), as the settings of one board', () => {
    const settings = ripOrder({ ...twoBySix, strips: 8 }).map(({ setting }) => setting)
    const { width, strip, kerf } = twoBySix
    expect(settings).toEqual([...ripSettings({ board: width, strip, kerf, safe: inch(0.5) }).settings])
    expect(settings[0]).toBe(inch(4.875))
  })

  it('runs every board at a setting before the next, the last board only as far as is needed', () => {
    expect(ripOrder({ ...twoBySix, strips: 11 }).map(({ boards }) => boards)).toEqual([
      2, 2, 2, 1, 1, 1, 1, 1,
    ])
    expect(ripOrder({ ...twoBySix, strips: 3 }).map(({ boards }) => boards)).toEqual([1, 1, 1])
    expect(ripOrder({ ...twoBySix, strips: 0 })).toEqual([])
  })

  it('leaves the last strip at the fence where too little is left for a kerf', () => {
    // Two strips of 40 and a kerf of 3 leave 2 of 85: the second is set to its own width.
    const steps = ripOrder({
      width: 85 as Length,
      strip: 40 as Length,
      kerf: 3 as Length,
      perBoard: 2,
      strips: 2,
    })
    expect(steps.map(({ setting }) => setting)).toEqual([42, 40])
  })

  it('gives every strip that is wanted, none twice', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 200 }), (perBoard, strips) => {
        const cuts = ripOrder({ ...twoBySix, width: inch(8), perBoard, strips })
        expect(cuts.reduce((sum, { boards }) => sum + boards, 0)).toBe(strips)
        expect(cuts.length).toBeLessThanOrEqual(perBoard)
      }),
    )
  })
})
