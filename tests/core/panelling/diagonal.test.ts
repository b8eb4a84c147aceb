import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, toInches } from '../../../src/core/measure/length.ts'
import { type Diagonal, diagonal } from '../../../src/core/panelling/diagonal.ts'
import { band, directionAt, inBand, laid, type Opening, openings, rectangle, steep } from './openings.ts'
import { angleAt, area, type Corner, distance, extent, type Polygon } from './polygons.ts'

/** Length of the line from corner to corner, in inches: a pointed brace, however narrow. */
const line = (width: number, height: number): number =>
  toInches(
    laid({ width: inches(width), height: inches(height), strip: inches(1, 64), ends: 'pointed' }).length,
  )

describe('a pointed brace agrees with published lengths', () => {
  // US Navy Builder 14044, pp. 2-8 and 2-9: brace table and the Essex board.
  it.each([
    [24, 33.94],
    [27, 38.18],
    [30, 42.43],
    [8, 11.31],
    [40, 56.57],
  ])('Navy brace table: equal runs of %s give %s', (run, printed) => {
    expect(Math.abs(line(run, run) - printed)).toBeLessThanOrEqual(0.005)
  })

  it('Navy brace table: unequal runs 18 and 24 give 30', () => {
    expect(laid({ width: inches(24), height: inches(18), strip: inches(1), ends: 'pointed' }).length).toBe(
      inches(30),
    )
  })

  // Hodgson, ABC of the Steel Square, 1910; it cuts decimals off.
  it.each([
    [18, 25.45],
    [21, 29.7],
  ])('Hodgson: equal runs of %s give %s', (run, printed) => {
    const found = line(run, run)
    expect(found).toBeGreaterThanOrEqual(printed - 0.005)
    expect(found - printed).toBeLessThan(0.01)
  })

  // instructables.com, rafter step 4: length per 12 of run, for each rise.
  it.each([
    [2, 12.17],
    [3, 12.37],
    [4, 12.65],
    [5, 13.0],
    [6, 13.42],
    [7, 13.89],
    [8, 14.42],
    [9, 15.0],
    [10, 15.62],
    [11, 16.28],
    [12, 16.97],
    [14, 18.44],
    [16, 20.0],
    [18, 21.63],
  ])('unit length table: rise %s per 12 of run gives %s', (rise, printed) => {
    expect(Math.abs(line(12, rise) - printed)).toBeLessThanOrEqual(0.005)
  })

  it('US Navy Builder 14044, p. 2-12: rise 7 in 12 over a run of 8 ft is 9 ft 3 1/8 in', () => {
    const sixteenths = Math.round(line(96, 56) * 16)
    expect(sixteenths).toBe((9 * 12 + 3) * 16 + 2)
  })

  it('US Army EN5156: 17.69 in per foot over 10 1/3 ft is 182.79 in', () => {
    // 17.69 is a rise of 13 in 12.
    const asked = {
      width: inches(124),
      height: inches(13 * 31, 3),
      strip: inches(1),
      ends: 'pointed',
    } as const
    // Half of the last place of 17.69, over 10 1/3 ft, and a last place that the source cuts off.
    expect(Math.abs(toInches(laid(asked).length) - 182.79)).toBeLessThan(0.005 * 10.34 + 0.01)
  })

  it('Griffith, Carpentry, 1916: 12 1/2 ft at 13.42 in per foot is 167.75 in', () => {
    expect(Math.abs(line(150, 75) - 167.75)).toBeLessThanOrEqual(0.005 * 12.5)
  })

  it('sawmillcreek.org t-110061: the diagonal of a 24 x 36 in panel is 43.27 in', () => {
    expect(Math.abs(line(24, 36) - 43.27)).toBeLessThanOrEqual(0.005)
  })
})

