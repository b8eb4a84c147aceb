import { drawBoardLayouts } from './boardLayouts.ts'
import { drawBox } from './box.ts'
import { drawBraceEnd } from './braceEnd.ts'
import { drawCorner } from './corner.ts'
import { drawCornerGap } from './cornerGap.ts'
import { drawFace } from './face.ts'
import { drawFlat } from './flat.ts'
import { drawGrooves } from './grooves.ts'
import { type Numbers, type NumberSettings, numbersIn } from './numbers.ts'
import { drawOutOfSquare } from './outOfSquare.ts'
import { drawRips } from './rips.ts'
import type { Scene } from './scene.ts'
import { drawSheetLayout } from './sheetLayout.ts'
import { drawSpacing } from './spacing.ts'

const DRAWN = {
  boards: drawBoardLayouts,
  box: drawBox,
  brace: drawBraceEnd,
  corner: drawCorner,
  face: drawFace,
  flat: drawFlat,
  gap: drawCornerGap,
  grooves: drawGrooves,
  rips: drawRips,
  sheet: drawSheetLayout,
  spacing: drawSpacing,
  square: drawOutOfSquare,
} as const

type Drawn = typeof DRAWN
type NumbersOf<Draw> = Draw extends (asked: never, ...rest: infer Rest) => Scene
  ? Rest extends [Numbers]
    ? { readonly numbers: NumberSettings }
    : { readonly numbers?: undefined }
  : never

/**
 * What a scene is drawn from, as data that is the same after a turn through JSON: so that it can be drawn in another thread, and
 * only where somebody looks at it.
 */
export type Drawing = {
  readonly [Kind in keyof Drawn]: {
    readonly draw: Kind
    readonly asked: Parameters<Drawn[Kind]>[0]
  } & NumbersOf<Drawn[Kind]>
}[keyof Drawn]

/** A picture as data: drawn, or what it is to be drawn from. */
export type Drawable = Scene | Drawing

/** The scene, drawn now where it is not yet. */
export function sceneOf(drawable: Drawable): Scene {
  if (!('draw' in drawable)) return drawable
  const { draw, asked, numbers } = drawable
  return (DRAWN[draw] as (asked: unknown, numbers?: Numbers) => Scene)(asked, numbers && numbersIn(numbers))
}
