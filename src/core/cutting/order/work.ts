import type { CutTree } from '../problem.ts'

/** One of the strips that a piece is cut into: its size along the cuts' axis, and what becomes of it. */
export interface Strip {
  readonly size: number
  readonly work: Work
}

/** What is still to be done to a piece. The strips of a run can be cut in any order: they are side by side. */
export type Work =
  | { readonly kind: 'part'; readonly part: string }
  | { readonly kind: 'rest' }
  | { readonly kind: 'run'; readonly across: 'x' | 'y'; readonly strips: readonly Strip[] }
  | { readonly kind: 'trim'; readonly across: 'x' | 'y'; readonly off: number; readonly next: Work }

interface Stretch {
  readonly size: number
  readonly tree: CutTree
}

/** Cuts side by side are one run, however the tree nests them. */
function flatten(tree: CutTree, across: 'x' | 'y', span: number, kerf: number): Stretch[] {
  const stretches: Stretch[] = []
  const waiting: Stretch[] = [{ size: span, tree }]
  while (waiting.length > 0) {
    const stretch = waiting.pop()!
    const { size, tree: node } = stretch
    if (node.kind !== 'cut' || node.across !== across) {
      stretches.push(stretch)
      continue
    }
    const left = size - node.at - kerf
    if (left > 0) waiting.push({ size: left, tree: node.second })
    waiting.push({ size: node.at, tree: node.first })
  }
  return stretches
}

/** What a cut tree asks of a piece of the given size. */
export function readWork(tree: CutTree, length: number, width: number, kerf: number): Work {
  if (tree.kind === 'part') return { kind: 'part', part: tree.part }
  if (tree.kind === 'rest') return { kind: 'rest' }
  const { across } = tree
  const span = across === 'x' ? length : width
  const strips = flatten(tree, across, span, kerf)
    .map(({ size, tree: node }) => ({
      size,
      work: across === 'x' ? readWork(node, size, width, kerf) : readWork(node, length, size, kerf),
    }))
    .filter(({ work }) => work.kind !== 'rest')
  return strips.length === 0 ? { kind: 'rest' } : { kind: 'run', across, strips }
}

/** The four trims of a raw sheet, two across each axis, before its own work. */
export const trimFirst = (work: Work, trim: number): Work =>
  trim === 0
    ? work
    : (['x', 'x', 'y', 'y'] as const).reduce<Work>(
        (next, across) => ({ kind: 'trim', across, off: trim, next }),
        work,
      )

/** A board is one run of its parts, after the trim of its first end. */
export function readBoard(parts: readonly Strip[], trim: number): Work {
  const run: Work = { kind: 'run', across: 'x', strips: parts }
  return trim === 0 ? run : { kind: 'trim', across: 'x', off: trim, next: run }
}
