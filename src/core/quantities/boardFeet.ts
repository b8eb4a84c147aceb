import { INCH, inches, type Length, plus, times, toInches, ZERO } from '../measure/length.ts'

/** A board by the size it is sold as, or by the size it really has. */
export interface Section {
  readonly thickness: Length
  readonly width: Length
  readonly basis: 'nominal' | 'actual'
}

/**
 * Board feet of one piece: a foot square and an inch thick, 144 in3. Lumber is counted by its nominal size, and stock under an
 * inch counts as an inch (US Navy, Engineering Aid); by actual size it is the wood that is there. Throws for a size below 0.
 */
export function boardFeet({ thickness, width, basis }: Section, length: Length): number {
  if (!(thickness > 0 && width > 0 && length >= 0))
    throw new RangeError(`a board must be above 0: ${thickness} x ${width} x ${length}`)
  const counted = basis === 'nominal' ? Math.max(thickness, INCH) : thickness
  return (toInches(counted as Length) * toInches(width) * toInches(length)) / 144
}

const NAME = /^(\d+)(?:\/(\d+))?x(\d+)$/u

/** The nominal size in a US board's name, `2x4` or `5/4x6`, in inches; undefined where the name gives none. */
export function nominalSection(name: string): Section | undefined {
  const [, top, bottom = '1', width] = NAME.exec(name.replaceAll('×', 'x').replace(/\s+/gu, '')) ?? []
  if (top === undefined || Number(bottom) === 0) return undefined
  return {
    thickness: inches(Number(top), Number(bottom)),
    width: inches(Number(width)),
    basis: 'nominal',
  }
}

/** Pieces of one section. */
export interface Pieces {
  readonly section: string
  readonly length: Length
  readonly count: number
}

export interface LinearTotal {
  readonly section: string
  readonly count: number
  readonly length: Length
}

/** How many pieces and what length in all there is of each section, in the order they first come. */
export function linearTotals(pieces: readonly Pieces[]): readonly LinearTotal[] {
  const totals = new Map<string, LinearTotal>()
  for (const { section, length, count } of pieces) {
    const so = totals.get(section) ?? { section, count: 0, length: ZERO }
    totals.set(section, { section, count: so.count + count, length: plus(so.length, times(length, count)) })
  }
  return [...totals.values()]
}
