import { type Length, minus, nanometres, plus, times } from '../measure/length.ts'
import { type Film, filmBetween } from './film.ts'

/** A captured corner through its thickness: the overhang that the rails were cut for, and what really goes under it. */
export interface CornerFlushRequest {
  /** Strip face width w and strip thickness s. */
  readonly width: Length
  readonly strip: Length
  /** The sheet that the rails were cut for, and the thinnest and thickest it may measure. */
  readonly sheet: { readonly planned: Length; readonly low: Length; readonly high: Length }
  /** For each 1 % of moisture, as a part of it: the sheet's thickness, the strip's thickness, the strip's face width. */
  readonly growth: { readonly sheet: number; readonly strip: number; readonly width: number }
  /** Percent of moisture from assembly to the driest and to the wettest month: the first at most 0, the second at least 0. */
  readonly change: { readonly driest: number; readonly wettest: number }
  readonly coats: number
  readonly film: Film
}

/** Lengths that are negative where the end stands back from the rails, or where no lip is left. */
export interface CornerFlush {
  /** How far the face of the end stands out past the ends of the side rails. */
  readonly proudest: Length
  readonly shyest: Length
  /** How far the corner stile laps over the side panel. */
  readonly lip: { readonly least: Length; readonly most: Length }
  /** The rails reach at least as far as the end: the overhang to cut, t + s with the thickest sheet in the wettest month. */
  readonly overhang: Length
}

/**
 * What thickness does to a captured corner. Nothing closes round the end panel and its frame (t + s): they push up against
 * the end of the side panel and stop, so a thick sheet, a wet month or paint never binds. It shows instead: the end's face
 * stands proud of the rail ends by what t + s is over the overhang, and the lip loses as much, since the corner stile is flush
 * with the end's face: of its width w, which moves too, the lip is what t + s leaves.
 */
export function cornerFlush(request: CornerFlushRequest): CornerFlush {
  const { strip, sheet, change, coats, film } = request
  const planned = plus(sheet.planned, strip)
  const [thick, thin] = [filmBetween(coats, film.high), filmBetween(coats, film.low)]
  const thickest = plus(stack(request, sheet.high, change.wettest), thick)
  const thinnest = plus(stack(request, sheet.low, change.driest), thin)
  const lips = (thickness: Length, paint: Length) =>
    [change.driest, change.wettest].map((moisture) => minus(lip(request, thickness, moisture), paint))
  return {
    proudest: minus(thickest, planned),
    shyest: minus(thinnest, planned),
    lip: {
      least: Math.min(...lips(sheet.high, thick)) as Length,
      most: Math.max(...lips(sheet.low, thin)) as Length,
    },
    overhang: thickest,
  }
}

const lip = (request: CornerFlushRequest, sheet: Length, change: number): Length =>
  minus(swollen(request.width, request.growth.width, change), stack(request, sheet, change))

/** Sheet and strip on each other, bare, after their moisture has changed by `change` percent. */
const stack = ({ strip, growth }: CornerFlushRequest, sheet: Length, change: number): Length =>
  plus(swollen(sheet, growth.sheet, change), swollen(strip, growth.strip, change))

const swollen = (size: Length, growth: number, change: number): Length =>
  plus(size, nanometres(size * growth * change))

/** A slot that a sheet slides into, and what it has to leave room for. */
export interface SlotRequest {
  /** The thickest that the sheet measures. */
  readonly sheet: Length
  readonly coats: number
  /** One dry coat. */
  readonly coat: Length
  /** What the sheet may swell through its thickness. */
  readonly swelling: Length
  readonly pushFit: Length
}

/** Width of a slot for halved corners: thickest sheet, paint on its two faces, swelling and the push fit. */
export const slotWidth = ({ sheet, coats, coat, swelling, pushFit }: SlotRequest): Length =>
  plus(sheet, times(coat, 2 * coats), swelling, pushFit)
