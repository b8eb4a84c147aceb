import { describe, expect, it } from 'vitest'
import { findSpecies } from '../../../src/core/moisture/species.ts'
import { glueHardness } from '../../../src/core/quantities/glueHardness.ts'
import { readConfig } from '../../../src/config.ts'
import { CONFIG } from '../../config/folder.ts'

const { species } = readConfig(CONFIG)

describe('glueHardness', () => {
  it.each([
    ['SPF', 'soft'],
    ['southern pine', 'soft'],
    ['red oak', 'hard'],
    ['quaking aspen', 'medium'],
    ['red alder', 'medium'],
    ['yellow-poplar', 'hard'],
  ])('%s is %s', (name, hardness) => {
    expect(glueHardness(findSpecies(name, species)!)).toBe(hardness)
  })
})
