/** A whole number of nanometres: every 1/64 in (396 875 nm) and every micrometre is exact. */
export type Length = number & { readonly unit: 'nm' }

/** One inch, 25.4 mm by definition (international yard and pound agreement, 1959). */
export const INCH = 25_400_000 as Length
export const FOOT = (12 * INCH) as Length
export const MILLIMETRE = 1_000_000 as Length
export const ZERO = 0 as Length

/** A whole number of nanometres as a length; rounds anything else to the nearest. */
export const nanometres = (count: number): Length => Math.round(count) as Length

/** Millimetres as a length, to the nearest nanometre. */
export const millimetres = (count: number): Length => nanometres(count * MILLIMETRE)

/** `numerator / denominator` inches as a length: `inches(47, 2)` is 23 1/2 in. */
export const inches = (numerator: number, denominator = 1): Length =>
  nanometres((numerator * INCH) / denominator)

export const toMillimetres = (length: Length): number => length / MILLIMETRE
export const toInches = (length: Length): number => length / INCH

/** The sum of lengths, exact. */
export const plus = (...lengths: readonly Length[]): Length =>
  lengths.reduce((total, length) => total + length, 0) as Length

/** `from` less every one of `lengths`, exact; may be negative. */
export const minus = (from: Length, ...lengths: readonly Length[]): Length =>
  lengths.reduce((rest, length) => rest - length, from as number) as Length

/** A whole multiple of a length, exact for whole `count`. */
export const times = (length: Length, count: number): Length => nanometres(length * count)
