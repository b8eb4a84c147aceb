import type { Planner, PlanNode } from './node.ts'

/** What lies on the bench, kind by kind: how many there are of a kind makes no difference to the settings. */
interface State {
  readonly nodes: readonly PlanNode[]
  /** Settings still needed, each with the nodes that need it, now or later. */
  readonly needs: ReadonlyMap<string, readonly PlanNode[]>
  readonly path: Path | undefined
}

interface Path {
  readonly setting: string
  readonly before: Path | undefined
}

function createState(nodes: readonly PlanNode[], path: Path | undefined): State {
  const needs = new Map<string, PlanNode[]>()
  for (const node of nodes)
    for (const need of node.needs) {
      const group = needs.get(need)
      if (group === undefined) needs.set(need, [node])
      else group.push(node)
    }
  return { nodes, needs, path }
}

/** The least number of settings to come, and how scattered they are: lower is nearer to the end. */
const judge = ({ needs }: State): number => {
  let scattered = 0
  for (const nodes of needs.values()) scattered += nodes.length
  return needs.size + scattered / (1 + scattered * 2)
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

function follow(planner: Planner, state: State, setting: string): State {
  const needing = new Set(state.needs.get(setting))
  const after = [...needing].flatMap((node) => planner.cutAt(node, setting))
  const nodes = new Set([...state.nodes.filter((node) => !needing.has(node)), ...after])
  return createState([...nodes], { setting, before: state.path })
}

const keyOf = ({ nodes }: State): string =>
  nodes
    .map((node) => node.id)
    .sort((a, b) => a - b)
    .join(' ')

function readPath(path: Path | undefined): string[] {
  const settings: string[] = []
  for (let step = path; step !== undefined; step = step.before) settings.push(step.setting)
  return settings.reverse()
}

/**
 * The settings to use one after another so that everything is cut, as few as a beam search finds: it carries `width`
 * half-cut benches along side by side and tries `most` settings on each.
 */
export function planSettings(
  planner: Planner,
  start: readonly PlanNode[],
  { width, most }: { readonly width: number; readonly most: number },
): string[] {
  let level = [createState([...new Set(start)], undefined)]
  while (level.every((state) => state.nodes.length > 0)) {
    const next = new Map<string, State>()
    for (const state of level)
      for (const { setting } of choose(findCandidates(planner, state), most)) {
        const after = follow(planner, state, setting)
        const key = keyOf(after)
        if (!next.has(key)) next.set(key, after)
      }
    level = [...next.values()]
      .map((state) => ({ state, score: judge(state) }))
      .sort((a, b) => a.score - b.score)
      .slice(0, width)
      .map(({ state }) => state)
  }
  return readPath(level.find((state) => state.nodes.length === 0)?.path)
}
