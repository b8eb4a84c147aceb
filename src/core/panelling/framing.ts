import { type Length, minus, plus, times, ZERO } from '../measure/length.ts'
import { halvedFraming } from './halved.ts'

/**
 * How the panels meet, by trade name: knock-down without hardware behind a lip or in slots, screwed to blocks or to steel
 * brackets, or glued for good.
 */
export type Corner = 'captured' | 'cleated' | 'butted' | 'halved' | 'bracketed'

/** What the corners depend on: the finished inside, the panel height, sheet and strip as measured, the corner's fit. */
export interface Frame {
  readonly inside: { readonly length: Length; readonly width: Length }
  readonly height: Length
  /** Sheet thickness t. */
  readonly sheet: Length
  /** Strip thickness s, how far a frame stands proud of its panel. */
  readonly strip: Length
  /** Strip face width w. */
  readonly width: Length
  /** Gap at each end of a captured corner stile; of a halved corner, what a slot is wider than the sheet. */
  readonly fit: Length
  readonly corner: Corner
  /** Where the blocks of a cleated corner begin: at the strip width, or higher on a bottom that lies there. */
  readonly blockFoot?: Length
}

/** The lengths that a corner gives to panels and strips. */
export interface Framing {
  readonly sidePanel: Length
  readonly endPanel: Length
  readonly sideRail: Length
  readonly endRail: Length
  readonly endStile: Length
  /** The upright strip that a side face shows at each end. */
  readonly sideStile: Length
  /** How far a captured corner stile covers the side panel; 0 at the other corners, negative where there is none. */
  readonly lip: Length
  /** How far the stile at each end of a face lies over that face's own panel. */
  readonly endCover: Length
  readonly sideCover: Length
  /** Length of the blocks inside a cleated corner. */
  readonly block?: Length
}

/**
 * Sizes panels and strips. Side panels stand between the end panels, but for halved corners (halved.ts); rails always
 * run the full width of their face, and the stiles stand between them. Nothing is checked here: see checkFraming.ts.
 */
export function sizeFraming(frame: Frame): Framing {
  const { inside, height, sheet, width, corner } = frame
  const endStile = minus(height, times(width, 2))
  if (corner === 'halved') return { ...halvedFraming(frame), endStile, sideStile: endStile, lip: ZERO }
  const panels = { sidePanel: inside.length, endPanel: plus(inside.width, times(sheet, 2)) }
  const sized = { ...panels, endStile }
  if (corner === 'captured') return { ...sized, ...captured(frame, endStile) }
  const block = minus(height, width, frame.blockFoot ?? width)
  return { ...sized, ...overlapped(frame, endStile), ...(corner === 'cleated' ? { block } : {}) }
}

/**
 * Captured: the side rails overhang their panel by t + s at each end and the corner stile, fixed to the edge of the END
 * panel, sits between them. It covers t + s of edges before it reaches the side panel: the rest of w is the lip.
 */
function captured({ inside, sheet, strip, width, fit }: Frame, endStile: Length) {
  const edges = plus(sheet, strip)
  const lip = minus(width, edges)
  return {
    sideRail: plus(inside.length, times(edges, 2)),
    endRail: plus(inside.width, times(sheet, 2)),
    sideStile: minus(endStile, times(fit, 2)),
    lip,
    endCover: width,
    sideCover: lip,
  }
}

/**
 * Cleated, butted and bracketed: the side frame is fixed to the side panel and runs t past it at each end, over the edge of the end
 * panel; the end frame is fixed to the end panel and runs s past it, over the ends of the side frame. An end can be drawn
 * straight off. A cleated corner has a block inside, its w face on the side panel and its s edge against the end panel,
 * as long as the stiles so that one stop setting cuts both, but for a bottom that it stands on. Bracketed corners are butted
 * ones with steel angles inside in place of glue.
 */
function overlapped({ inside, sheet, strip, width }: Frame, endStile: Length) {
  return {
    sideRail: plus(inside.length, times(sheet, 2)),
    endRail: plus(inside.width, times(plus(sheet, strip), 2)),
    sideStile: endStile,
    lip: ZERO,
    endCover: minus(width, strip),
    sideCover: minus(width, sheet),
  }
}
