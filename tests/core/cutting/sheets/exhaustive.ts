import type { SheetProblem } from '../../../../src/core/cutting/problem.ts'

interface Oblong {
  readonly length: number
  readonly width: number
  readonly turnable: boolean
}

/** Every part by itself, counts spelled out. */
const spell = (problem: SheetProblem): Oblong[] =>
  problem.parts.flatMap((part) => Array.from({ length: part.count }, () => part))

/** Whether guillotine cuts can set all parts of a set free from a rectangle, by trying every cut. Sizes must be small. */
const createCutter = (parts: readonly Oblong[], kerf: number) => {
  const known = new Map<string, boolean>()
  const isOne = (part: Oblong, length: number, width: number): boolean =>
    (part.length <= length && part.width <= width) ||
    (part.turnable && part.width <= length && part.length <= width)
  const splits = (length: number, width: number, set: number): boolean => {
    for (let some = (set - 1) & set; some > 0; some = (some - 1) & set) {
      for (let at = 1; at < length; at++)
        if (cuts(at, width, some) && cuts(length - at - kerf, width, set & ~some)) return true
      for (let at = 1; at < width; at++)
        if (cuts(length, at, some) && cuts(length, width - at - kerf, set & ~some)) return true
    }
    return false
  }
  const cuts = (length: number, width: number, set: number): boolean => {
    const single = parts.findIndex((_, index) => set === 1 << index)
    if (length <= 0 || width <= 0) return false
    if (single >= 0) return isOne(parts[single] as Oblong, length, width)
    const key = `${length} ${width} ${set}`
    const answer = known.get(key) ?? splits(length, width, set)
    known.set(key, answer)
    return answer
  }
  return cuts
}

/** The least cost over all ways to share the parts out among sheets, and all guillotine cuts; every sheet can be bought. */
export const leastCost = (problem: SheetProblem): number => {
  const parts = spell(problem)
  const cuts = createCutter(parts, problem.kerf)
  const sheetCost = (set: number): number =>
    Math.min(
      ...problem.stock
        .filter((sheet) => cuts(sheet.length - 2 * problem.trim, sheet.width - 2 * problem.trim, set))
        .map((sheet) => sheet.price),
    )
  const least = [0]
  for (let set = 1; set < 1 << parts.length; set++) {
    least[set] = Number.POSITIVE_INFINITY
    for (let some = set; some > 0; some = (some - 1) & set)
      least[set] = Math.min(least[set] as number, sheetCost(some) + (least[set & ~some] as number))
  }
  return least.at(-1) as number
}
