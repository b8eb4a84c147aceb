import type { Blank, Saw } from './blank.ts'
import { blanksWithin, cutBlank, movesOf, wideKeys } from './move.ts'
import type { Work } from './work.ts'

/** A kind of blank: every piece of its size with the same cuts to come. Parts' names make no difference to it. */
export interface PlanNode {
  readonly id: number
  /** A large whole number of its own: sums of marks tell sets of kinds apart. */
  readonly mark: number
  readonly area: number
  /** Settings that it is ready for; true when the strips might come free without it. */
  readonly ready: ReadonlyMap<string, boolean>
  /** Settings that it and all that comes of it need. */
  readonly needs: ReadonlySet<string>
  /** Those that what comes of it needs. */
  readonly deep: ReadonlySet<string>
}

/** Knows every kind of blank that a job can come to, and what each becomes at each setting. */
export interface Planner {
  /** The kind of a blank; undefined when no cut is left to make in it. */
  readonly nodeOf: (blank: Blank) => PlanNode | undefined
  /** The kinds that are left of a node when everything is cut that the setting serves. */
  readonly cutAt: (node: PlanNode, setting: string) => readonly PlanNode[]
}

const isReady = ({ work }: Blank): boolean => work.kind === 'run' || work.kind === 'trim'

/** Work as text, strips in order of size, so that equal work is equal text. */
function createDescriber(): (work: Work) => string {
  const known = new WeakMap<Work, string>()
  const describe = (work: Work): string => {
    const found = known.get(work)
    if (found !== undefined) return found
    const strips =
      work.kind === 'run' ? work.strips.map((strip) => `${strip.size}(${describe(strip.work)})`) : []
    const text =
      work.kind === 'run'
        ? `${work.across}${strips.sort().join('')}`
        : work.kind === 'trim'
          ? `t${work.across}${work.off}${describe(work.next)}`
          : ''
    known.set(work, text)
    return text
  }
  return describe
}

/** Two multiplicative hashes (Knuth) side by side, 44 bits: sums of some hundred stay exact. */
const markOf = (id: number): number =>
  (Math.imul(id + 1, 0x9e3779b1) >>> 10) * 2 ** 22 + (Math.imul(id + 7, 0x85ebca6b) >>> 10)

/** A planner for one saw; everything it works out is kept. */
export function createPlanner(saw: Saw): Planner {
  const describe = createDescriber()
  const nodes = new Map<string, PlanNode>()
  const blanks: Blank[] = []
  const cuts: Map<string, readonly PlanNode[]>[] = []

  const createNode = (blank: Blank): PlanNode => {
    const moves = movesOf(saw, blank)
    const below = blanksWithin(blank).flatMap((one) => nodeOf(one) ?? [])
    const deep = new Set<string>()
    for (const node of below) for (const need of node.needs) deep.add(need)
    const needs = new Set([...moves.map((move) => move.key), ...wideKeys(saw, blank), ...deep])
    const area = blank.length * Math.max(1, blank.width)
    const ready = new Map(moves.map((move) => [move.key, move.mayBeLast]))
    blanks.push(blank)
    cuts.push(new Map())
    const id = blanks.length - 1
    return { id, mark: markOf(id), area, ready, needs, deep }
  }

  const nodeOf = (blank: Blank): PlanNode | undefined => {
    if (!isReady(blank)) return undefined
    const key = `${blank.of} ${blank.length} ${blank.width} ${describe(blank.work)}`
    const found = nodes.get(key)
    if (found !== undefined) return found
    const node = createNode(blank)
    nodes.set(key, node)
    return node
  }

  const cutAt = (node: PlanNode, setting: string): readonly PlanNode[] => {
    if (!node.needs.has(setting)) return [node]
    const found = cuts[node.id]!.get(setting)
    if (found !== undefined) return found
    const blank = blanks[node.id]!
    const move = movesOf(saw, blank).find((one) => one.key === setting)
    const left =
      move === undefined
        ? [node]
        : cutBlank(saw, blank, move)
            .flatMap((result) => nodeOf(result) ?? [])
            .flatMap((result) => cutAt(result, setting))
    cuts[node.id]!.set(setting, left)
    return left
  }

  return { nodeOf, cutAt }
}
