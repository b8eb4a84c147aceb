import type { ShouldStop } from '../problem.ts'
import type { Planner, PlanNode } from './node.ts'

/** What lies on the bench, kind by kind: how many there are of a kind makes no difference to the settings. */
interface State {
  readonly nodes: ReadonlySet<PlanNode>
  /** Settings still needed, each with the nodes that need it, now or later. */
  readonly needs: ReadonlyMap<string, readonly PlanNode[]>
  /** How often settings are needed, each counted once for each kind. */
  readonly scattered: number
  /** The same for the same kinds: the sum of their marks. */
  readonly key: number
  readonly path: Path | undefined
}

interface Path {
  readonly setting: string
  readonly before: Path | undefined
}

function createState(list: readonly PlanNode[], path: Path | undefined): State {
  const nodes = new Set(list)
  const needs = new Map<string, PlanNode[]>()
  let [scattered, key] = [0, 0]
  for (const node of nodes) {
    scattered += node.needs.size
    key += node.mark
    for (const need of node.needs) {
      const group = needs.get(need)
      if (group === undefined) needs.set(need, [node])
      else group.push(node)
    }
  }
  return { nodes, needs, scattered, key, path }
}

const largest = (nodes: readonly PlanNode[]): number => Math.max(...nodes.map((node) => node.area))

/** One setting that can be used now. */
interface Candidate {
  readonly setting: string
  readonly area: number
  /** No piece, lying here or still in a larger one, will need it again. */
  readonly isLast: boolean
  /** Every strip it would cut may come free by itself. */
  readonly canBeSpared: boolean
  /** Share of the kinds that need it and are not ready for it. */
  readonly locked: number
}

function findCandidates(planner: Planner, state: State): Candidate[] {
  return [...state.needs].flatMap(([setting, nodes]) => {
    const ready = nodes.filter((node) => node.ready.has(setting))
    if (ready.length === 0) return []
    const after = nodes.flatMap((node) => planner.cutAt(node, setting))
    return {
      setting,
      area: largest(ready),
      isLast: after.every((node) => !node.needs.has(setting)),
      canBeSpared: ready.every((node) => node.ready.get(setting) === true),
      locked: 1 - ready.length / nodes.length,
    }
  })
}

/** The settings worth trying: one that is used up at once costs nothing now, so no other need be tried beside it. */
function choose(candidates: readonly Candidate[], most: number): Candidate[] {
  const bySize = candidates.toSorted((a, b) => b.area - a.area)
  const sure = bySize.find(({ isLast, canBeSpared }) => isLast && !canBeSpared)
  if (sure !== undefined) return [sure]
  const spared = bySize.filter(({ isLast }) => isLast)
  const others = bySize.filter(({ isLast }) => !isLast).sort((a, b) => a.locked - b.locked)
  return [...others.slice(0, most), ...spared.slice(0, most)]
}

/** A state one setting further on, judged before it is built. */
interface Step {
  readonly from: State
  readonly setting: string
  readonly leaving: ReadonlySet<PlanNode>
  readonly arriving: ReadonlySet<PlanNode>
  /** The settings still needed, then how scattered over kinds of pieces they are: lower is nearer to the end. */
  readonly score: number
  readonly key: number
}

/** How many more kinds need each setting after the step than before. */
function countChanges(leaving: ReadonlySet<PlanNode>, arriving: ReadonlySet<PlanNode>): Map<string, number> {
  const changes = new Map<string, number>()
  const add = (nodes: ReadonlySet<PlanNode>, by: number): void => {
    for (const node of nodes) for (const need of node.needs) changes.set(need, (changes.get(need) ?? 0) + by)
  }
  add(leaving, -1)
  add(arriving, 1)
  return changes
}

function stepFrom(planner: Planner, from: State, setting: string): Step {
  const leaving = new Set(from.needs.get(setting)?.filter((node) => node.ready.has(setting)))
  const left = [...leaving].flatMap((node) => planner.cutAt(node, setting))
  const arriving = new Set(left.filter((node) => !from.nodes.has(node)))
  let [needs, scattered] = [from.needs.size, from.scattered]
  for (const [need, change] of countChanges(leaving, arriving)) {
    const before = from.needs.get(need)?.length ?? 0
    needs += Number(before + change > 0) - Number(before > 0)
    scattered += change
  }
  const sum = (nodes: ReadonlySet<PlanNode>): number =>
    [...nodes].reduce((total, node) => total + node.mark, 0)
  const key = from.key - sum(leaving) + sum(arriving)
  return { from, setting, leaving, arriving, score: needs + scattered / (1 + 2 * scattered), key }
}

const follow = ({ from, setting, leaving, arriving }: Step): State =>
  createState([...[...from.nodes].filter((node) => !leaving.has(node)), ...arriving], {
    setting,
    before: from.path,
  })

function readPath(path: Path | undefined): string[] {
  const settings: string[] = []
  for (let step = path; step !== undefined; step = step.before) settings.push(step.setting)
  return settings.reverse()
}

/**
 * The settings to use one after another so that everything is cut, as few as a beam search finds: it carries `width`
 * half-cut benches along side by side and tries `most` settings on each. Undefined where it was stopped before the end.
 */
export function planSettings(
  planner: Planner,
  start: readonly PlanNode[],
  { width, most }: { readonly width: number; readonly most: number },
  shouldStop: ShouldStop,
): string[] | undefined {
  let level = [createState(start, undefined)]
  while (level.every((state) => state.nodes.size > 0)) {
    if (shouldStop()) return undefined
    const steps = new Map<number, Step>()
    for (const state of level)
      for (const { setting } of choose(findCandidates(planner, state), most)) {
        const step = stepFrom(planner, state, setting)
        if (!steps.has(step.key)) steps.set(step.key, step)
      }
    const best = [...steps.values()].sort((a, b) => a.score - b.score).slice(0, width)
    level = best.map(follow)
  }
  return readPath(level.find((state) => state.nodes.size === 0)?.path)
}
