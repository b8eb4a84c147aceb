import { describe, expect, it } from 'vitest'
import { inches, type Length, nanometres, toInches } from '../../../src/core/measure/length.ts'
import type { Graded, Into } from '../../../src/core/quantities/fastenerBite.ts'
import { holesFor, type Receiver, threadIn } from '../../../src/core/quantities/fastenerHoles.ts'
import { fasteners, woodOf } from './shippedFasteners.ts'

/** Wood screw table: number, shank, root, clear hole, pilot in softwood (70 % of the root) and in hardwood (90 %), inches. */
const TABLE = [
  ['#4', 0.112, 0.075, 7 / 64, 3 / 64, 1 / 16],
  ['#6', 0.138, 0.094, 9 / 64, 1 / 16, 5 / 64],
  ['#8', 0.164, 0.112, 11 / 64, 5 / 64, 3 / 32],
  ['#10', 0.19, 0.13, 3 / 16, 3 / 32, 7 / 64],
  ['#12', 0.216, 0.148, 7 / 32, 7 / 64, 1 / 8],
  ['#14', 0.242, 0.165, 1 / 4, 7 / 64, 9 / 64],
] as const

function graded(name: string, length: Length, bite: Length): Graded {
  const size = fasteners.sizes.find(
    (each) => each.region === 'US' && each.name === name && each.length === length,
  )
  if (!size) throw new Error(`no ${name} of ${length}`)
  return { size, bite, grip: 'full' }
}

const anyLength = (name: string): Length => fasteners.sizes.find((each) => each.name === name)!.length
const holes = (name: string, wood: Receiver | undefined, into: Into = 'face') =>
  holesFor(graded(name, anyLength(name), inches(1, 4)), into, wood, false)

describe('holesFor a screw', () => {
  it.each(TABLE)(
    '%s is %d and %d thick; clear %d, pilot %d soft, %d hard',
    (name, shank, root, clear, soft, hard) => {
      const { size } = graded(name, anyLength(name), inches(1))
      expect(toInches(size.diameter)).toBeCloseTo(shank, 6)
      expect(toInches(size.holes!.root)).toBeCloseTo(root, 6)
      expect(toInches(holes(name, woodOf('SPF'))!.pilot)).toBe(soft)
      expect(holes(name, woodOf('red oak'))).toMatchObject({
        pilot: inches(hard * 64, 64),
        clear: inches(clear * 64, 64),
      })
      // The rule that the table gives in whole drills.
      expect(Math.abs(0.7 * root - soft)).toBeLessThan(1 / 64)
      expect(Math.abs(0.9 * root - hard)).toBeLessThan(1 / 64)
      expect(shank).toBeCloseTo(0.06 + 0.013 * Number(name.slice(1)), 6)
    },
  )

  it('drills half the shank into the edge of plywood (woodworkers’ forum)', () => {
    expect(holes('#8', woodOf('SPF'), 'edge')!.pilot).toBe(inches(5, 64))
    expect(2 * holes('#10', undefined, 'edge')!.pilot).toBeLessThanOrEqual(0.19 * 25_400_000)
  })

  it('goes half as deep as the thread, which is two thirds of the screw', () => {
    const long = graded('#8', inches(3, 2), inches(5, 4))
    expect(threadIn(long)).toBe(inches(1))
    expect(holesFor(long, 'face', undefined, false)).toMatchObject({ depth: inches(1, 2), needed: true })
    expect(threadIn(graded('#8', inches(3, 2), inches(3, 4)))).toBe(inches(3, 4))
  })
})

describe('holesFor a nail', () => {
  it('at most 90 % of it in wood heavier than .6, 75 % in lighter (NDS digest)', () => {
    const diameter = 0.131 * 25_400_000
    expect(holes('8d', woodOf('red oak'))).toMatchObject({ pilot: nanometres(0.9 * diameter), needed: true })
    expect(holes('8d', woodOf('SPF'))).toMatchObject({ pilot: nanometres(0.75 * diameter), needed: false })
    expect(holes('8d', undefined)).toMatchObject({ pilot: nanometres(0.75 * diameter), needed: false })
  })

  it('has to be drilled too near an end; a brad never is', () => {
    expect(holesFor(graded('8d', inches(5, 2), inches(1)), 'face', woodOf('SPF'), true)?.needed).toBe(true)
    expect(holes('18 gauge', woodOf('red oak'))).toBeUndefined()
  })
})

describe('common nails (University of Hawaii, Building Maintenance and Construction, 2.3)', () => {
  it.each([
    ['2d', 1, 0.072, 900],
    ['3d', 1.25, 0.08, 615],
    ['6d', 2, 0.113, 200],
    ['8d', 2.5, 0.131, 106],
    ['10d', 3, 0.148, 74],
    ['12d', 3.25, 0.148, 57],
    ['16d', 3.5, 0.162, 46],
    ['20d', 4, 0.192, 29],
  ])('%s: %d in, %d in thick, %d to the pound', (name, length, diameter, perPound) => {
    const { size } = graded(name, inches(length * 4, 4), inches(1))
    expect(toInches(size.diameter)).toBeCloseTo(diameter, 6)
    expect(size.boxes[0]).toBe(perPound)
  })
})
