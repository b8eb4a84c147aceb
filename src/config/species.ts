import { z } from 'zod'
import {
  type Gravity,
  type Growth,
  growthOf,
  type Shrinkage,
  type Species,
} from '../core/moisture/species.ts'
import type { PanelDensity } from '../core/quantities/density.ts'
import { lengthText } from './amounts.ts'

const growth = z.tuple([z.number().positive().max(0.02), z.number().positive().max(0.02)])
const percent = z.number().positive().max(30)
const shrinkage = z.union([z.tuple([percent, percent, percent]), z.tuple([percent, percent])], {
  error: 'percent radial, tangential and, where known, volume, such as [4.8, 7.6, 12.4]',
})

const woodGroup = z.strictObject({
  source: z.string(),
  memory: z.boolean().default(false),
  kind: z.enum(['softwood', 'hardwood']),
  rows: z.record(z.string(), z.strictObject({ growth: growth.optional(), shrinkage: shrinkage.optional() })),
  alsoCalled: z.record(z.string(), z.string()).default({}),
})

const gravityGroup = z.strictObject({
  source: z.string(),
  memory: z.boolean().default(false),
  basis: z.enum(['ovendry', 'at 12 %']),
  rows: z.record(z.string(), z.number().min(0.1).max(1.3)),
})

const panelGroup = z.strictObject({
  source: z.string(),
  material: z.string().min(1),
  densities: z
    .array(z.strictObject({ upTo: lengthText.optional(), density: z.number().min(100).max(1500) }))
    .min(1),
})

type WoodGroup = z.output<typeof woodGroup>
type GravityGroup = z.output<typeof gravityGroup>

/** The shape of config/species.yaml, read as woods with their growth and gravity, and what sheet materials weigh. */
export const speciesFile = z
  .strictObject({
    woods: z.array(woodGroup).min(1),
    gravity: z.array(gravityGroup),
    panels: z.array(panelGroup),
  })
  .transform(({ woods, gravity, panels }, context) => {
    const gravities = gravity.flatMap(gravityRows)
    const names = woods.flatMap(({ rows }) => Object.keys(rows))
    for (const issue of [...woodIssues(woods), ...gravityIssues(gravity, names)]) context.addIssue(issue)
    return {
      species: woods.flatMap((group) => speciesRows(group, new Map(gravities))),
      panelDensities: panels.flatMap(panelRows),
    }
  })

const speciesRows = (group: WoodGroup, gravities: ReadonlyMap<string, Gravity>): readonly Species[] =>
  Object.entries(group.rows).map(([name, row]) => ({
    name,
    kind: group.kind,
    alsoCalled: Object.entries(group.alsoCalled).flatMap(([alias, of]) => (of === name ? [alias] : [])),
    growth: growthRow(row, group.memory),
    shrinkage: shrinkageRow(row.shrinkage),
    gravity: gravities.get(name),
  }))

type Row = WoodGroup['rows'][string]

function growthRow({ growth, shrinkage }: Row, fromMemory: boolean): Growth | undefined {
  const [radial, tangential] = growth ?? shrinkage?.slice(0, 2).map(growthOf) ?? []
  return radial === undefined || tangential === undefined ? undefined : { radial, tangential, fromMemory }
}

function shrinkageRow(row: Row['shrinkage']): Shrinkage | undefined {
  if (!row) return undefined
  const [radial, tangential, volume] = row
  return { radial, tangential, volume }
}

const gravityRows = ({ rows, basis, memory }: GravityGroup): readonly (readonly [string, Gravity])[] =>
  Object.entries(rows).map(([name, value]) => [name, { value, basis, fromMemory: memory }])

const panelRows = ({ material, densities }: z.output<typeof panelGroup>): readonly PanelDensity[] =>
  densities.map((row) => ({ material, ...row }))

function woodIssues(groups: readonly WoodGroup[]) {
  const seen = new Set<string>()
  return groups.flatMap(({ rows, alsoCalled }, group) => {
    const own = Object.keys(rows).map((name) => [name, 'rows'] as const)
    const aliases = Object.keys(alsoCalled).map((name) => [name, 'alsoCalled'] as const)
    const repeated = [...own, ...aliases].flatMap(([name, key]) => {
      if (!seen.has(name.toLowerCase())) return seen.add(name.toLowerCase()) && []
      return [issue(['woods', group, key, name], 'a name that no other wood has')]
    })
    const lost = Object.entries(alsoCalled).flatMap(([alias, of]) =>
      rows[of] ? [] : [issue(['woods', group, 'alsoCalled', alias], 'a name that stands in the same group')],
    )
    return [...repeated, ...lost]
  })
}

function gravityIssues(groups: readonly GravityGroup[], names: readonly string[]) {
  const seen = new Set<string>()
  return groups.flatMap(({ rows }, group) =>
    Object.keys(rows).flatMap((name) => {
      const path = ['gravity', group, 'rows', name]
      if (!names.includes(name)) return [issue(path, 'a name that stands under woods')]
      if (!seen.has(name)) return seen.add(name) && []
      return [issue(path, 'a name that stands once under gravity')]
    }),
  )
}

const issue = (path: PropertyKey[], message: string) => ({ code: 'custom' as const, path, message })
