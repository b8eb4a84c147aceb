import { type Length, minus, times } from '../measure/length.ts'
import { chooseEnds } from './brace.ts'
import type { Diagonal } from './diagonal.ts'
import type { Frame, Framing } from './framing.ts'
import type { NoRoomForBrace } from './surroundObstacle.ts'

/** One kind of framed face as it is seen from outside; a box has two of each. */
export interface Face {
  readonly name: 'end' | 'side'
  readonly count: 2
  /** Length of the panel behind it; as high as the box. */
  readonly panel: Length
  /** Length of its rails: the face from edge to edge. */
  readonly shows: Length
  /** How far the stile at each end lies over the panel: what shows between the stiles starts there. */
  readonly covered: Length
  /** The clear rectangle inside the frame. */
  readonly opening: { readonly width: Length; readonly height: Length }
  /** The diagonal brace in the opening, if one was asked for; its blank is the same whichever way it ends. */
  readonly brace?: Diagonal
}

/** The two kinds of face of a box, without braces. The stiles are flush with the ends of the rails, w wide. */
export function layFaces({ height, width }: Frame, framing: Framing): readonly [end: Face, side: Face] {
  const opening = (rail: Length) => ({
    width: minus(rail, times(width, 2)),
    height: minus(height, times(width, 2)),
  })
  const { endPanel, endRail, endCover, sidePanel, sideRail, sideCover } = framing
  return [
    { name: 'end', count: 2, panel: endPanel, shows: endRail, covered: endCover, opening: opening(endRail) },
    {
      name: 'side',
      count: 2,
      panel: sidePanel,
      shows: sideRail,
      covered: sideCover,
      opening: opening(sideRail),
    },
  ]
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
