import { describe, expect, it } from 'vitest'
import { findSpecies } from '../../src/core/moisture/species.ts'
import { readConfig } from '../../src/config.ts'
import { CONFIG, edited, lineOf, problemsWith, textOf } from './folder.ts'

const text = textOf('species.yaml')
const { species, stock, panelDensities } = readConfig(CONFIG)

describe('config/species.yaml', () => {
  // NDS for Wood Construction 2018, Table 12.3.3A: gravity, ovendry, by trade group.
  it.each([
    ['DF-L', 0.5],
    ['southern pine', 0.55],
    ['SPF', 0.42],
    ['hem-fir', 0.43],
    ['ponderosa pine', 0.43],
    ['redwood', 0.37],
    ['cedar', 0.36],
    ['white pine', 0.36],
    ['aspen', 0.39],
  ])('%s has a gravity of %d', (name, value) => {
    expect(findSpecies(name, species)?.gravity).toEqual({ value, basis: 'ovendry', fromMemory: false })
  })

  // Wood Handbook (GTR-190), Table 4-3, softwoods: percent radial and tangential.
  it.each([
    ['western redcedar', 2.4, 5.0],
    ['northern white-cedar', 2.2, 4.9],
    ['eastern redcedar', 3.1, 4.7],
    ['Douglas-fir', 4.8, 7.6],
    ['interior Douglas-fir', 3.8, 6.9],
    ['yellow cedar', 2.8, 6.0],
    ['balsam fir', 2.9, 6.9],
    ['grand fir', 3.4, 7.5],
    ['noble fir', 4.3, 8.3],
    ['subalpine fir', 2.6, 7.4],
    ['white fir', 3.3, 7.0],
  ])('%s shrinks %d and %d %%', (name, radial, tangential) => {
    const wood = findSpecies(name, species)
    expect(wood?.shrinkage).toMatchObject({ radial, tangential })
    expect(wood?.growth?.fromMemory).toBe(false)
  })

  it('has every group that lumber is stamped with, with growth and gravity', () => {
    for (const name of ['SPF', 'DF-L', 'hem-fir', 'southern pine'])
      expect(findSpecies(name, species)).toMatchObject({ growth: {}, gravity: {}, kind: 'softwood' })
  })

  it('weighs every material of sheets.yaml', () => {
    const weighed = new Set(panelDensities.map(({ material }) => material))
    expect(
      [...new Set(stock.labels.map(({ material }) => material))].filter((one) => !weighed.has(one)),
    ).toEqual([])
  })

  it.each([
    [
      'a wood that stands twice',
      edited('species.yaml', '      interior Douglas-fir: {', '      Basswood: {'),
      /expected a name that no other wood has/,
    ],
    [
      'a name for no wood',
      edited('species.yaml', 'alder: red alder', 'alder: blue alder'),
      /expected a name that stands in the same group/,
    ],
    [
      'a gravity of no wood',
      edited('species.yaml', '      hem-fir: 0.43', '      balsa: 0.13'),
      /expected a name that stands under woods/,
    ],
    [
      'a gravity twice',
      edited('species.yaml', '      western hemlock: 0.45', '      hem-fir: 0.45'),
      /expected a name that stands once under gravity/,
    ],
    [
      'shrinkage of one number',
      edited('species.yaml', '[4.6, 8.2, 12.7]', '[4.6]'),
      /expected percent radial, tangential/,
    ],
  ])('says on one line what is wrong: %s', (_, wrong, sentence) => {
    const [problem, ...rest] = problemsWith({ 'species.yaml': wrong })
    expect(problem).toMatch(sentence)
    expect(problem).toMatch(/^species\.yaml line \d+: /)
    expect(rest).toEqual([])
  })

  it('names the line', () => {
    const wrong = edited('species.yaml', '      hem-fir: 0.43', '      balsa: 0.13')
    expect(problemsWith({ 'species.yaml': wrong })[0]).toContain(`line ${lineOf(wrong, /balsa:/)}:`)
    expect(text).toContain('memory: true')
  })
})
