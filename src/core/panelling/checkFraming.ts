import { type Length, minus, plus, times } from '../measure/length.ts'
import type { Frame, Framing } from './framing.ts'
import type { SurroundObstacle } from './surroundObstacle.ts'

/** The first thing that keeps `framing` from being built, or nothing where it can be. */
export const checkFraming = (frame: Frame, framing: Framing): SurroundObstacle | undefined =>
  checkHold(frame, framing) ?? checkHeight(frame, framing) ?? checkFaces(frame, framing) ?? checkBlocks(frame)

function checkHold({ corner, sheet, strip, width }: Frame, framing: Framing): SurroundObstacle | undefined {
  if (corner === 'captured') {
    if (framing.lip > 0) return undefined
    return {
      kind: 'noLip',
      lip: framing.lip,
      stripBelow: minus(width, sheet),
      widthAbove: plus(sheet, strip),
    }
  }
  if (corner === 'halved') return undefined
  if (framing.sideCover <= 0) return { kind: 'noHold', face: 'side', widthAbove: sheet }
  if (framing.endCover <= 0) return { kind: 'noHold', face: 'end', widthAbove: strip }
  return undefined
}

function checkHeight({ height }: Frame, { sideStile }: Framing): SurroundObstacle | undefined {
  if (sideStile > 0) return undefined
  return { kind: 'tooLow', height, heightAbove: minus(height, sideStile) }
}

function checkFaces({ width }: Frame, { endRail, sideRail }: Framing): SurroundObstacle | undefined {
  const showsAbove = times(width, 2)
  if (endRail <= showsAbove) return { kind: 'tooNarrow', face: 'end', shows: endRail, showsAbove }
  if (sideRail <= showsAbove) return { kind: 'tooNarrow', face: 'side', shows: sideRail, showsAbove }
  return undefined
}

function checkBlocks({ corner, inside, strip, width }: Frame): SurroundObstacle | undefined {
  if (corner !== 'cleated') return undefined
  const needs: readonly ['length' | 'width', Length][] = [
    ['length', times(width, 2)],
    ['width', times(strip, 2)],
  ]
  const short = needs.find(([along, needed]) => inside[along] < needed)
  return short && { kind: 'noRoomForBlocks', along: short[0], inside: short[1] }
}
