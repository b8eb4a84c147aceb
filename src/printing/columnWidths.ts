/** How wide a column would like to be, and how narrow it can be at most. */
export interface Wish {
  readonly natural: number
  readonly least: number
}

/**
 * Widths of columns that together fill `room`: as wide as they like to be where that fits, the rest to the last; else the
 * widest give way first, none below its least while that can be had.
 */
export function columnWidths(wishes: readonly Wish[], room: number): readonly number[] {
  const natural = wishes.map((wish) => wish.natural)
  const spare = room - sum(natural)
  if (spare >= 0) return natural.map((width, index) => (index === natural.length - 1 ? width + spare : width))
  const least = wishes.map((wish) => Math.min(wish.least, wish.natural))
  if (sum(least) >= room) return least.map((width) => (width * room) / sum(least))
  const capped = (cap: number) => wishes.map((wish, index) => clamp(cap, least[index] ?? 0, wish.natural))
  let [low, high] = [0, room]
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2
    if (sum(capped(middle)) > room) high = middle
    else low = middle
  }
  return capped(low)
}

/** To less than a thousandth of a point on any paper. */
const HALVINGS = 24

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value))
const sum = (list: readonly number[]): number => list.reduce((total, each) => total + each, 0)
