import fc from 'fast-check'
import type {
  CutTree,
  Placement,
  Rectangle,
  SheetLayout,
  SheetPart,
  SheetProblem,
} from '../../../src/core/cutting/problem.ts'

/** Whole numbers from a list of draws, used up one by one; 0 when the list is at its end. */
const drawer = (draws: readonly number[]) => {
  let next = 0
  return (below: number): number => (draws[next++] ?? 0) % below
}

interface Growing {
  readonly parts: SheetPart[]
  readonly placements: Placement[]
  readonly offcuts: Rectangle[]
}

/** Ends a region: a part that fills it, or a rest. */
function endRegion(
  region: Rectangle,
  keepable: number,
  draw: (below: number) => number,
  out: Growing,
): CutTree {
  const isEmpty = region.length < 1 || region.width < 1
  if (isEmpty || (draw(5) === 0 && out.parts.length > 0)) {
    if (Math.min(region.length, region.width) >= Math.max(1, keepable)) out.offcuts.push(region)
    return { kind: 'rest' }
  }
  const turned = draw(2) === 1
  const id = `P${out.parts.length + 1}`
  const length = turned ? region.width : region.length
  const width = turned ? region.length : region.width
  out.parts.push({ id, length, width, count: 1, turnable: turned })
  out.placements.push({ ...region, part: id, turned })
  return { kind: 'part', part: id, turned }
}

function cutUp(
  region: Rectangle,
  depth: number,
  problem: { kerf: number; keepable: number },
  draw: (below: number) => number,
  out: Growing,
): CutTree {
  const across = draw(2) === 0 ? 'x' : 'y'
  const span = across === 'x' ? region.length : region.width
  if (depth === 0 || span < 2) return endRegion(region, problem.keepable, draw, out)
  const at = 1 + draw(span - 1)
  const left = Math.max(0, span - at - problem.kerf)
  const past = at + problem.kerf
  const first = across === 'x' ? { ...region, length: at } : { ...region, width: at }
  const second =
    across === 'x'
      ? { ...region, x: region.x + past, length: left }
      : { ...region, y: region.y + past, width: left }
  return {
    kind: 'cut',
    across,
    at,
    first: cutUp(first, depth - 1, problem, draw, out),
    second: left < 1 ? { kind: 'rest' } : cutUp(second, depth - 1, problem, draw, out),
  }
}

/** A sheet cut at random by straight cuts: sound by the way it is made. One part at least. */
export function growSheet(
  size: { length: number; width: number; kerf: number; trim: number; keepable: number; depth: number },
  draws: readonly number[],
): { problem: SheetProblem; layout: SheetLayout } {
  const { length, width, kerf, trim, keepable, depth } = size
  const out: Growing = { parts: [], placements: [], offcuts: [] }
  const whole = { x: trim, y: trim, length: length - 2 * trim, width: width - 2 * trim }
  const cuts = cutUp(whole, depth, { kerf, keepable }, drawer(draws), out)
  const stock = [{ id: 'sheet', length, width, price: 100 }]
  return {
    problem: { parts: out.parts, stock, kerf, trim, keepable },
    layout: { stock: 'sheet', count: 1, placements: out.placements, offcuts: out.offcuts, cuts },
  }
}

/** Small random sheets, whole numbers of pixels. */
export const randomSheet = fc
  .tuple(
    fc.record({
      length: fc.integer({ min: 6, max: 24 }),
      width: fc.integer({ min: 6, max: 24 }),
      kerf: fc.integer({ min: 0, max: 2 }),
      trim: fc.integer({ min: 0, max: 1 }),
      keepable: fc.integer({ min: 1, max: 6 }),
      depth: fc.integer({ min: 1, max: 4 }),
    }),
    fc.array(fc.nat({ max: 1000 }), { minLength: 60, maxLength: 60 }),
  )
  .map(([size, draws]) => growSheet(size, draws))
  .filter(({ problem }) => problem.parts.length > 0)
