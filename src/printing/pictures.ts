import { type Drawable, sceneOf } from '../drawing/drawing.ts'
import type { Shape, Text } from '../drawing/scene.ts'
import type { Desk } from './desk.ts'
import { fillOf, PENS, TONES } from './look.ts'
import type { Patterns } from './patterns.ts'
import type { Strip } from './strip.ts'
import type { Setter, Style } from './type.ts'

/** Of the page's text, the most that one picture takes. */
const TALLEST = 0.62
/** Of its own height, the least that it may shrink to. */
const SMALLEST = 0.75

export interface Shown {
  readonly scene: Drawable
  /** Of the height of the page's text, the most that it takes. */
  readonly tallest?: number | undefined
}

/** A picture as wide as the text, or as its height allows, in lines and letters. */
export function pictureStrip(
  desk: Desk,
  { scene: drawable, tallest = TALLEST }: Shown,
  patterns: Patterns,
): Strip {
  const scene = sceneOf(drawable)
  const scale = Math.min(desk.width / scene.width, (desk.height * tallest) / scene.height)
  const whole = scene.height * scale
  return {
    height: whole,
    least: whole * SMALLEST,
    gap: 8,
    draw: (y, height) => {
      const shown = (scale * height) / whole
      const x = desk.left + (desk.width - scene.width * shown) / 2
      desk.doc.save().translate(x, y).scale(shown)
      for (const shape of scene.shapes) drawShape(desk, shape, patterns)
      desk.doc.restore()
    },
  }
}

function drawShape({ doc, setter }: Desk, shape: Shape, patterns: Patterns): void {
  if (shape.shape === 'text') {
    drawText(doc, setter, shape)
    return
  }
  const [first, ...rest] = shape.points
  if (!first) return
  const trace = (): void => {
    doc.moveTo(...first)
    for (const point of rest) doc.lineTo(...point)
    if (shape.shape === 'polygon') doc.closePath()
  }
  if (shape.shape === 'polygon') {
    const fill = fillOf(shape)
    if (fill !== undefined) {
      trace()
      doc.fill(fill.paper)
      if (fill.pattern) {
        trace()
        doc.fill([patterns[fill.pattern], fill.ink])
      }
    }
  }
  if (!shape.stroke) return
  const { width, dashes, colour } = PENS[shape.stroke]
  doc.lineWidth(width).strokeColor(colour)
  if (dashes) doc.dash(dashes[0], { space: dashes[1] })
  trace()
  doc.stroke()
  if (dashes) doc.undash()
}

/** Letters stand on a strip of paper, so that no line or hatching runs into them. */
function drawText(
  doc: PDFKit.PDFDocument,
  setter: Setter,
  { at: [x, y], text, size, anchor = 'start', turn = 0, bold, tone, rim = true }: Text,
): void {
  const style: Style = { face: bold ? 'pictureStrong' : 'picture', size }
  doc.save()
  if (turn !== 0) doc.rotate(turn, { origin: [x, y] })
  if (rim) {
    const width = setter.width(text, style)
    const start = x - (anchor === 'start' ? 0 : width / (anchor === 'end' ? 1 : 2))
    doc.rect(start - RIM, y - size * 0.74 - RIM, width + 2 * RIM, size * 0.76 + 2 * RIM).fill('#ffffff')
  }
  setter.draw(text, { x, y, anchor }, style, TONES[tone ?? 'ink'])
  doc.restore()
}

const RIM = 3
