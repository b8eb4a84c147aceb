import type { Label } from '../bot/handout/handout.ts'
import type { Desk } from './desk.ts'
import { GREY } from './paper.ts'
import type { Strip } from './strip.ts'
import { lineHeight, type Style } from './type.ts'

const ACROSS = 3
/** An inch: a name that is read from the other side of the bench, its size, what it is and whose. */
const HEIGHT = 74
const PAD = 7

const NAME = { face: 'strong', size: 20 } as const
const SIZE: Style = { face: 'strong', size: 13 }
const LINE: Style = { face: 'body', size: 10 }

/** Labels to cut out, a row each; a cut parts two labels, so that none is made twice. */
export function labelStrips(desk: Desk, labels: readonly Label[]): readonly Strip[] {
  const rows = Math.ceil(labels.length / ACROSS)
  return Array.from({ length: rows }, (_, row) => {
    const own = labels.slice(row * ACROSS, (row + 1) * ACROSS)
    return {
      height: HEIGHT,
      ...(row === 0 ? { gap: 10 } : {}),
      draw: (y: number) => {
        own.forEach((label, column) => {
          const width = desk.width / ACROSS
          drawLabel(desk, label, { x: desk.left + column * width, y, width })
        })
      },
    }
  })
}

function drawLabel(
  { doc, setter }: Desk,
  { name, size, lines }: Label,
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
): void {
  const room = width - 2 * PAD
  doc.lineWidth(0.7).strokeColor(GREY).dash(3, { space: 3 }).rect(x, y, width, HEIGHT).stroke().undash()
  const fitted = fitting(name, NAME, room)
  const baseline = y + PAD + NAME.size * 0.74
  setter.draw(name, { x: x + PAD, y: baseline }, fitted)
  setter.draw(size, { x: x + PAD, y: baseline + 17 }, fitting(size, SIZE, room))
  const from = baseline + 17 + lineHeight(LINE)
  lines
    .flatMap((line) => setter.wrap(line, LINE, room).slice(0, 1))
    .slice(0, 2)
    .forEach((line, row) => {
      setter.draw(line, { x: x + PAD, y: from + row * lineHeight(LINE) }, LINE)
    })

  function fitting(text: string, style: Style, most: number): Style {
    const wide = setter.width(text, style)
    return wide <= most ? style : { ...style, size: (style.size * most) / wide }
  }
}
