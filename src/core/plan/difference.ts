import { type Length, minus } from '../measure/length.ts'
import type { Part, PartName, Plan } from '../plan.ts'

/** A part that one change of the spec has changed, added (no `before`) or done away with (no `after`). */
export interface PartChange {
  /** The letter it goes by now, or went by before it went. */
  readonly label: string
  readonly name: PartName
  readonly before?: Part
  readonly after?: Part
  /** After less before, where there are both; lengths, but `count` is a number of parts. */
  readonly change?: {
    readonly count: number
    readonly length: Length
    readonly width: Length
    readonly thickness: Length
  }
  /** Slots, notches or holes are others than before, or elsewhere. */
  readonly cutouts?: true
}

/** The overall sizes that are compared. */
export type SizeName =
  | 'inside length'
  | 'inside width'
  | 'outside length'
  | 'outside width'
  | 'height'
  | 'lip'
  | 'fit'
  | 'flat stack'

/** An overall size that has changed; `change` is after less before. */
export interface SizeChange {
  readonly name: SizeName
  readonly before: Length
  readonly after: Length
  readonly change: Length
}

/** Everything that differs between two plans. */
export interface PlanDifference {
  readonly parts: readonly PartChange[]
  readonly sizes: readonly SizeChange[]
}

/** What differs between two plans, in the order of the later one's list; both empty where nothing that is cut does. */
export function diffPlans(before: Plan, after: Plan): PlanDifference {
  const was = new Map(before.parts.map((part) => [part.name, part]))
  const is = new Map(after.parts.map((part) => [part.name, part]))
  const names = [...is.keys(), ...[...was.keys()].filter((name) => !is.has(name))]
  return {
    parts: names.flatMap((name) => comparePart(name, was.get(name), is.get(name))),
    sizes: compareSizes(before, after),
  }
}

function comparePart(
  name: PartName,
  before: Part | undefined,
  after: Part | undefined,
): readonly PartChange[] {
  if (!before || !after) {
    const label = (after ?? before)?.label ?? ''
    return [{ label, name, ...(before ? { before } : {}), ...(after ? { after } : {}) }]
  }
  const change = {
    count: after.count - before.count,
    length: minus(after.length, before.length),
    width: minus(after.width, before.width),
    thickness: minus(after.thickness, before.thickness),
  }
  const cut = JSON.stringify(before.cutouts ?? []) !== JSON.stringify(after.cutouts ?? [])
  const same = before.label === after.label && Object.values(change).every((amount) => amount === 0)
  return same && !cut
    ? []
    : [{ label: after.label, name, before, after, change, ...(cut ? { cutouts: true as const } : {}) }]
}

const sizesOf = (plan: Plan): Readonly<Record<SizeName, Length>> => ({
  'inside length': plan.inside.length,
  'inside width': plan.inside.width,
  'outside length': plan.outside.length,
  'outside width': plan.outside.width,
  height: plan.panelHeight,
  lip: plan.lip,
  fit: plan.fit,
  'flat stack': plan.flatStack,
})

function compareSizes(before: Plan, after: Plan): readonly SizeChange[] {
  const was = sizesOf(before)
  const changes = Object.entries(sizesOf(after)) as [SizeName, Length][]
  return changes
    .map(([name, size]) => ({ name, before: was[name], after: size, change: minus(size, was[name]) }))
    .filter(({ change }) => change !== 0)
}
