import { areaOf } from '../../src/drawing/area.ts'
import type { Scene } from '../../src/drawing/scene.ts'

/** A rectangle of a scene in whole nanometres, from the upper left corner of `origin`. */
export interface ReadBack {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** The shapes of a name in nanometres, from the upper left of the first shape named `origin`. */
export function readBack(scene: Scene, of: string, origin: string): readonly ReadBack[] {
  const { scale } = scene
  const first = scene.shapes.find((shape) => shape.of === origin)
  if (scale === undefined || !first) throw new Error('nothing to measure by')
  const { left, top } = areaOf(first)
  return scene.shapes
    .filter((shape) => shape.of === of)
    .map((shape) => {
      const area = areaOf(shape)
      return {
        x: (area.left - left) / scale,
        y: (area.top - top) / scale,
        width: (area.right - area.left) / scale,
        height: (area.bottom - area.top) / scale,
      }
    })
}

/** A drawing is held to a thousandth of a millimetre. */
export const HELD = 1000

/** True where every number of one is as near to the other's as a drawing is held to. */
export const isNear = (one: ReadBack, other: ReadBack): boolean =>
  (['x', 'y', 'width', 'height'] as const).every((side) => Math.abs(one[side] - other[side]) <= HELD)
