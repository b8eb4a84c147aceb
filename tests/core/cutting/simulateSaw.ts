import type { CutOrder, Piece, SawCut, SawStep } from '../../../src/core/cutting/order/cutOrder.ts'

/** What lies on the bench, and which of its sides have been sawn. */
interface OnBench {
  readonly piece: Piece
  readonly sawn: { readonly x: boolean; readonly y: boolean }
}

/** What is wrong with an order, and what it ends with. */
export interface Sawn {
  readonly wrong: readonly string[]
  readonly parts: readonly Piece[]
  readonly offcuts: readonly Piece[]
  readonly stock: readonly Piece[]
}

const size = (piece: Piece, axis: 'x' | 'y'): number => (axis === 'x' ? piece.length : piece.width)

function axisOf(step: SawStep, cut: SawCut): 'x' | 'y' {
  if (step.kind === 'rip') return 'y'
  if (step.kind === 'crosscut') return 'x'
  return cut.out[0]!.length !== cut.piece.length ? 'x' : 'y'
}

/** Checks one cut against plain geometry. */
function checkCut(
  step: SawStep,
  cut: SawCut,
  before: OnBench | undefined,
  saw: { kerf: number; safe: number },
): string[] {
  const axis = axisOf(step, cut)
  const other = axis === 'x' ? 'y' : 'x'
  const [fence, free] = cut.out
  const span = size(cut.piece, axis)
  const atFence = step.kind === 'trim' && step.of === 'board' ? span - step.setting : step.setting
  const left = span - atFence - saw.kerf
  const isNarrow = step.of === 'sheet' && step.kind === 'rip' && atFence < saw.safe
  const checks: [boolean, string][] = [
    [
      before !== undefined && JSON.stringify(before.piece) === JSON.stringify(cut.piece),
      'the piece is not there',
    ],
    [cut.piece.becomes === 'piece', `a ${cut.piece.becomes} is cut`],
    [fence !== undefined && size(fence, axis) === atFence, 'the setting is not the width at the fence'],
    [atFence > 0 && atFence < span, 'the setting misses the piece'],
    [
      left > 0 ? free !== undefined && size(free, axis) === left : free === undefined,
      'the free side is wrong',
    ],
    [
      cut.out.every((piece) => size(piece, other) === size(cut.piece, other)),
      'a side changes that is not cut',
    ],
    [cut.out.length <= 2, 'more than two pieces come of one cut'],
    [!isNarrow || cut.narrow === 'both sides', 'a narrow piece runs at the fence'],
    [
      cut.narrow !== 'both sides' || left < saw.safe,
      'called narrow on both sides, but the free side is wide',
    ],
    [cut.reference === 'factory' || before?.sawn[axis] === true, 'the edge at the fence was never sawn'],
    [
      JSON.stringify(cut.parts) === JSON.stringify(cut.out.flatMap((piece) => piece.part ?? [])),
      'the parts made are not those that come free',
    ],
  ]
  return checks.filter(([ok]) => !ok).map(([, claim]) => `${step.kind} ${step.setting}: ${claim}`)
}

/** Saws an order through with rectangles alone, never looking at a layout. */
export function simulateSaw(order: CutOrder, saw: { kerf: number; safe: number }): Sawn {
  const made = new Set(
    order.steps.flatMap((step) => step.cuts.flatMap((cut) => cut.out.map((piece) => piece.id))),
  )
  const cutUp = order.steps.flatMap((step) => step.cuts.map((cut) => cut.piece))
  const stock = [...order.uncut, ...cutUp.filter((piece) => !made.has(piece.id))]
  const bench = new Map<number, OnBench>()
  for (const piece of stock) bench.set(piece.id, { piece, sawn: { x: false, y: false } })
  const wrong: string[] = []
  for (const step of order.steps) {
    for (const cut of step.cuts) {
      const before = bench.get(cut.piece.id)
      wrong.push(...checkCut(step, cut, before, saw))
      bench.delete(cut.piece.id)
      const sawn = { x: false, y: false, ...before?.sawn, [axisOf(step, cut)]: true }
      for (const piece of cut.out) {
        if (bench.has(piece.id)) wrong.push(`two pieces are called ${piece.id}`)
        bench.set(piece.id, { piece, sawn })
      }
    }
    const waiting = [...bench.values()]
      .filter(({ piece }) => piece.becomes === 'piece')
      .map(({ piece }) => piece)
    const sameKind = waiting.filter((piece) => (step.of === 'board') === (piece.width === 0))
    const told = step.remaining.reduce((sum, group) => sum + group.count, 0)
    if (told !== sameKind.length) wrong.push(`${told} pieces are said to remain, ${sameKind.length} do`)
  }
  const end = [...bench.values()].map(({ piece }) => piece)
  wrong.push(...end.filter(({ becomes }) => becomes === 'piece').map(({ id }) => `piece ${id} is never cut`))
  const pick = (becomes: string): Piece[] => end.filter((piece) => piece.becomes === becomes)
  return { wrong, parts: pick('part'), offcuts: pick('offcut'), stock }
}
