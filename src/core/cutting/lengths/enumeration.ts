import type { Table } from './knapsack.ts'
import { worthFrom } from './knapsack.ts'
import type { Pattern } from './pattern.ts'

/**
 * All patterns of a bar worth at least `floor` by the values in the table, to which no part can be added; undefined
 * when there are more than `most`.
 */
export function listPatterns(
  table: Table,
  bar: number,
  capacity: number,
  floor: number,
  most: number,
): Pattern[] | undefined {
  const { sizes, values, limits, types } = table
  const patterns: Pattern[] = []
  const rows: number[] = []
  const counts: number[] = []
  let steps = most * 50
  /** The shortest part passed over though there was more of it: where it still fits, the pattern is not full. */
  const descend = (row: number, room: number, worth: number, passed: number): void => {
    if (steps-- <= 0 || patterns.length > most || (room >= passed && row === table.count)) return
    if (row === table.count) {
      if (worth >= floor)
        patterns.push({ bar, types: rows.map((place) => types[place]!), counts: [...counts] })
      return
    }
    const size = sizes[row]!
    const copies = Math.min(limits[row]!, Math.floor(room / size))
    for (let count = copies; count >= 0; count--) {
      const rest = room - count * size
      const value = worth + count * values[row]!
      if (value + worthFrom(table, row + 1, rest) < floor) continue
      const least = count < limits[row]! ? Math.min(passed, size) : passed
      if (count > 0) {
        rows.push(row)
        counts.push(count)
      }
      descend(row + 1, rest, value, least)
      if (count > 0) {
        rows.pop()
        counts.pop()
      }
    }
  }
  descend(0, capacity, 0, Infinity)
  return steps > 0 && patterns.length <= most ? patterns : undefined
}
