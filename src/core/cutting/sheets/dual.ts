/**
 * A function over lengths that never gives more to a sum of lengths than to its parts together (superadditive), so what
 * it gives the parts of a row never passes what it gives the row. Products of two bound what a sheet can hold.
 */
export type DualFunction = (length: number) => number

/** Lengths as they are. */
const plain: DualFunction = (length) => length

/** Long pieces take the whole, short ones nothing (Martello, Toth 1990; Lueker 1983). */
const threshold =
  (whole: number, least: number): DualFunction =>
  (length) =>
    length > whole - least ? whole : length >= least ? length : 0

/** Rounding to multiples of `step`, mirrored about the middle (Carlier, Clautiaux, Moukrim 2007). */
const mirrored =
  (whole: number, step: number): DualFunction =>
  (length) => {
    const half = whole / 2
    if (length === half) return Math.floor(whole / step)
    if (length < half) return 2 * Math.floor(length / step)
    return 2 * (Math.floor(whole / step) - Math.floor((whole - length) / step))
  }

/** Whole multiples of an nth keep their size, all else is rounded down (Fekete, Schepers 2001). */
const stepped =
  (whole: number, parts: number): DualFunction =>
  (length) => {
    const share = length * (parts + 1)
    return share % whole === 0 ? length * parts : Math.floor(share / whole) * whole
  }

/** How many nths a length passes (Vanderbeck 2000). */
const passed =
  (whole: number, parts: number): DualFunction =>
  (length) =>
    Math.max(0, Math.ceil((length * parts) / whole) - 1)

const spread = (values: readonly number[], most: number): number[] => {
  const sorted = [...new Set(values)].sort((a, b) => a - b)
  if (sorted.length <= most) return sorted
  return Array.from(
    { length: most },
    (_, index) => sorted[Math.floor((index * sorted.length) / most)] as number,
  )
}

/** Functions that suit parts of the given lengths in a whole of `whole`; about three times `most` and a score more. */
export const dualFunctions = (whole: number, lengths: readonly number[], most: number): DualFunction[] => {
  const short = lengths.flatMap((length) => [length, whole - length, whole - length + 1])
  const steps = spread(
    short.filter((length) => length > 0 && 2 * length <= whole),
    most,
  )
  const found: DualFunction[] = [plain]
  for (const step of steps) found.push(threshold(whole, step), mirrored(whole, step))
  for (let parts = 1; parts <= 12; parts++) found.push(stepped(whole, parts))
  for (let parts = 2; parts <= 12; parts++) found.push(passed(whole, parts))
  return found
}