describe('a flush brace agrees with a builder who pressed one in', () => {
  it('39 7/16 x 20 11/16 in, strip 1 17/32 in, ends on the stiles: 25.71 degrees, long edge 43.77 in', () => {
    const asked = {
      width: inches(631, 16),
      height: inches(331, 16),
      strip: inches(49, 32),
      ends: 'stiles',
    } as const
    const found = laid(asked)
    expect(found.saw).toBeCloseTo(25.71, 2)
    expect(toInches(found.edge)).toBeCloseTo(43.77, 2)
  })
})

/**
 * The brace found by feel: slide its cut along rail or stile until the strip between the slanting edges is just as wide as
 * the wood. Shares nothing with the formula.
 */
function slideIn({ width: W, height: H, strip }: Opening, ends: 'rails' | 'stiles'): Polygon {
  const across = ends === 'rails' ? W : H
  const along = ends === 'rails' ? H : W
  let [none, all]: [number, number] = [0, across]
  for (let step = 0; step < 200; step += 1) {
    const cut = (none + all) / 2
    // The width of a band whose edges are `cut` apart along the rail.
    const wide = (cut * along) / Math.hypot(across - cut, along)
    if (wide < strip) none = cut
    else all = cut
  }
  const cut = (none + all) / 2
  return ends === 'rails'
    ? [
        [0, 0],
        [cut, 0],
        [W, H],
        [W - cut, H],
      ]
    : [
        [0, 0],
        [W, H - cut],
        [W, H],
        [0, cut],
      ]
}

/** A long edge of the brace as a direction: from its first to its second corner along the strip. */
const directionOf = (brace: Polygon, ends: 'rails' | 'stiles'): Corner => {
  const [from, to] = (ends === 'rails' ? [brace[1], brace[2]] : [brace[0], brace[1]]) as [Corner, Corner]
  return [to[0] - from[0], to[1] - from[1]]
}

describe('a flush brace', () => {
  it.each(['rails', 'stiles'] as const)('lies as one slid in by feel does, ends on the %s', (ends) => {
    fc.assert(
      fc.property(openings, (opening) => {
        const found = laid({ ...opening, ends })
        const brace = slideIn(opening, ends)
        const along = directionOf(brace, ends)
        expect(Math.abs(found.slope - steep(along))).toBeLessThan(1e-6)
        expect(Math.abs(found.edge - Math.hypot(...along))).toBeLessThan(30)
        expect(Math.abs(found.length - extent(brace, along))).toBeLessThan(30)
        // The sharp corner of the cut: a square cut would be 90.
        const sharp = Math.min(angleAt(brace, 0), angleAt(brace, 1))
        expect(Math.abs(90 - found.saw - sharp)).toBeLessThan(1e-5)
      }),
      { numRuns: 500 },
    )
  })

  it.each(['rails', 'stiles'] as const)(
    'cut by its numbers, fills the opening from corner to corner on the %s',
    (ends) => {
      fc.assert(
        fc.property(openings, (opening) => {
          const { width: W, height: H, strip } = opening
          const brace = cutFlush(laid({ ...opening, ends }), strip, ends)
          for (const [x, y] of brace) {
            expect(Math.min(x, y)).toBeGreaterThan(-20)
            expect(Math.max(x - W, y - H)).toBeLessThan(20)
          }
          const tips = brace.filter(
            (corner) => distance(corner, [0, 0]) < 20 || distance(corner, [W, H]) < 20,
          )
          expect(tips.length).toBe(2)
        }),
        { numRuns: 500 },
      )
    },
  )

  it('needs the same blank whichever way it ends', () => {
    fc.assert(
      fc.property(openings, (opening) => {
        expect(laid({ ...opening, ends: 'rails' }).length).toBe(laid({ ...opening, ends: 'stiles' }).length)
      }),
    )
  })

  it('changes rails for stiles when the opening is turned on its side', () => {
    fc.assert(
      fc.property(openings, ({ width, height, strip }) => {
        const rails = laid({ width, height, strip, ends: 'rails' })
        const turned = laid({ width: height, height: width, strip, ends: 'stiles' })
        expect(turned.slope).toBeCloseTo(90 - rails.slope, 9)
        expect(turned.saw).toBeCloseTo(rails.saw, 9)
        expect(Math.abs(turned.edge - rails.edge)).toBeLessThanOrEqual(1)
      }),
    )
  })

  it('has cuts that add up to less than square by twice the turn of the strip', () => {
    // 46 x 29 in with 3 1/2 in: own arithmetic, D = sqrt(2957).
    const opening = { width: inches(46), height: inches(29), strip: inches(7, 2) }
    const [rails, stiles] = [laid({ ...opening, ends: 'rails' }), laid({ ...opening, ends: 'stiles' })]
    expect(rails.saw + stiles.saw).toBeCloseTo(90 - (2 * Math.asin(3.5 / Math.sqrt(2957)) * 180) / Math.PI, 9)
  })
})

