import type { Length } from '../core/measure/length.ts'
import type { Purpose } from '../core/measure/round.ts'
import { type ShowSettings, showMark } from '../core/measure/show.ts'
import { showAngle } from '../core/measure/showAmounts.ts'

/** Prints numbers as the person who asked reads them; a picture names the unit once. */
export interface Numbers {
  readonly unit: string
  /** Without the unit. `fine` is to the joint tape. */
  readonly mark: (length: Length, purpose?: Purpose, fine?: boolean) => string
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
  angle: showAngle,
})

/** What stock measures: to the joint tape. */
export const fineMark = (numbers: Numbers, length: Length): string => numbers.mark(length, 'mark', true)

/** The line that names the unit, for the foot of a picture. */
export const unitLine = ({ unit }: Numbers): string => (unit === 'in' ? 'inches' : unit)
