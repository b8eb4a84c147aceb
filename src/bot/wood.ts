import { findSpecies, type Species } from '../core/moisture/species.ts'
import type { Context } from './context.ts'
import { Refusal } from './refusal.ts'

/** A wood, and what was assumed where nobody named one. */
export interface ChosenWood {
  readonly wood: Species
  readonly notes: readonly string[]
}

/** The wood that was named, else the one that config/seasons.yaml takes construction lumber for. */
export function chooseWood(
  named: Species | undefined,
  { reference }: Pick<Context, 'reference'>,
): ChosenWood {
  if (named) return { wood: named, notes: [] }
  const wood = findSpecies(reference.seasons.wood, reference.species)
  if (!wood) throw new Refusal('fault', `the settings take lumber for ${reference.seasons.wood}; add wood=`)
  return { wood, notes: [`strips taken as ${wood.name} (wood=)`] }
}
