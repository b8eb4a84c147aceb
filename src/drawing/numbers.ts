import type { Length } from '../core/measure/length.ts'
import type { Purpose } from '../core/measure/round.ts'
import { type ShowSettings, showMark, showMiss } from '../core/measure/show.ts'
import { caliperMark } from '../core/measure/showCaliper.ts'
import { showAngle } from '../core/measure/showAmounts.ts'

/** Prints numbers as the person who asked reads them; a picture names the unit once. */
export interface Numbers {
  readonly unit: string
  /** Without the unit. `fine` is to the joint tape. */
  readonly mark: (length: Length, purpose?: Purpose, fine?: boolean) => string
  /** What stock and blades measure, which no tape is held to: a joint mark where it is exact, else as a calliper reads it. */
  readonly stock: (length: Length) => string
  readonly angle: (degrees: number) => string
}

/** How numbers are printed, as data: `coarse` for what is cut to a tape, `fine` for joints and fences. */
export interface NumberSettings {
  readonly coarse: ShowSettings
  readonly fine: ShowSettings
}

/** Numbers printed so. */
export const numbersIn = ({ coarse, fine }: NumberSettings): Numbers => ({
  unit: coarse.units === 'inch' ? 'in' : 'mm',
  mark: (length, purpose, isFine) => showMark(length, isFine ? fine : coarse, purpose),
  stock: (length) =>
    showMiss(length, fine) === '' ? showMark(length, fine) : caliperMark(length, fine.units),
  angle: showAngle,
})

/** To the joint tape, to the nearest mark. */
export const fineMark = (numbers: Numbers, length: Length): string => numbers.mark(length, 'mark', true)

/** The line that names the unit, for the foot of a picture. */
export const unitLine = ({ unit }: Numbers): string => (unit === 'in' ? 'inches' : unit)
