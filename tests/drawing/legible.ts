import { areaOf, overlap, textArea } from '../../src/drawing/area.ts'
import type { Scene, Text } from '../../src/drawing/scene.ts'

const isText = (shape: Scene['shapes'][number]): shape is Text => shape.shape === 'text'

/** A hair: what rounding may do. */
const HAIR = 0.01

/** Everything that keeps a picture from being read, one line each; empty for one that can be. */
export function faultsOf({ width, height, shapes }: Scene): readonly string[] {
  const texts = shapes.filter(isText)
  const small = texts
    .filter(({ size }) => size < width * 0.03)
    .map(({ text, size }) => `small ${text} ${size}`)
  const out = shapes.flatMap((shape) => {
    const { left, top, right, bottom } = areaOf(shape)
    const inside = left >= -HAIR && top >= -HAIR && right <= width + HAIR && bottom <= height + HAIR
    return inside && [left, top, right, bottom].every(Number.isFinite)
      ? []
      : [`outside: ${isText(shape) ? shape.text : `${shape.shape} ${shape.of ?? ''}`}`]
  })
  const crossed = texts.flatMap((one, index) =>
    texts
      .slice(index + 1)
      .filter((other) => overlap(textArea(one), textArea(other), -HAIR))
      .map((other) => `"${one.text}" on "${other.text}"`),
  )
  const empty = texts.filter(({ text }) => text.trim() === '').map(() => 'a text without letters')
  return [...small, ...out, ...crossed, ...empty]
}