/** The corners of a strip laid from the lower left corner at the slope, each end cut at the saw's setting, long edges equal. */
function cutFlush({ slope, saw, edge }: Diagonal, strip: number, ends: 'rails' | 'stiles'): Polygon {
  const up: Corner = [Math.cos((slope * Math.PI) / 180), Math.sin((slope * Math.PI) / 180)]
  // On the rails the second edge lies to the right of the first one and starts further along; on the stiles to the left.
  const side: Corner = ends === 'rails' ? [up[1], -up[0]] : [-up[1], up[0]]
  const ahead = strip * Math.tan((saw * Math.PI) / 180)
  const at = (along: number, aside: number): Corner => [
    up[0] * along + side[0] * aside,
    up[1] * along + side[1] * aside,
  ]
  return [at(0, 0), at(edge, 0), at(edge + ahead, strip), at(ahead, strip)]
}

describe('a pointed brace', () => {
  it('is what the frame leaves of a strip laid along the diagonal', () => {
    fc.assert(
      fc.property(openings, (opening) => {
        const found = laid({ ...opening, ends: 'pointed' })
        const left = inBand(rectangle(opening), band(opening, found.slope, 'right'))
        expect(left.length).toBe(6)
        expect(Math.abs(extent(left, directionAt(found.slope)) - found.length)).toBeLessThan(30)
        const sides = left.map((corner, index) => distance(corner, left[(index + 1) % 6] as Corner))
        const long = sides.filter((side) => Math.abs(side - found.edge) < 30)
        expect(long.length).toBeGreaterThanOrEqual(2)
        // At a point the two cuts make the frame's own square corner.
        const points = left.map((_, index) => angleAt(left, index))
        expect(points.filter((angle) => Math.abs(angle - 90) < 1e-5).length).toBeGreaterThanOrEqual(2)
        expect(
          Math.abs(
            area(left) - found.edge * opening.strip - (opening.strip * (found.length - found.edge)) / 2,
          ),
        ).toBeLessThan(area(left) * 1e-7)
      }),
      { numRuns: 500 },
    )
  })

  it('has its cuts on the saw at the slope along the stile and the rest of a square along the rail', () => {
    const found = laid({ width: inches(4), height: inches(3), strip: inches(1, 2), ends: 'pointed' })
    expect(found.saw).toBeCloseTo((Math.atan(3 / 4) * 180) / Math.PI, 12)
    expect((found.secondSaw ?? 0) + found.saw).toBeCloseTo(90, 12)
    expect(found.length).toBe(inches(5))
  })
})

describe('diagonal, impossible', () => {
  const asked = { width: inches(20), height: inches(10), strip: inches(1), ends: 'rails' } as const

  it('refuses a strip as wide as the shorter side', () => {
    expect(diagonal({ ...asked, strip: inches(10) })).toEqual({
      status: 'impossible',
      kind: 'opening',
      below: inches(10),
    })
    expect(diagonal({ ...asked, strip: (inches(10) - 1) as Length }).status).toBe('laid')
  })

  it.each(['width', 'height', 'strip'] as const)('refuses a %s of nothing', (what) => {
    expect(diagonal({ ...asked, [what]: 0 })).toMatchObject({ status: 'impossible', kind: 'notPositive' })
  })
})
