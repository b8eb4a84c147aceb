import type { Length } from '../core/measure/length.ts'
import type { Purpose } from '../core/measure/round.ts'

/** Prints numbers as the person who asked reads them; a picture names the unit once. */
export interface Numbers {
  readonly unit: string
  /** Without the unit. `fine` is to the joint tape. */
  readonly mark: (length: Length, purpose?: Purpose, fine?: boolean) => string
  readonly angle: (degrees: number) => string
}

/** What stock measures: to the joint tape. */
export const fineMark = (numbers: Numbers, length: Length): string => numbers.mark(length, 'mark', true)

/** The line that names the unit, for the foot of a picture. */
export const unitLine = ({ unit }: Numbers): string => (unit === 'in' ? 'inches' : unit)
