import type { LengthLayout, SheetLayout } from '../core/cutting/problem.ts'
import {
  isSheets,
  type LaidGroup,
  type LaidJob,
  type LaidLengths,
  stripsPerBoard,
  takenOf,
} from './laidJob.ts'

/** Groups that could draw on the same board or sheet: each is laid out by itself, so that one more could serve two. */
export function sharing({ groups }: Pick<LaidJob, 'groups'>): readonly LaidGroup[] {
  const keys = groups.map(
    ({ group }) =>
      new Set(group.stock.map(({ label, thickness, width }) => `${label}\n${thickness}\n${width}`)),
  )
  return groups.filter((_, index) =>
    keys.some((other, at) => at !== index && [...(keys[index] ?? [])].some((key) => other.has(key))),
  )
}

/** Proven of all groups together: none laid out by itself shares its stock with another. */
export const isOptimal = (job: Pick<LaidJob, 'groups'>): boolean =>
  job.groups.every(({ optimal }) => optimal) && (sharing(job).length === 0 || boundOf(job) >= paidFor(job))

/** True where every price is known, so that value and bound are cents. */
export const isPriced = ({ groups }: Pick<LaidJob, 'groups'>): boolean =>
  groups.every(({ group }) => group.priced)

const paidFor = ({ groups }: Pick<LaidJob, 'groups'>): number =>
  groups.reduce((sum, { value }) => sum + value, 0)

/** Of groups that share stock only the largest bound counts: the others may ride along for nothing. */
function boundOf(job: Pick<LaidJob, 'groups'>, of = (laid: LaidGroup) => laid.lowerBound): number {
  const shared = sharing(job)
  const alone = job.groups.filter((laid) => !shared.includes(laid)).reduce((sum, laid) => sum + of(laid), 0)
  return alone + Math.max(0, ...shared.map(of))
}

/** What is paid in cents and the least that could be, proven; undefined where a price is not known. */
export const costOf = (job: Pick<LaidJob, 'groups'>): { cost: number; least: number } | undefined =>
  isPriced(job) ? { cost: paidFor(job), least: boundOf(job) } : undefined

/**
 * How far over the proven least, as a part of it: of the cost where every price is known, else of the group that is
 * furthest over, since sheets and boards do not add up. 0 where it is proven, or where the least is nothing.
 */
export function gapOf(job: Pick<LaidJob, 'groups'>): number {
  if (isOptimal(job)) return 0
  const over = (value: number, bound: number) => (bound > 0 ? Math.max(0, (value - bound) / bound) : 0)
  if (isPriced(job)) return over(paidFor(job), boundOf(job))
  return Math.max(...job.groups.map(({ value, lowerBound }) => over(value, lowerBound)))
}

/** Sheets and boards that no layout can do without: the bound over the dearest piece that can be had. */
export function leastPieces(job: Pick<LaidJob, 'groups'>): number {
  return boundOf(job, ({ group, lowerBound }) => {
    const dearest = Math.max(...group.problem.stock.map(({ price }) => price))
    return dearest > 0 ? Math.ceil(lowerBound / dearest - 1e-9) : 0
  })
}

/**
 * What is neither a part nor a kept remainder, as a share of the wood that is taken, sheets and boards alike. Strips are
 * counted with the kerfs that rip them and with what their boards lose; boards begun and not ripped to the end are kept.
 */
export function wasteOf({ groups }: Pick<LaidJob, 'groups'>): number {
  let taken = 0
  let used = 0
  for (const laid of groups) {
    const wood = isSheets(laid) ? sheetWood(laid.group.problem.stock, laid.layouts, laid) : boardWood(laid)
    const depth = isSheets(laid) ? laid.group.thickness : faceOf(laid)
    taken += wood.taken * depth
    used += wood.used * depth
  }
  return taken === 0 ? 0 : 1 - used / taken
}

interface Wood {
  readonly taken: number
  readonly used: number
}

/** The side of a board that no cut divides: its thickness. */
const faceOf = ({ group }: LaidLengths): number => (group.kind === 'strip' ? group.width : group.thickness)

function sheetWood(
  stock: readonly { readonly id: string; readonly length: number; readonly width: number }[],
  layouts: readonly SheetLayout[],
  laid: LaidGroup,
): Wood {
  const area = (of: { readonly length: number; readonly width: number }) => of.length * of.width
  const taken = takenOf(laid)
  return {
    taken: stock.reduce((sum, sheet) => sum + area(sheet) * (taken.get(sheet.id) ?? 0), 0),
    used: layouts.reduce(
      (sum, { count, placements, offcuts }) =>
        sum + count * [...placements, ...offcuts].reduce((all, piece) => all + area(piece), 0),
      0,
    ),
  }
}

/** By length and width; of strips the width is that of their boards. */
function boardWood(laid: LaidLengths): Wood {
  const { group, layouts } = laid
  const boards = takenOf(laid)
  const perBoard = stripsPerBoard(laid)
  const across = (width: number) => (group.kind === 'strip' ? group.thickness : width)
  let taken = 0
  let used = 0
  for (const { label, length, width } of group.stock) {
    const count = boards.get(label) ?? 0
    const own = layouts.filter(({ stock }) => stock === label)
    const strips = own.reduce((sum, layout) => sum + layout.count, 0)
    const spare = count * (perBoard.get(label) ?? 1) - strips
    taken += count * length * width
    used += own.reduce((sum, layout) => sum + layout.count * keptLength(layout, laid), 0) * across(width)
    used += group.kind === 'strip' ? spare * length * across(width) : 0
  }
  return { taken, used }
}

function keptLength({ parts, offcut }: LengthLayout, { group }: LaidLengths): number {
  const sizes = new Map(group.problem.parts.map(({ id, length }) => [id, length]))
  const kept = offcut >= group.problem.keepable ? offcut : 0
  return parts.reduce((sum, part) => sum + (sizes.get(part) ?? 0), kept)
}
