import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readConfig } from '../../../src/config.ts'
import { inches, millimetres } from '../../../src/core/measure/length.ts'
import { findSpecies, type Gravity } from '../../../src/core/moisture/species.ts'
import {
  airDryGravity,
  ovendryGravity,
  panelDensity,
  POUND_PER_CUBIC_FOOT,
  speciesDensity,
  woodDensity,
} from '../../../src/core/quantities/density.ts'
import { blockWeight } from '../../../src/core/quantities/weight.ts'
import { CONFIG } from '../../config/folder.ts'

const { species, panelDensities } = readConfig(CONFIG)
const density = (name: string, moisture = 12) => speciesDensity(findSpecies(name, species)!, moisture)!

describe('woodDensity', () => {
  it('follows the NDS form 62.4 G / (1 + .009 G m) (1 + m / 100) lb/ft3', () => {
    const ovendry = (value: number): Gravity => ({ value, basis: 'ovendry', fromMemory: false })
    expect(woodDensity(ovendry(0.55), 12) / POUND_PER_CUBIC_FOOT).toBeCloseTo(36.28, 0)
    expect(woodDensity(ovendry(0.42), 0)).toBe(420)
    expect(() => woodDensity(ovendry(0.42), -1)).toThrow(RangeError)
  })

  // Oregon State University Extension, relative working and physical properties: lb/ft3 air-dry, printed whole.
  it.each([
    ['Douglas-fir', 34],
    ['western larch', 36],
    ['western hemlock', 31],
  ])('%s air-dry: %d lb/ft3', (name, printed) => {
    expect(Math.abs(density(name) / POUND_PER_CUBIC_FOOT - printed)).toBeLessThan(0.6)
  })

  // Engineering ToolBox, lumber weights: dry 2x stock, lb/ft. Stamped Douglas fir-larch at 19 %, within 0.12 lb/ft.
  it.each([
    ['2x4', 3.5, 1.3],
    ['2x6', 5.5, 2.0],
    ['2x8', 7.25, 2.7],
    ['2x10', 9.25, 3.3],
    ['2x12', 11.25, 4.0],
  ])('%s weighs %d in of width, %d lb/ft', (_, width, printed) => {
    const grams = blockWeight(inches(3, 2), inches(width * 4, 4), inches(12), density('DF-L', 19))
    expect(Math.abs(grams / 453.59237 - printed)).toBeLessThan(0.12)
  })

  it('600 ft of dry 2x4 is about 800 lb (same page)', () => {
    const grams = blockWeight(inches(3, 2), inches(7, 2), inches(7200), density('southern pine'))
    expect(Math.abs(grams / 453.59237 - 800)).toBeLessThan(20)
  })

  it('turns one gravity into the other and back, heavier with every per cent of water', () => {
    const value = fc.double({ min: 0.2, max: 0.8, noNaN: true })
    fc.assert(
      fc.property(value, fc.double({ min: 0, max: 29, noNaN: true }), (gravity, moisture) => {
        const dry: Gravity = { value: gravity, basis: 'ovendry', fromMemory: false }
        const airDry: Gravity = { value: airDryGravity(dry), basis: 'at 12 %', fromMemory: false }
        expect(ovendryGravity(airDry)).toBeCloseTo(gravity, 12)
        expect(airDryGravity(airDry)).toBe(airDry.value)
        expect(woodDensity(airDry, moisture)).toBeCloseTo(woodDensity(dry, moisture), 9)
        expect(woodDensity(airDry, 12)).toBeCloseTo(1000 * airDry.value * 1.12, 9)
        expect(woodDensity(dry, moisture + 1)).toBeGreaterThan(woodDensity(dry, moisture))
      }),
    )
  })
})

describe('panelDensity', () => {
  const sheet = (material: string, thickness: number) =>
    blockWeight(
      inches(48),
      inches(96),
      inches(thickness * 64, 64),
      panelDensity(material, inches(thickness * 64, 64), panelDensities)!,
    ) / 453.59237

  // Softwood plywood weight chart, actual thickness; products differ by up to 20 % (roofing and panel guides).
  it.each([
    ['3/8', 11 / 32, 28.5],
    ['1/2', 15 / 32, 40.6],
    ['5/8', 19 / 32, 48],
    ['3/4', 23 / 32, 60.8],
  ])('a 4 x 8 ft sheet of %s plywood, %d in, weighs %d lb within a fifth', (_, thickness, printed) => {
    expect(Math.abs(sheet('plywood', thickness) / printed - 1)).toBeLessThan(0.2)
  })

  // Panel weight guide: 1/2 in, 4 x 8 ft.
  it.each([
    ['hardwood plywood', 45],
    ['particleboard', 61],
    ['MDF', 66.7],
  ])('1/2 in %s weighs %d lb', (material, printed) => {
    expect(Math.abs(sheet(material, 0.5) / printed - 1)).toBeLessThan(0.01)
  })

  // Fibreboard maker's specification, 2020.
  it.each([
    [12, 800],
    [18, 760],
    [25, 740],
  ])('MDF %d mm: %d kg/m3', (thickness, printed) => {
    expect(panelDensity('mdf', millimetres(thickness), panelDensities)).toBe(printed)
  })

  it('gives a thickness on the line to the thinner row', () => {
    const rows = [
      { material: 'MDF', upTo: millimetres(15), density: 800 },
      { material: 'MDF', density: 740 },
    ]
    expect(panelDensity('MDF', millimetres(15), rows)).toBe(800)
    expect(panelDensity('MDF', millimetres(15.1), rows)).toBe(740)
  })

  it('is unknown for what no row has', () => {
    expect(panelDensity('glass', millimetres(4), panelDensities)).toBeUndefined()
    expect(speciesDensity({ name: 'driftwood', kind: 'softwood', alsoCalled: [] }, 12)).toBeUndefined()
  })
})
