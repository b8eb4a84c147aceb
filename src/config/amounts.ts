import { z } from 'zod'
import { FOOT, INCH, type Length, MILLIMETRE, ZERO } from '../core/measure/length.ts'

const UNITS: Readonly<Record<string, number>> = {
  in: INCH,
  ft: FOOT,
  mm: MILLIMETRE,
  cm: 10 * MILLIMETRE,
  m: 1000 * MILLIMETRE,
}

const NUMBER = String.raw`(?:(\d+) )?(\d+)/(\d+)|(\d*\.?\d+)`
const ONE = new RegExp(`^(?:${NUMBER}) ?(in|ft|mm|cm|m)$`)
const RATIO = new RegExp(`^(?:${NUMBER})$`)

/** Numerator and denominator of `1 1/2`, `3/4`, `12`, `.438` as whole numbers, from the groups of NUMBER. */
function fraction(groups: readonly (string | undefined)[]): readonly [number, number] {
  const [whole = '0', top, bottom, decimal = ''] = groups
  if (top !== undefined) return [Number(whole) * Number(bottom) + Number(top), Number(bottom)]
  const scale = 10 ** (decimal.split('.')[1]?.length ?? 0)
  return [Math.round(Number(decimal) * scale), scale]
}

/** `1 1/2in`, `.438 in`, `47mm` or `2.4m` exactly; undefined for anything else and where it is no whole nanometre. */
export function writtenLength(text: string): Length | undefined {
  const groups = ONE.exec(text)
  if (!groups) return undefined
  const [top, bottom] = fraction(groups.slice(1, 5))
  const exact = (top * (UNITS[groups[5] ?? ''] ?? Number.NaN)) / bottom
  return Number.isSafeInteger(exact) && exact > 0 ? (exact as Length) : undefined
}

/** `3/4 x 1 1/2 in` or `47 x 100 mm` as two lengths, the unit at the end governing both; undefined for anything else. */
export function writtenSize(text: string): readonly [Length, Length] | undefined {
  const [, first = '', second = '', unit = ''] = /^(.+?) x (.+?) ?(in|ft|mm|cm|m)$/.exec(text) ?? []
  const [a, b] = [writtenLength(first + unit), writtenLength(second + unit)]
  return a !== undefined && b !== undefined ? [a, b] : undefined
}

/** `1/3`, `.25` or `1` as a number; undefined for anything else. */
export function writtenRatio(text: string): number | undefined {
  const groups = RATIO.exec(text)
  if (!groups) return undefined
  const [top, bottom] = fraction(groups.slice(1, 5))
  return bottom === 0 ? undefined : top / bottom
}

/** A zod schema for text that `read` understands; `expected` says in words what would do. */
export const written = <Value>(expected: string, read: (text: string) => Value | undefined) =>
  z.string({ error: expected }).transform((text, context): Value => {
    const value = read(text.trim())
    if (value !== undefined) return value
    context.addIssue({ code: 'custom', message: expected })
    return z.NEVER
  })

export const lengthText = written('a length such as "1/8in" or "3mm"', writtenLength)

/** The same where none at all is an answer too. */
export const lengthOrZero = written('a length such as "1/32in", "1mm" or "0in"', (text) =>
  /^0 ?(in|mm)$/.test(text) ? ZERO : writtenLength(text),
)

export const sizeText = written('two lengths such as "1 1/2 x 3 1/2 in" or "47 x 100 mm"', writtenSize)

/** A part of one, written as a fraction or as a number. */
export const ratio = z.union([z.number(), z.string()], { error: 'a part of one such as 1/3 or 0.1' }).pipe(
  z.union([z.number(), z.string()]).transform((value, context): number => {
    const part = typeof value === 'number' ? value : writtenRatio(value)
    if (part !== undefined && part > 0 && part <= 1) return part
    context.addIssue({ code: 'custom', message: 'a part of one such as 1/3 or 0.1' })
    return z.NEVER
  }),
)
