import type { LengthLayout, LengthProblem } from '../problem.ts'
import type { Pattern } from './pattern.ts'
import type { Task } from './task.ts'

interface Waiting {
  readonly id: string
  readonly length: number
  left: number
}

/** Hands out the parts of each size, one after another. */
function handOut(task: Task): (type: number) => Waiting {
  const queues = task.sources.map((parts) =>
    parts.map((part) => ({ id: part.id, length: part.length, left: part.count })),
  )
  return (type) => {
    const queue = queues[type]!
    while (queue.length > 1 && queue[0]!.left === 0) queue.shift()
    queue[0]!.left--
    return queue[0]!
  }
}

function layOut(problem: LengthProblem, stock: string, length: number, parts: Waiting[]): LengthLayout {
  const used = parts.reduce((sum, part) => sum + part.length + problem.kerf, 0)
  const offcut = Math.max(0, length - problem.trim - used)
  return { stock, count: 1, parts: parts.map((part) => part.id), offcut }
}

/** Boards cut just so are counted as one layout. */
function gather(layouts: readonly LengthLayout[]): LengthLayout[] {
  const gathered = new Map<string, LengthLayout>()
  for (const layout of layouts) {
    const key = JSON.stringify([layout.stock, layout.parts])
    const same = gathered.get(key)
    gathered.set(key, { ...layout, count: layout.count + (same?.count ?? 0) })
  }
  return [...gathered.values()]
}

/** Boards with the ids of their parts, longest first; the boards must make just what the task asks for. */
export function layoutsOf(problem: LengthProblem, task: Task, boards: readonly Pattern[]): LengthLayout[] {
  const next = handOut(task)
  const lengths = new Map(problem.stock.map((stock) => [stock.id, stock.length]))
  const layouts = boards.map(({ bar, types, counts }) => {
    const stock = task.bars[bar]!.id
    const parts = types.flatMap((type, place) => Array.from({ length: counts[place]! }, () => next(type)))
    return layOut(problem, stock, lengths.get(stock) ?? 0, parts)
  })
  return gather(layouts)
}
