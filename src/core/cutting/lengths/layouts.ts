import type { LengthLayout, LengthProblem } from '../problem.ts'
import type { Cut } from './pattern.ts'
import type { Task } from './task.ts'

/** Hands out the ids of the parts of each size, one after another. */
function nameParts(task: Task): (type: number, count: number) => string[] {
  const queues = task.sources.map((parts) => parts.map((part) => ({ id: part.id, left: part.count })))
  return (type, count) => {
    const names: string[] = []
    const queue = queues[type]!
    while (names.length < count && queue.length > 0) {
      const head = queue[0]!
      const taken = Math.min(head.left, count - names.length)
      for (let turn = 0; turn < taken; turn++) names.push(head.id)
      head.left -= taken
      if (head.left === 0) queue.shift()
    }
    return names
  }
}

function layOut(problem: LengthProblem, stock: string, parts: readonly string[]): LengthLayout {
  const lengths = new Map(problem.parts.map((part) => [part.id, part.length]))
  const board = problem.stock.find((piece) => piece.id === stock)
  const used = parts.reduce((sum, id) => sum + (lengths.get(id) ?? 0) + problem.kerf, 0)
  const offcut = Math.max(0, (board?.length ?? 0) - problem.trim - used)
  return { stock, count: 1, parts, offcut }
}

const keyOf = (layout: LengthLayout): string => JSON.stringify([layout.stock, layout.parts])

/** Boards cut just so are counted as one layout. */
function gather(layouts: readonly LengthLayout[]): LengthLayout[] {
  const gathered = new Map<string, LengthLayout>()
  for (const layout of layouts) {
    const same = gathered.get(keyOf(layout))
    gathered.set(keyOf(layout), { ...layout, count: layout.count + (same?.count ?? 0) })
  }
  return [...gathered.values()]
}

/** The boards of a plan that makes exactly what is asked for, each with the ids of its parts, longest first. */
export function layoutsOf(problem: LengthProblem, task: Task, cuts: readonly Cut[]): LengthLayout[] {
  const name = nameParts(task)
  const boards: LengthLayout[] = []
  for (const { pattern, times } of cuts) {
    for (let turn = 0; turn < times; turn++) {
      const parts = pattern.types.flatMap((type, place) => name(type, pattern.counts[place]!))
      boards.push(layOut(problem, task.bars[pattern.bar]!.id, parts))
    }
  }
  return gather(boards)
}
