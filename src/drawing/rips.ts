import type { Length } from '../core/measure/length.ts'
import { areaOf } from './area.ts'
import { dimensionRows } from './dimensionRows.ts'
import { nameParts, textAreas } from './labels.ts'
import { rectangle } from './marks.ts'
import { fineMark, type Numbers, unitLine } from './numbers.ts'
import { layPage } from './page.ts'
import type { Polygon, Scene, Shape } from './scene.ts'

/** A board's end with the cuts across it; `settings` from fence to nearest tooth, in order. */
export interface RipsAsked {
  readonly width: Length
  readonly thickness: Length
  readonly strip: Length
  readonly kerf: Length
  readonly settings: readonly Length[]
}

/** The end of a board against the fence: strips in the order they come off, the kerfs between, and what stays at the fence. */
export function drawRips(asked: RipsAsked, numbers: Numbers): Scene {
  const count = asked.settings.length
  return layPage({
    title:
      count === 1
        ? 'One strip off the board, seen on its end'
        : `${count} strips off the board, seen on its end`,
    size: { width: asked.width * 1.06, height: asked.thickness },
    draw: (scale) => drawn(asked, numbers, scale),
    name: (shapes) => nameParts(labelled(shapes), textAreas(shapes), shapes),
    foot: [
      { words: 'the board runs along the fence; each strip falls free on the right, 1 first' },
      { words: `kerf ${numbers.stock(asked.kerf)}; sizes in ${unitLine(numbers)}` },
    ],
    tallest: 620,
  })
}

function drawn(asked: RipsAsked, numbers: Numbers, scale: number): readonly Shape[] {
  const { width, thickness, strip, kerf, settings } = asked
  const deep = thickness * scale
  const piece = (from: number, to: number, fill: Polygon['fill'], of: string): Polygon =>
    rectangle([from * scale, 0], [to * scale, deep], { fill, stroke: 'outline', of })
  const strips = settings.map((setting, index) =>
    piece(setting + kerf, setting + kerf + strip, 'strip', `strip ${index + 1}`),
  )
  const kerfs = settings.map((setting) =>
    rectangle([setting * scale, 0], [(setting + kerf) * scale, deep], { fill: 'ink', of: 'kerf' }),
  )
  const left = settings.at(-1) ?? width
  const rest = piece(0, left, 'stripCut', 'rest')
  const first = settings[0] ?? width
  const sizes = [
    ...dimensionRows({ side: 'bottom', at: deep }, [
      { from: 0, to: first * scale, text: `fence ${fineMark(numbers, first)}`, tone: 'accent' },
      { from: 0, to: width * scale, text: numbers.stock(width) },
      ...(settings.length > 1 ? [{ from: 0, to: left * scale, text: fineMark(numbers, left) }] : []),
    ]),
    ...dimensionRows({ side: 'top', at: 0 }, [
      { from: (width - strip) * scale, to: width * scale, text: numbers.stock(strip) },
    ]),
    ...dimensionRows({ side: 'right', at: width * scale }, [
      { from: 0, to: deep, text: numbers.stock(thickness) },
    ]),
  ]
  const fence = rectangle([-26, -30], [-2, deep + 26], { fill: 'ink', of: 'fence' })
  const wood = [rest, ...strips]
  return [fence, ...wood, ...kerfs, ...sizes]
}

/** Numbers on all strips where they go, else on the first and the last. */
function labelled(shapes: readonly Shape[]) {
  const named = shapes.flatMap((shape) => {
    const number = /^strip (\d+)$/u.exec(shape.of ?? '')?.[1]
    return number === undefined ? [] : [{ text: number, area: areaOf(shape) }]
  })
  const [first] = named
  const isRoomy = first !== undefined && first.area.right - first.area.left >= 66
  return isRoomy || named.length <= 2 ? named : [named[0], named.at(-1)].flatMap((each) => each ?? [])
}
