import { inches, type Length, minus, nanometres, plus } from '../measure/length.ts'
import { outOfSquare, type Squareness } from './squareness.ts'

/** A frame as measured, seen from the front: its sides and both diagonals. */
export interface Measured {
  readonly length: Length
  readonly width: Length
  /** From bottom left to top right. */
  readonly rising: Length
  /** From top left to bottom right. */
  readonly falling: Length
}

export type FrameCorner = 'bottom left' | 'bottom right' | 'top left' | 'top right'

/** Cabinet work: good, fair, at the limit, or past it. */
export const GRADES = ['good', 'fair', 'limit', 'past'] as const
export type SquareGrade = (typeof GRADES)[number]

/** How square a frame is, what to do about it and what it will do for. */
export interface SquareCheck extends Omit<Squareness, 'status'> {
  readonly status: 'checked'
  readonly difference: Length
  /** The diagonal that is too long, and the corners to squeeze together; neither where they agree. */
  readonly long?: 'rising' | 'falling' | undefined
  readonly squeezed?: readonly [FrameCorner, FrameCorner] | undefined
  /** The corners to pull apart instead. */
  readonly pulled?: readonly [FrameCorner, FrameCorner] | undefined
  readonly cabinet: SquareGrade
  /** As square as a sheet of plywood is sold: 1/64 in for each foot of its longest side (PS 1-19). */
  readonly asSheet: boolean
  /** Diagonals within 1/8 in, which site carpenters accept for framing. */
  readonly asFraming: boolean
  /** How far the sides and the diagonals disagree, as a side or a diagonal was misread: 0 for a true parallelogram. */
  readonly misread: Length
}

/** Difference of the diagonals over the diagonal: 1/32, 1/16 and 3/32 in on 45 in (cabinetmakers' forum). */
const CABINET = [
  { grade: 'good', most: 1 / 32 / 45 },
  { grade: 'fair', most: 1 / 16 / 45 },
  { grade: 'limit', most: 3 / 32 / 45 },
] as const

const RISING = ['bottom left', 'top right'] as const
const FALLING = ['top left', 'bottom right'] as const

/** How much the diagonals of a frame may differ and still be fair in cabinet work. */
export const squareWithin = (diagonal: Length): Length =>
  nanometres((CABINET.find(({ grade }) => grade === 'fair')?.most ?? 0) * diagonal)

/** Checks a frame by its diagonals. Impossible where no frame of those sides has diagonals that differ so. */
export function checkSquare(measured: Measured): SquareCheck | { readonly status: 'impossible' } {
  const { length, width, rising, falling } = measured
  const difference = Math.abs(minus(rising, falling)) as Length
  const found = outOfSquare({ length, width, difference })
  const flat = plus(length, width)
  if (found.status === 'impossible' || !(rising > 0 && falling > 0) || Math.max(rising, falling) >= flat)
    return { status: 'impossible' }
  const diagonal = Math.hypot(length, width)
  return {
    ...found,
    status: 'checked',
    difference,
    ...whichWay(measured),
    cabinet: CABINET.find(({ most }) => difference <= most * diagonal)?.grade ?? 'past',
    asSheet: found.angle <= SHEET_ANGLE,
    asFraming: difference <= inches(1, 8),
    misread: nanometres(Math.sqrt((rising ** 2 + falling ** 2) / 2) - diagonal),
  }
}

/** Degrees of 1/64 in to the foot. */
const SHEET_ANGLE = (Math.atan(1 / 64 / 12) * 180) / Math.PI

function whichWay({ rising, falling }: Measured): Pick<SquareCheck, 'long' | 'squeezed' | 'pulled'> {
  if (rising === falling) return {}
  return rising > falling
    ? { long: 'rising', squeezed: RISING, pulled: FALLING }
    : { long: 'falling', squeezed: FALLING, pulled: RISING }
}
