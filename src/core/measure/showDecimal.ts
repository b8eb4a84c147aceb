/** Smaller than this is the noise of reckoning in floating point: one nanometre is 0.00000004 in. */
const NOISE = 1e-9

/**
 * `value` with at most `decimals` places, no trailing zeros and no `-0`. A value smaller than the last place gets the
 * places that its first two figures need, so that only zero (within 1e-9) prints as 0.
 */
export function showDecimal(value: number, decimals: number): string {
  const size = Math.abs(value) < NOISE ? 0 : Math.abs(value)
  const text = size.toFixed(placesFor(size, decimals))
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text
  return value < 0 && size > 0 ? `-${trimmed}` : trimmed
}

const placesFor = (size: number, decimals: number): number =>
  size === 0 || size >= 10 ** -decimals ? decimals : 1 - Math.floor(Math.log10(size))
