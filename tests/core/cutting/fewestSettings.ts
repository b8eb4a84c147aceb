import type { CutTree, SheetLayout } from '../../../src/core/cutting/problem.ts'

/** A piece as text: a leaf, or its strips with what they come to, so that equal states are equal texts. */
interface Run {
  readonly axis: 'x' | 'y'
  /** What is left of the span beside the strips still in it; exactly minus one kerf when they fill it. */
  readonly spare: number
  readonly strips: readonly { readonly size: number; readonly of: Run | undefined }[]
}

function readRun(tree: CutTree, length: number, width: number, kerf: number): Run | undefined {
  if (tree.kind !== 'cut') return undefined
  const axis = tree.across
  const strips: { size: number; of: Run | undefined }[] = []
  const visit = (node: CutTree, span: number): void => {
    if (span <= 0 || node.kind === 'rest') return
    if (node.kind === 'cut' && node.across === axis) {
      visit(node.first, node.at)
      visit(node.second, span - node.at - kerf)
      return
    }
    const of = axis === 'x' ? readRun(node, span, width, kerf) : readRun(node, length, span, kerf)
    if (node.kind === 'part' || of !== undefined) strips.push({ size: span, of })
  }
  const whole = axis === 'x' ? length : width
  visit(tree, whole)
  if (strips.length === 0) return undefined
  return { axis, spare: strips.reduce((left, strip) => left - strip.size - kerf, whole), strips }
}

/** Strips off everything that one setting serves. */
function cutAll(runs: readonly Run[], axis: 'x' | 'y', size: number, kerf: number): Run[] {
  return runs.flatMap((run): Run[] => {
    if (run.axis !== axis) return [run]
    let strips = [...run.strips]
    const freed: Run[] = []
    for (;;) {
      const isWhole = strips.length === 1 && run.spare === -kerf
      const index = isWhole ? 0 : strips.findIndex((strip) => strip.size === size)
      if (index < 0 || strips.length === 0) break
      const [strip] = strips.splice(index, 1)
      if (strip?.of !== undefined) freed.push(strip.of)
      strips = [...strips]
    }
    const rest = strips.length > 0 ? [{ ...run, strips }] : []
    return [...rest, ...cutAll(freed, axis, size, kerf)]
  })
}

const keyOf = (runs: readonly Run[]): string =>
  runs
    .map((run) => JSON.stringify(run))
    .sort()
    .join('|')

/** The least number of settings, every order tried, breadth first; undefined when `limit` states do not suffice. */
export function fewestSettings(
  layouts: readonly SheetLayout[],
  size: { length: number; width: number; kerf: number },
  limit: number,
): number | undefined {
  const start = layouts.flatMap(({ cuts }) => readRun(cuts, size.length, size.width, size.kerf) ?? [])
  // A strip as wide as the sheet needs no cut: such a run is settled before the first step.
  let level = [cutAll(start, 'x', Number.NaN, size.kerf)].map((runs) =>
    cutAll(runs, 'y', Number.NaN, size.kerf),
  )
  const seen = new Set(level.map(keyOf))
  for (let steps = 0; ; steps += 1) {
    if (level.some((runs) => runs.length === 0)) return steps
    const next: Run[][] = []
    for (const runs of level) {
      const settings = new Set(runs.flatMap((run) => run.strips.map((strip) => `${run.axis} ${strip.size}`)))
      for (const setting of settings) {
        const [axis, wide] = setting.split(' ') as ['x' | 'y', string]
        const after = cutAll(runs, axis, Number(wide), size.kerf)
        const key = keyOf(after)
        if (!seen.has(key)) {
          seen.add(key)
          next.push(after)
        }
      }
    }
    if (seen.size > limit) return undefined
    level = next
  }
}
