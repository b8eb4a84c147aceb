import type { Range } from '../quantities/product.ts'

/** Percent of humidity, then the least and the most moisture of MDF and particleboard (wood panel makers' guide). */
const PRINTED = [
  [30, 6, 8],
  [45, 7, 9],
  [65, 9, 11],
  [75, 10, 12],
  [90, 15, 16],
] as const

/**
 * Percent of moisture that MDF or particleboard settles at in air of `humidity` percent, read between the rows that the
 * panel makers print; undefined outside 30 to 90 %, where they print none.
 */
export function panelMoisture(humidity: number): Range | undefined {
  const above = PRINTED.findIndex(([row]) => row >= humidity)
  const [upper, lower] = [PRINTED[above], PRINTED[Math.max(0, above - 1)]]
  if (!upper || !lower || humidity < PRINTED[0][0]) return undefined
  const part = upper === lower ? 0 : (humidity - lower[0]) / (upper[0] - lower[0])
  const between = (side: 1 | 2): number => lower[side] + part * (upper[side] - lower[side])
  return { low: between(1), high: between(2) }
}
