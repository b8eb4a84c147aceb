import fc from 'fast-check'
import { type Length, nanometres } from '../../../src/core/measure/length.ts'
import { type Diagonal, type DiagonalAsked, diagonal } from '../../../src/core/panelling/diagonal.ts'
import { type Corner, clip, dot, type HalfPlane, type Polygon } from './polygons.ts'
import { lengths } from './specs.ts'

/** The brace, where there must be one. */
export const laid = (asked: DiagonalAsked): Diagonal => {
  const found = diagonal(asked)
  if (found.status === 'impossible') throw new Error(`impossible: ${found.kind}`)
  return found
}

/** A wide range of openings, and strips up to just under the shorter side. */
export const openings = fc
  .record({ width: lengths(60, 2500), height: lengths(60, 2500), part: fc.integer({ min: 5, max: 990 }) })
  .map(({ width, height, part }) => ({
    width,
    height,
    strip: nanometres((Math.min(width, height) * part) / 1000),
  }))

/** A clear opening and the width of the strip across it. */
export type Opening = { readonly width: Length; readonly height: Length; readonly strip: Length }

/** How steep a direction is, degrees from level. */
export const steep = ([x, y]: Corner): number => (Math.atan2(y, x) * 180) / Math.PI

/** The opening as a figure. */
export const rectangle = ({ width, height }: Opening): Polygon => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
]

/** The band of a strip through the middle of the opening, rising to the right or to the left, as two half-planes. */
export function band(
  opening: Opening,
  slope: number,
  rising: 'right' | 'left',
): readonly [HalfPlane, HalfPlane] {
  const turn = ((rising === 'right' ? slope : 180 - slope) * Math.PI) / 180
  const normal: Corner = [-Math.sin(turn), Math.cos(turn)]
  const middle = dot(normal, [opening.width / 2, opening.height / 2])
  const half = opening.strip / 2
  return [
    { normal, bound: middle + half },
    { normal: [-normal[0], -normal[1]], bound: half - middle },
  ]
}

/** What of a figure lies within a band. */
export const inBand = (polygon: Polygon, [one, other]: readonly [HalfPlane, HalfPlane]): Polygon =>
  clip(clip(polygon, one), other)

/** A direction that slopes up by so many degrees. */
export const directionAt = (slope: number): Corner => [
  Math.cos((slope * Math.PI) / 180),
  Math.sin((slope * Math.PI) / 180),
]
