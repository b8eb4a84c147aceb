import { readFileSync } from 'node:fs'
import { parse } from 'yaml'
import { cautionsFile } from '../../../src/config/cautions.ts'

/** The rules as config/cautions.yaml ships them. */
export const shippedRules = cautionsFile.parse(
  parse(readFileSync(new URL('../../../config/cautions.yaml', import.meta.url), 'utf8')),
)
