import type { EasySwap } from './cutOrder.ts'

interface Sized {
  readonly id: string
  readonly length: number
  readonly width: number
}

const sides = ({ length, width }: Sized): [number, number] =>
  length > width ? [length, width] : [width, length]

/**
 * Pairs of parts whose two sides (whichever way they are held) differ by `within` at most, but not both by nothing:
 * parts of one size may be swapped freely. Each pair once, in the order of the list.
 */
export function findSwaps(parts: readonly Sized[], within: number): EasySwap[] {
  const sorted = parts
    .map((part, place) => ({ part, place, long: sides(part)[0], short: sides(part)[1] }))
    .sort((a, b) => a.long - b.long)
  const found: { first: number; second: number }[] = []
  sorted.forEach((one, at) => {
    for (let next = at + 1; next < sorted.length; next += 1) {
      const other = sorted[next]!
      if (other.long - one.long > within) break
      const isNear = Math.abs(other.short - one.short) <= within
      const isSame = other.long === one.long && other.short === one.short
      if (isNear && !isSame)
        found.push({ first: Math.min(one.place, other.place), second: Math.max(one.place, other.place) })
    }
  })
  return found
    .sort((a, b) => a.first - b.first || a.second - b.second)
    .map(({ first, second }) => ({ first: parts[first]!.id, second: parts[second]!.id }))
}
