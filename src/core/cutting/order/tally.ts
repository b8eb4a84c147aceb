import type { PlanNode } from './node.ts'

/** What is known of one setting while the bench empties. */
export interface Tally {
  readonly setting: string
  /** Kinds that need it, now or later. */
  needing: number
  /** Kinds that are ready for it, each with whether its strips may come free by themselves. */
  readonly ready: Map<PlanNode, boolean>
  /** Ready kinds whose strips do not come free by themselves. */
  fixed: number
  /** Kinds that will need it again after it was used. */
  again: number
  /** The largest that is ready; undefined until it is asked for. */
  largest: number | undefined
}

/** Every kind of piece that lies on the bench, and every setting that is still needed, kept up to date as kinds come and go. */
export interface Tallies {
  readonly kinds: ReadonlySet<PlanNode>
  readonly settings: ReadonlyMap<string, Tally>
  readonly add: (node: PlanNode) => void
  readonly remove: (node: PlanNode) => void
}

/** A kind that is not ready, or has something within it that is not, needs the setting again. */
const isAgain = (node: PlanNode, setting: string): boolean =>
  !node.ready.has(setting) || node.deep.has(setting)

/** Tallies of an empty bench. */
export function createTallies(): Tallies {
  const kinds = new Set<PlanNode>()
  const settings = new Map<string, Tally>()

  const tallyOf = (setting: string): Tally => {
    const known = settings.get(setting)
    if (known) return known
    const fresh = { setting, needing: 0, ready: new Map(), fixed: 0, again: 0, largest: undefined }
    settings.set(setting, fresh)
    return fresh
  }
  const count = (node: PlanNode, by: 1 | -1): void => {
    for (const need of node.needs) {
      const tally = tallyOf(need)
      tally.needing += by
      if (isAgain(node, need)) tally.again += by
      const spared = node.ready.get(need)
      if (spared === undefined) continue
      if (by > 0) tally.ready.set(node, spared)
      else tally.ready.delete(node)
      if (!spared) tally.fixed += by
      tally.largest = undefined
    }
    if (by < 0) for (const need of node.needs) if (settings.get(need)?.needing === 0) settings.delete(need)
  }
  return {
    kinds,
    settings,
    add: (node) => {
      if (kinds.has(node)) return
      kinds.add(node)
      count(node, 1)
    },
    remove: (node) => {
      if (kinds.delete(node)) count(node, -1)
    },
  }
}

/** The area of the largest kind that is ready for a setting. */
export function largestOf(tally: Tally): number {
  if (tally.largest === undefined) {
    let largest = 0
    for (const { area } of tally.ready.keys()) largest = Math.max(largest, area)
    tally.largest = largest
  }
  return tally.largest
}
