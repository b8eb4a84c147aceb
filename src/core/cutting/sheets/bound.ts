import type { ShouldStop } from '../problem.ts'
import { coverCost } from './cover.ts'
import { type DualFunction, dualFunctions } from './dual.ts'
import { fitsSheet, type Job, type PartType } from './job.ts'

/** What one function gives the sides of every part, and of every sheet. */
interface Scale {
  /** Of the part's length and of its width. */
  readonly length: Float64Array
  readonly width: Float64Array
  readonly sheets: Float64Array
}

const scaleBy = (
  apply: DualFunction,
  job: Job,
  parts: readonly PartType[],
  whole: number,
  side: 0 | 1,
): Scale => ({
  length: Float64Array.from(parts, (part) => (part.length <= whole ? apply(part.length) : 0)),
  width: Float64Array.from(parts, (part) => (part.width <= whole ? apply(part.width) : 0)),
  sheets: Float64Array.from(job.sheets, (sheet) => apply(side === 0 ? sheet.length : sheet.width)),
})

/** How a part may lie on the largest sheet: bit 1 as it is, bit 2 turned. */
const waysOf = (part: PartType, wholeLength: number, wholeWidth: number): number => {
  const plain = part.length <= wholeLength && part.width <= wholeWidth
  const turned = part.turnable && part.width <= wholeLength && part.length <= wholeWidth
  return (plain ? 1 : 0) + (turned ? 2 : 0)
}

/** What all parts together take, on the two scales; a part that may lie both ways counts its lesser, or on square sheets (a packing may be mirrored over its diagonal) its mean. */
const demandOf = (
  parts: readonly PartType[],
  ways: Uint8Array,
  along: Scale,
  across: Scale,
  square: boolean,
): number => {
  let demand = 0
  for (let index = 0; index < parts.length; index++) {
    const plain = (along.length[index] as number) * (across.width[index] as number)
    const turned = (along.width[index] as number) * (across.length[index] as number)
    const way = ways[index] as number
    let takes = way === 1 ? plain : turned
    if (way === 3) takes = square ? (plain + turned) / 2 : Math.min(plain, turned)
    demand += takes * (parts[index] as PartType).count
  }
  return demand
}

const boundFor = (
  job: Job,
  parts: readonly PartType[],
  usable: readonly boolean[],
  most: number,
  stop: ShouldStop,
) => {
  const sheets = job.sheets.filter((_, index) => usable[index])
  const narrowed: Job = { ...job, sheets }
  const wholeLength = Math.max(...sheets.map((sheet) => sheet.length))
  const wholeWidth = Math.max(...sheets.map((sheet) => sheet.width))
  const square = sheets.every((sheet) => sheet.length === sheet.width)
  const ways = Uint8Array.from(parts, (part) => waysOf(part, wholeLength, wholeWidth))
  const turnable = parts.filter((part) => part.turnable)
  const lengths = [...parts.map((part) => part.length), ...turnable.map((part) => part.width)]
  const widths = [...parts.map((part) => part.width), ...turnable.map((part) => part.length)]
  const scales = (whole: number, sides: number[], side: 0 | 1): Scale[] =>
    dualFunctions(whole, sides, most).map((apply) => scaleBy(apply, narrowed, parts, whole, side))
  const across = scales(wholeWidth, widths, 1)
  let best = 0
  for (const first of scales(wholeLength, lengths, 0)) {
    for (const second of across) {
      const capacity = sheets.map(
        (_, index) => (first.sheets[index] as number) * (second.sheets[index] as number),
      )
      best = Math.max(best, coverCost(sheets, capacity, demandOf(parts, ways, first, second, square), best))
    }
    if (stop()) break
  }
  return best
}

/** Which sheets take the part, as a key and as flags. */
const usableBy = (job: Job, part: PartType): boolean[] => job.sheets.map((sheet) => fitsSheet(part, sheet))

/**
 * No layout of the job costs less than this (cents): the best of the areas and of many products of dual functions, for
 * all parts and for those only that need one of the same few sheets. `Infinity`: the stock on hand cannot hold them.
 * Guillotine cuts are not asked for, so it holds for any packing. `most` is how many lengths a function is made of.
 */
export const scaleBound = (job: Job, most: number, stop: ShouldStop): number => {
  const groups = new Map<string, boolean[]>()
  groups.set(
    'all',
    job.sheets.map(() => true),
  )
  for (const part of job.parts) {
    const usable = usableBy(job, part)
    if (usable.includes(false)) groups.set(usable.join(), usable)
  }
  let best = 0
  for (const usable of groups.values()) {
    const parts = job.parts.filter((part) =>
      usableBy(job, part).every((flag, index) => !flag || usable[index]),
    )
    best = Math.max(best, boundFor(job, parts, usable, most, stop))
  }
  return best
}
