import type { Length } from '../core/measure/length.ts'
import type { Show } from './show.ts'

/** What stock measures, which no tape is held to: a joint mark where it is exact, else as a calliper reads it, `0.472`. */
export const stockMark = (length: Length, show: Show): string => show.stock(length)

/** The same with its unit: `15/32 in`, `0.472 in`, `11.9 mm`. */
export const stockSize = (length: Length, show: Show): string => `${stockMark(length, show)} ${show.unit}`
