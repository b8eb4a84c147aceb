import { describe, expect, it } from 'vitest'
import { findAdhesive } from '../../../src/core/quantities/glueProduct.ts'
import { glue } from './shippedGlue.ts'

describe('findAdhesive', () => {
  it('knows a glue by any of its names, whatever the capitals', () => {
    for (const { name, alsoCalled } of glue.adhesives)
      for (const each of [name, ...alsoCalled])
        expect(findAdhesive(` ${each.toUpperCase()} `, glue.adhesives)?.name).toBe(name)
  })

  it('knows no other', () => {
    expect(findAdhesive('gum', glue.adhesives)).toBeUndefined()
  })

  it('has one that stands the rain', () => {
    expect(glue.adhesives.filter(({ waterproof }) => waterproof).map(({ name }) => name)).toEqual([
      'waterproof glue',
    ])
  })
})
