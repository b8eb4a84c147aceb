import type { Length } from '../core/measure/length.ts'
import type { SheetRead } from '../core/measure/readSheet.ts'
import { showPercent } from '../core/measure/showAir.ts'
import type { Species } from '../core/moisture/species.ts'
import { panelDensity, speciesDensity } from '../core/quantities/density.ts'
import { findSheetLabel } from '../core/stock/sheets.ts'
import type { Context } from './context.ts'
import type { PlanChoices } from './planChoices.ts'
import { Refusal } from './refusal.ts'
import { chooseWood } from './wood.ts'

/** kg/m3, and what was assumed on the way. */
export interface ChosenDensity {
  readonly density: number
  readonly notes: readonly string[]
}

/** A sheet as it was said or as the channel's project keeps it. */
export type KnownSheet = Pick<SheetRead, 'label' | 'material'> | PlanChoices['sheet']

/** What a sheet weighs: by the data sheet of its label, else by its material, else as plywood. */
export function sheetDensity(sheet: KnownSheet, thickness: Length, context: Context): ChosenDensity {
  const { reference, settled, project } = context
  const { material = 'plywood', label } = sheet ?? {}
  const region = project?.choices.region ?? settled.region
  const row = label === undefined ? undefined : findSheetLabel(material, label, region, reference.stock)
  const density = row?.density ?? panelDensity(material, thickness, reference.panelDensities)
  if (density === undefined)
    throw new Refusal(
      'invalid',
      `no source says what ${material} weighs; name a sheet such as 3/4 ply or 18mm birch ply`,
    )
  return {
    density,
    notes: [
      `${material} at ${Math.round(density)} kg/m³; products differ by up to 20 %${sheet?.material ? '' : ' (sheet=)'}`,
    ],
  }
}

/** What lumber weighs by its wood and its moisture. */
export function woodDensityOf(
  named: Species | undefined,
  percent: number | undefined,
  context: Context,
): ChosenDensity {
  const { wood, notes } = chooseWood(named, context)
  const moisture = percent ?? context.reference.seasons.moisture
  const density = speciesDensity(wood, moisture)
  if (density === undefined)
    throw new Refusal(
      'invalid',
      `no source says what ${wood.name} weighs; name another wood, such as wood=hem-fir`,
    )
  const assumed = percent === undefined ? ' (moisture=)' : ''
  return {
    density,
    notes: [
      ...notes,
      `${wood.name} at ${Math.round(density)} kg/m³, ${showPercent(moisture)} moisture${assumed}`,
    ],
  }
}
