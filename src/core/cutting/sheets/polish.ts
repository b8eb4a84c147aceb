import type { ShouldStop } from '../problem.ts'
import type { Block } from './block.ts'
import { markPacking, restorePacking } from './mark.ts'
import type { OpenSheet, Packing } from './packing.ts'
import type { Random } from './random.ts'
import { cheapFirst, PART_KEYS, type PartKey, recreate } from './recreate.ts'
import { ruin } from './ruin.ts'

/** What a sheet asks of the saw, and leaves. */
interface Finish {
  /** Fence distances, negative for cuts across y: kerf included, in units of the job. */
  readonly settings: readonly number[]
  /** Area of the largest offcut worth keeping. */
  readonly offcut: number
}

const extents = (row: Block): number[] =>
  row.children.map((child) => (row.along === 0 ? child.length : child.width)).sort((a, b) => b - a)

const readBlock = (packing: Packing, block: Block, settings: Set<number>): number => {
  if (block.part >= 0) return 0
  const { kerf, keepable } = packing.job
  const sizes = extents(block)
  if (block.gap === 0) sizes.pop()
  for (const size of sizes) settings.add(block.along === 0 ? size : -size)
  const across = (block.along === 0 ? block.width : block.length) - kerf
  const keeps = block.gap - kerf >= keepable && across >= keepable && block.gap > kerf
  let largest = keeps ? (block.gap - kerf) * across : 0
  for (const child of block.children) largest = Math.max(largest, readBlock(packing, child, settings))
  return largest
}

const readFinish = (packing: Packing, sheet: OpenSheet): Finish => {
  const settings = new Set<number>()
  const offcut = readBlock(packing, sheet.root, settings)
  return { settings: [...settings], offcut }
}

/** Fewer saw settings first, then a larger offcut: the lower, the better. */
const rank = (packing: Packing, known: WeakMap<OpenSheet, Finish>): { settings: number; offcut: number } => {
  const settings = new Set<number>()
  let offcut = 0
  for (const sheet of packing.sheets) {
    const finish = known.get(sheet) ?? readFinish(packing, sheet)
    known.set(sheet, finish)
    for (const setting of finish.settings) settings.add(setting)
    offcut = Math.max(offcut, finish.offcut)
  }
  return { settings: settings.size, offcut }
}

/** How many saw settings a packing needs, and the area of the largest offcut it leaves, in units of the job. */
export const finishOf = (packing: Packing): { settings: number; offcut: number } =>
  rank(packing, new WeakMap())

/**
 * Lays parts anew within the same cost, so that the saw needs fewer settings and then the largest offcut is larger.
 * Ends after about `effort` steps or when told to; the packing must have all parts laid, and keeps them.
 */
export const polish = (packing: Packing, effort: number, random: Random, shouldStop: ShouldStop): void => {
  const known = new WeakMap<OpenSheet, Finish>()
  const budget = packing.cost
  const end = packing.effort + effort
  let mark = markPacking(packing)
  let best = rank(packing, known)
  while (packing.effort < end && !shouldStop()) {
    packing.effort += 5000 + 50 * packing.sheets.length
    ruin(packing, 1 + random.below(8), random)
    const key = PART_KEYS[random.below(PART_KEYS.length)] as PartKey
    const taste = { blink: 0.05, power: 0 as const }
    recreate(packing, { key, noise: 0.3, taste, budget, choose: cheapFirst(0.3) }, random)
    const next = packing.leftCount > 0 ? undefined : rank(packing, known)
    if (next && (next.settings - best.settings || best.offcut - next.offcut) <= 0) {
      best = next
      mark = markPacking(packing)
    } else restorePacking(packing, mark)
  }
  restorePacking(packing, mark)
}
