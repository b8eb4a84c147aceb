import type { Points } from './points.ts'
import type { PatternTable } from './table.ts'

/** For every pair of points: the index below what lies between them. */
const readBetween = (points: Points): Int32Array[] =>
  Array.from(points.at, (from, index) => {
    const between = new Int32Array(points.at.length)
    for (let to = index + 1; to < between.length; to++)
      between[to] = points.below((points.at[to] as number) - from)
    return between
  })

/**
 * The most that can be made of the rest of the largest sheet when a block of every size has been cut in it (Cung, Hifi,
 * Le Cun 2000; Young-Gun, Kang 2001), from the table's last filling and indexed like it. Undefined when stopped.
 */
export const readOutside = (table: PatternTable, shouldStop: () => boolean): Float64Array | undefined => {
  const values = table.values
  const rows = table.x.at.length
  const columns = table.y.at.length
  const outside = new Float64Array(rows * columns)
  const betweenX = readBetween(table.x)
  const betweenY = readBetween(table.y)
  for (let x = rows - 1; x >= 0; x--) {
    if (shouldStop()) return undefined
    const beside = betweenX[x] as Int32Array
    for (let y = columns - 1; y >= 0; y--) {
      const above = betweenY[y] as Int32Array
      let best = 0
      for (let to = x + 1; to < rows; to++)
        best = Math.max(
          best,
          (outside[to * columns + y] as number) + (values[(beside[to] as number) * columns + y] as number),
        )
      for (let to = y + 1; to < columns; to++)
        best = Math.max(
          best,
          (outside[x * columns + to] as number) + (values[x * columns + (above[to] as number)] as number),
        )
      outside[x * columns + y] = best
    }
  }
  return outside
}
