/**
 * `value` with at most `decimals` places, no trailing zeros and no `-0`. A value that is not zero never prints as 0: it
 * gets the places that its first two figures need.
 */
export function showDecimal(value: number, decimals: number): string {
  const size = Math.abs(value)
  const text = size.toFixed(placesFor(size, decimals))
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text
  return value < 0 ? `-${trimmed}` : trimmed
}

const placesFor = (size: number, decimals: number): number =>
  size === 0 || Number(size.toFixed(decimals)) > 0 ? decimals : 1 - Math.floor(Math.log10(size))
