import type { Region } from '../../core/stock/stock.ts'
import type { Paper } from './handout.ts'

/** The paper that printers of the region hold. */
export const paperOf = (region: Region): Paper => (region === 'US' ? 'letter' : 'a4')

/** `A4`, `Letter`. */
export const paperWords = (paper: Paper): string => (paper === 'a4' ? 'A4' : 'Letter')
