import type { Rectangle } from '../problem.ts'

interface Interval<Item> {
  readonly from: number
  readonly to: number
  readonly item: Item
}

const along = <Item extends Rectangle>(items: readonly Item[], axis: 'x' | 'y'): Interval<Item>[] =>
  items.map((item) => ({
    from: item[axis],
    to: item[axis] + (axis === 'x' ? item.length : item.width),
    item,
  }))

/** Groups that straight cuts right across part from one another: no gap between two groups is under the kerf. */
function splitAlong<Item extends Rectangle>(items: readonly Item[], axis: 'x' | 'y', kerf: number): Item[][] {
  const intervals = along(items, axis).sort((a, b) => a.from - b.from || a.to - b.to)
  const groups: Item[][] = []
  let reached = Number.NEGATIVE_INFINITY
  for (const { from, to, item } of intervals) {
    if (from >= reached + kerf) groups.push([])
    groups.at(-1)!.push(item)
    reached = Math.max(reached, to)
  }
  return groups
}

/**
 * The rectangles that no sequence of edge-to-edge cuts can part; empty when all come free. Any cut that misses every
 * rectangle is safe to take, since what can be parted stays so when others are gone: no search is needed.
 */
export function findInseparable<Item extends Rectangle>(items: readonly Item[], kerf: number): Item[] {
  if (items.length <= 1) return []
  const across = splitAlong(items, 'x', kerf)
  const groups = across.length > 1 ? across : splitAlong(items, 'y', kerf)
  if (groups.length === 1) return [...items]
  return groups.flatMap((group) => findInseparable(group, kerf))
}
