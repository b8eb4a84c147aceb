import type { SheetLayout } from '../problem.ts'
import type { Block } from './block.ts'
import type { Job, PartSource } from './job.ts'
import { readLayout } from './layout.ts'
import type { OpenSheet } from './packing.ts'

const shapeOf = (block: Block): string =>
  block.part >= 0
    ? `${block.part}${block.turned ? 't' : ''}`
    : `${block.along}:${block.along === 0 ? block.length : block.width}(${block.children.map(shapeOf).sort().join()})`

const countParts = (block: Block, counts: Map<number, number>): Map<number, number> => {
  if (block.part >= 0) counts.set(block.part, (counts.get(block.part) ?? 0) + 1)
  for (const child of block.children) countParts(child, counts)
  return counts
}

/** How many of each source of each type still want a name on a layout. */
type Stocklist = { source: PartSource; left: number }[][]

/** Sources for one sheet that each have `times` parts for every place; undefined when there are none. */
const draw = (
  list: Stocklist,
  counts: Map<number, number>,
  times: number,
): Map<number, PartSource[]> | undefined => {
  const drawn = new Map<number, PartSource[]>()
  for (const [part, count] of counts) {
    const names: PartSource[] = []
    for (const entry of list[part] ?? []) {
      const takes = Math.min(count - names.length, Math.floor(entry.left / times))
      for (let turn = 0; turn < takes; turn++) names.push(entry.source)
    }
    if (names.length < count) return undefined
    drawn.set(part, names)
  }
  return drawn
}

const takeOff = (list: Stocklist, drawn: Map<number, PartSource[]>, times: number): void => {
  for (const [part, names] of drawn)
    for (const name of names) {
      const entry = list[part]?.find((candidate) => candidate.source === name)
      if (entry) entry.left -= times
    }
}

const nameGroup = (job: Job, sheet: OpenSheet, size: number, list: Stocklist): SheetLayout[] => {
  const counts = countParts(sheet.root, new Map())
  const layouts: SheetLayout[] = []
  let rest = size
  let times = size
  while (rest > 0) {
    times = Math.min(times, rest)
    const drawn = draw(list, counts, times)
    if (drawn === undefined) {
      times = Math.ceil(times / 2)
      continue
    }
    takeOff(list, drawn, times)
    layouts.push(readLayout(job, sheet, (part) => drawn.get(part)?.pop() as PartSource, times))
    rest -= times
  }
  return layouts
}

/** Open sheets as layouts: sheets cut alike become one layout with a count, and every part gets its own name. */
export const readLayouts = (job: Job, sheets: readonly OpenSheet[]): SheetLayout[] => {
  const groups = new Map<string, OpenSheet[]>()
  for (const sheet of sheets) {
    if (sheet.root.children.length === 0) continue
    const key = `${sheet.type} ${shapeOf(sheet.root)}`
    groups.set(key, [...(groups.get(key) ?? []), sheet])
  }
  const list = job.parts.map((part) => part.sources.map((source) => ({ source, left: source.count })))
  return [...groups.values()]
    .sort((a, b) => b.length - a.length)
    .flatMap((group) => nameGroup(job, group[0] as OpenSheet, group.length, list))
}
