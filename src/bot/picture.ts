import type { Scene } from '../drawing/scene.ts'
import type { Picture } from './reply.ts'

/** A picture that is drawn when a platform first looks at its scene, so that an answer in plain text does not wait for it. */
export function pictureOf(name: string, alt: string, draw: () => Scene): Picture {
  let drawn: Scene | undefined
  return {
    name,
    alt,
    get scene() {
      drawn ??= draw()
      return drawn
    },
  }
}
