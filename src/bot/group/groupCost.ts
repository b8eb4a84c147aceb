import { shareCents } from '../../core/group/shareCents.ts'
import type { GroupParts } from './cutting.ts'
import { kitsOf } from './kits.ts'
import type { WoodCost } from './woodCost.ts'

/** What one kit costs, in whole cents. */
export interface KitCost {
  readonly kit: number
  readonly user: string
  /** Its part of the sheets and boards that are bought. */
  readonly wood: number
  /** Its part of what is bought for everybody. */
  readonly shared: number
  readonly paid: number
}

/** What all kits cost together, to the cent; and names of stock that nobody has said a price of. */
export interface GroupCost {
  readonly kits: readonly KitCost[]
  readonly total: number
  readonly unpriced: readonly string[]
  /** Some of it is at prices that are examples. */
  readonly example: boolean
}

/**
 * Shares the cost of a layout: what each kind of stock costs by how much of it each kit has, and what is bought for all
 * evenly or by size. All kits together come to the total, to the cent; cents left over go as shareCents says, the lowest
 * kit number first. Spare parts and waste are paid by all in the same measure.
 */
export function shareCost({ group, worked, merged }: GroupParts, costs: readonly WoodCost[]): GroupCost {
  const kits = kitsOf(worked).map(({ number }) => number)
  const sizes = new Map(merged.map((part) => [part.label, part]))
  const areaIn = (labels: ReadonlySet<string>) => {
    const areas = new Map(kits.map((kit) => [kit, 0]))
    for (const label of labels)
      for (const { kit, count: many } of sizes.get(label)?.owners ?? []) {
        const { length = 0, width = 0 } = sizes.get(label) ?? {}
        areas.set(kit, (areas.get(kit) ?? 0) + (many * (length * width)) / 1e12)
      }
    return kits.map((kit) => areas.get(kit) ?? 0)
  }
  const wood = sumUp(
    costs.map(({ cents, parts }) => shareCents(cents, areaIn(parts))),
    kits.length,
  )
  const common = group.needs.reduce((sum, need) => sum + (need.cost ?? 0), 0)
  const size = areaIn(new Set(sizes.keys()))
  const shared =
    kits.length === 0 ? [] : shareCents(common, group.share === 'evenly' ? kits.map(() => 1) : size)
  const rows = kits.map((kit, index): KitCost => {
    const member = group.members.find((each) => each.kit === kit)
    return {
      kit,
      user: member?.user ?? '',
      wood: wood[index] ?? 0,
      shared: shared[index] ?? 0,
      paid: member?.paid ?? 0,
    }
  })
  return {
    kits: rows,
    total: rows.reduce((sum, row) => sum + row.wood + row.shared, 0),
    unpriced: [...new Set(costs.flatMap(({ unpriced }) => unpriced))],
    example: costs.some(({ example }) => example),
  }
}

const sumUp = (lists: readonly (readonly number[])[], length: number): readonly number[] =>
  Array.from({ length }, (_, index) => lists.reduce((sum, list) => sum + (list[index] ?? 0), 0))
