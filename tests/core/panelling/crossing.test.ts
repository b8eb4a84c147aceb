import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, nanometres } from '../../../src/core/measure/length.ts'
import { diagonal, type Ends } from '../../../src/core/panelling/diagonal.ts'
import { band, directionAt, inBand, laid, type Opening, openings, rectangle, steep } from './openings.ts'
import { angleAt, area, type Corner, clip, distance, extent, type Polygon } from './polygons.ts'

const crossable = fc.tuple(openings, fc.constantFrom('pointed' as const, 'rails' as const, 'stiles' as const))

describe('an X', () => {
  it('crosses in a lozenge whose sides are the notches of a halving', () => {
    fc.assert(
      fc.property(crossable, ([opening, ends]) => {
        const found = diagonal({ ...opening, ends, cross: 'halving', thickness: inches(3, 4) })
        if (found.status === 'impossible') return
        const lozenge = crossingOf(opening, found.slope)
        expect(lozenge.length).toBe(4)
        const side = distance(lozenge[0] as Corner, lozenge[1] as Corner)
        expect(Math.abs(side - (found.notchWidth ?? 0))).toBeLessThan(30)
        const angles = [angleAt(lozenge, 0), angleAt(lozenge, 1)]
        expect(Math.min(...angles.map((angle) => Math.abs(angle - (found.crossing ?? 0))))).toBeLessThan(1e-5)
      }),
      { numRuns: 500 },
    )
  })

  it('sinks each half of a halving by half the thickness', () => {
    // dimensions.com, half-lap: each part loses half the thickness.
    const asked = {
      width: inches(20),
      height: inches(20),
      strip: inches(1),
      ends: 'pointed',
      cross: 'halving',
    } as const
    expect(laid({ ...asked, thickness: inches(3, 4) }).notchDepth).toBe(inches(3, 8))
    expect(laid(asked)).not.toHaveProperty('notchDepth')
  })

  it('crosses square in a square opening: the notch is the strip, and the cut ends are square', () => {
    const asked = { width: inches(20), height: inches(20), strip: inches(1), ends: 'pointed' } as const
    const halved = laid({ ...asked, cross: 'halving' })
    expect(halved.crossing).toBeCloseTo(90, 9)
    expect(halved.notchWidth).toBe(inches(1))
    const cut = laid({ ...asked, cross: 'cut' })
    expect(cut.innerSaw).toBeCloseTo(0, 9)
    expect(cut.halfLength).toBe(nanometres((Math.hypot(20, 20) / 2 - 0.5) * inches(1)))
  })

  it('wants a strip narrower than 2.4 in to cross in an opening of 4 x 3 in', () => {
    const asked = { width: inches(4), height: inches(3), ends: 'pointed', cross: 'cut' } as const
    const strip = inches(12, 5)
    expect(diagonal({ ...asked, strip })).toEqual({ status: 'impossible', kind: 'crossing', below: strip })
    expect(diagonal({ ...asked, strip: (strip - 1) as Length }).status).toBe('laid')
  })

  it('is cut where the whole brace leaves off', () => {
    fc.assert(
      fc.property(crossable, ([opening, ends]) => {
        const found = diagonal({ ...opening, ends, cross: 'cut' })
        if (found.status === 'impossible') return
        const brace = inFrame(opening, ends, found.slope)
        const [, lower] = band(opening, found.slope, 'left')
        // What lies below the whole brace, which rises to the left: the half from the lower left corner.
        const half = clip(brace, { normal: [-lower.normal[0], -lower.normal[1]], bound: -lower.bound })
        expect(Math.abs(extent(half, directionAt(found.slope)) - (found.halfLength ?? 0))).toBeLessThan(60)
        const inner = sideAlong(half, 180 - found.slope)
        expect(Math.abs(fromSquare(half, inner) - (found.innerSaw ?? 0))).toBeLessThan(1e-4)
        // Two such halves and the whole brace cover what two whole ones would.
        const lozenge = area(crossingOf(opening, found.slope))
        expect(Math.abs(2 * area(half) + lozenge - area(brace))).toBeLessThan(area(brace) * 1e-7)
      }),
      { numRuns: 500 },
    )
  })

  it.each(['pointed', 'rails', 'stiles'] as const)(
    'is refused just where the lozenge would touch the frame, %s',
    (ends) => {
      fc.assert(
        fc.property(openings, (opening) => {
          const found = diagonal({ ...opening, ends, cross: 'cut' })
          const { slope } = laid({ ...opening, ends })
          // Corners of the lozenge straight above and beside the middle of the opening.
          const tall = opening.strip / Math.cos((slope * Math.PI) / 180)
          const wide = opening.strip / Math.sin((slope * Math.PI) / 180)
          const room = Math.min(opening.height - tall, opening.width - wide)
          fc.pre(Math.abs(room) > 10)
          expect(found.status).toBe(room > 0 ? 'laid' : 'impossible')
          if (found.status === 'laid') return
          expect(found.kind).toBe('crossing')
          const narrower = (found.below - 10) as Length
          expect(diagonal({ ...opening, strip: narrower, ends, cross: 'cut' }).status).toBe('laid')
        }),
        { numRuns: 500 },
      )
    },
  )
})

function crossingOf(opening: Opening, slope: number): Polygon {
  return inBand(inBand(rectangle(opening), band(opening, slope, 'right')), band(opening, slope, 'left'))
}

/** The whole brace: its band, cut by the frame (pointed) or only by rails or stiles. */
function inFrame(opening: Opening, ends: Ends, slope: number): Polygon {
  return inBand(
    ends === 'pointed' ? rectangle(opening) : stretched(opening, ends),
    band(opening, slope, 'right'),
  )
}

/** The opening with nothing but the rails, or nothing but the stiles, in the way. */
function stretched({ width, height }: Opening, ends: 'rails' | 'stiles'): Polygon {
  const far = 20 * (width + height)
  return ends === 'rails'
    ? [
        [-far, 0],
        [width + far, 0],
        [width + far, height],
        [-far, height],
      ]
    : [
        [0, -far],
        [width, -far],
        [width, height + far],
        [0, height + far],
      ]
}

/** The number of the side of a polygon that runs in a direction, in degrees. */
function sideAlong(polygon: Polygon, direction: number): number {
  const off = polygon.map((corner, index) => {
    const [x, y] = polygon[(index + 1) % polygon.length] as Corner
    const turned = steep([x - corner[0], y - corner[1]]) - direction
    return Math.abs(Math.sin((turned * Math.PI) / 180))
  })
  return off.indexOf(Math.min(...off))
}

/** How far from square to the side before it a side is cut. */
const fromSquare = (polygon: Polygon, side: number): number => Math.abs(90 - angleAt(polygon, side))
