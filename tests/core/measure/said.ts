import Fraction from 'fraction.js'
import type { MeasureRead } from '../../../src/core/measure/reading.ts'

/** A reading in one line, lengths in nanometres: `size 609600000 914400000`, `angle 45`, `ambiguous`. */
export function said(read: MeasureRead): string {
  if (read.status !== 'read') return read.status
  return read.kind === 'angle' ? `angle ${read.degrees.toFixed(4)}` : [read.kind, ...read.lengths].join(' ')
}

const NANOMETRES: Readonly<Record<string, number>> = { in: 25_400_000, ft: 304_800_000, mm: 1_000_000 }

/** What a line such as `size, 24 1/2 in, 600 mm`, `angle, 45` or `ambiguous` expects, in the form of `said`. */
export function expected(line: string): string {
  const [kind = '', ...values] = line.split(',').map((part) => part.trim())
  if (kind === 'angle') return `angle ${Number(values[0]).toFixed(4)}`
  return [kind, ...values.map(lengthIn)].join(' ')
}

function lengthIn(value: string): number {
  const [, number = '', unit = ''] = /^([\d./ ]+?) ?(in|ft|mm)$/u.exec(value) ?? []
  return Math.round(new Fraction(number.trim()).mul(NANOMETRES[unit] ?? Number.NaN).valueOf())
}
