import type { Length } from '../core/measure/length.ts'
import type { Cutout } from '../core/plan/part.ts'
import type { Plan } from '../core/plan.ts'
import { linesOf, placesWords, stepsOf } from './flatLines.ts'
import { fineMark, type Numbers } from './numbers.ts'
import type { Solid } from './solids.ts'

/** Something square on a panel that lies, from its lower left corner as it is seen; nanometres. */
export interface Patch {
  readonly x: readonly [from: number, to: number]
  readonly y: readonly [from: number, to: number]
  readonly of: string
  /** Under the panel, which hides it. */
  readonly isBelow: boolean
}

/** Everything that is cut out of a panel. */
export const cutoutsOf = ({ part }: Solid): readonly Cutout[] => part.cutouts ?? []

/** A size along one side of a panel, in nanometres. */
export type Size = readonly [from: number, to: number, text: string]

/** Sizes along a panel and across it. */
export interface Sizes {
  readonly along: readonly Size[]
  readonly across: readonly Size[]
}

/** Of holes how far the first is from end and edge and how far apart they are; of a notch where it begins and its own size. */
export function cutoutSizes(panel: Solid, numbers: Numbers): Sizes {
  const [cutout] = cutoutsOf(panel)
  const [first] = cutout?.at ?? []
  if (!cutout || !first) return { along: [], across: [] }
  const between = (from: number, to: number): Size => [from, to, numbers.mark((to - from) as Length)]
  if (cutout.round) {
    const { along, across } = linesOf(cutout)
    const chain = (places: readonly Length[]): readonly Size[] => [
      between(0, places[0] ?? 0),
      ...stepsOf(places).map(([from, to]) => between(from, to)),
    ]
    return { along: chain(along), across: chain(across) }
  }
  const cover = (long: Length): string => numbers.mark(long, 'cover', true)
  return {
    along: [
      between(0, first.along),
      [first.along, first.along + cutout.size.along, cover(cutout.size.along)],
    ],
    across: [[0, cutout.size.across, cover(cutout.size.across)]],
  }
}

/** Where strips begin and how wide they are; of those on the walls how far the panel lies on them. */
export function stripSizes({ spec }: Plan, patches: readonly Patch[], numbers: Numbers): Sizes {
  const mark = (value: number): string => numbers.mark(value as Length)
  const stock = { strip: numbers.stock(spec.strip), width: numbers.stock(spec.width) }
  const [handle] = patches.filter(({ of }) => of === 'handle')
  const [foot, nextFoot] = patches.filter(({ of }) => of === 'foot')
  const [rim] = patches.filter(({ of }) => of === 'lid rim end')
  const [held] = patches.filter(({ of }) => of === 'end ledger' || of === 'end cleat')
  const along: readonly (Size | undefined)[] = [
    handle && [0, handle.x[0], mark(handle.x[0])],
    handle && [...handle.x, numbers.mark((handle.x[1] - handle.x[0]) as Length, 'into')],
    foot && [...foot.x, stock.width],
    nextFoot && [0, nextFoot.x[0], mark(nextFoot.x[0])],
    rim && [...rim.x, stock.strip],
    held && [...held.x, fineMark(numbers, held.x[1] as Length)],
  ]
  return {
    along: along.filter((size) => size !== undefined),
    across: handle
      ? [
          [0, handle.y[0], mark(handle.y[0])],
          [...handle.y, stock.strip],
        ]
      : [],
  }
}

/** What no dimension line shows: every place of holes and feet, and how far a rim hangs down. */
export function extraWords(plan: Plan, panel: Solid, numbers: Numbers): readonly string[] {
  const mark = (length: Length): string => numbers.mark(length)
  const [cutout] = cutoutsOf(panel)
  const isBottom = panel.part.name === 'bottom panel'
  const feet = isBottom ? (plan.bottom?.feet?.starts ?? []) : []
  return [
    ...(cutout?.round ? [holeWords(cutout, numbers)] : []),
    ...(feet.length > 2 ? [`feet from the left end: ${placesWords(feet, mark)}`] : []),
    ...(panel.part.name === 'cover panel' ? [`rim ${numbers.stock(plan.spec.width)} deep`] : []),
  ]
}

function holeWords(cutout: Cutout, numbers: Numbers): string {
  const { along, across } = linesOf(cutout)
  const places = (lines: readonly Length[]): string => placesWords(lines, (length) => numbers.mark(length))
  const count = cutout.at.length
  return `${count} ${count === 1 ? 'hole' : 'holes'} ${numbers.mark(cutout.size.along, 'cover', true)} across; middles from the left end: ${places(along)}; from the front edge: ${places(across)}`
}
