import { readConfig } from '../../../src/config.ts'
import { findSpecies, type Species } from '../../../src/core/moisture/species.ts'
import { CONFIG } from '../../config/folder.ts'

/** What is in config/ for the tests of fasteners. */
export const { fasteners, species } = readConfig(CONFIG)

export function woodOf(name: string): Species {
  const found = findSpecies(name, species)
  if (!found) throw new Error(`no ${name}`)
  return found
}
