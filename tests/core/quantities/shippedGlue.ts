import { readConfig } from '../../../src/config.ts'
import { type Adhesive, findAdhesive } from '../../../src/core/quantities/glueProduct.ts'
import { CONFIG } from '../../config/folder.ts'

/** What is in config/ for the tests of glue. */
export const { glue } = readConfig(CONFIG)

export function adhesive(name: string): Adhesive {
  const found = findAdhesive(name, glue.adhesives)
  if (!found) throw new Error(`no ${name}`)
  return found
}
