import { type Length, minus, times } from '../measure/length.ts'
import { chooseEnds } from './brace.ts'
import type { Diagonal } from './diagonal.ts'
import type { Framing } from './framing.ts'
import type { NoRoomForBrace } from './surroundObstacle.ts'
import type { FaceName } from '../plan/spec.ts'

/** One kind of framed face as it is seen from outside; a box has two of each, or one side and one front. */
export interface Face {
  readonly name: FaceName
  readonly count: 1 | 2
  /** Length and height of the panel behind it. */
  readonly panel: Length
  readonly height: Length
  /** In each panel. */
  readonly grooves: number
  /** Length of its rails: the face from edge to edge. */
  readonly shows: Length
  /** How far the stile at each end lies over the panel: what shows between the stiles starts there. */
  readonly covered: Length
  /** The clear rectangle inside the frame. */
  readonly opening: { readonly width: Length; readonly height: Length }
  /** The diagonal brace in the opening, if one was asked for; its blank is the same whichever way it ends. */
  readonly brace?: Diagonal
}

/** What a face is besides its framing. */
export interface FaceTerms {
  readonly name: FaceName
  readonly count: 1 | 2
  readonly height: Length
  /** Strip face width. */
  readonly width: Length
  readonly grooves: number
}

/** One kind of face of a box, without its brace. The stiles are flush with the ends of the rails, w wide. */
export function layFace({ width, ...terms }: FaceTerms, framing: Framing): Face {
  const ofEnd = terms.name === 'end'
  const shows = ofEnd ? framing.endRail : framing.sideRail
  return {
    ...terms,
    panel: ofEnd ? framing.endPanel : framing.sidePanel,
    shows,
    covered: ofEnd ? framing.endCover : framing.sideCover,
    opening: { width: minus(shows, times(width, 2)), height: minus(terms.height, times(width, 2)) },
  }
}

/** The usual least range of a mitre saw, degrees from square; one flush end of a brace is always within it. */
const SAW_RANGE = 45

/** `face` with one diagonal of a strip `width` wide across its opening, or the obstacle. */
export function braceFace(face: Face, width: Length): Face | NoRoomForBrace {
  const choice = chooseEnds(face.opening.width, face.opening.height, width, SAW_RANGE)
  if (choice.status === 'impossible')
    return { kind: 'noRoomForBrace', face: face.name, widthBelow: choice.below }
  return { ...face, brace: choice.diagonal }
}
