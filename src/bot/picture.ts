import { type Drawing, sceneOf } from '../drawing/drawing.ts'
import type { Picture } from './reply.ts'

/** A picture that is thought of when a platform first looks at it, so that an answer in plain text does not wait for it. */
export function pictureOf(name: string, alt: string, draw: () => Drawing): Picture {
  let drawn: Drawing | undefined
  return {
    name,
    alt,
    get scene() {
      drawn ??= draw()
      return drawn
    },
  }
}

/** How wide and high a picture is, in units of its scene: only their ratio counts. */
export function sizeOf({ scene }: Pick<Picture, 'scene'>): {
  readonly width: number
  readonly height: number
} {
  const { width, height } = sceneOf(scene)
  return { width, height }
}
