import { describe, expect, it } from 'vitest'
import { readConfig } from '../../src/config.ts'
import { inches, type Length, millimetres, toInches, toMillimetres } from '../../src/core/measure/length.ts'
import { findBoard } from '../../src/core/stock/boards.ts'
import { findSheetLabel, findSheetSize } from '../../src/core/stock/sheets.ts'
import { REGIONS, type Region } from '../../src/core/stock/stock.ts'
import { CONFIG } from './folder.ts'

const { stock, finishes, containers } = readConfig(CONFIG)

const board = (name: string, region: Region) => {
  const found = findBoard(name, region, stock)
  if (!found) throw new Error(`${region} has no ${name}`)
  return [toMillimetres(found.thickness), toMillimetres(found.width)] as const
}

const label = (material: string, thickness: Length, region: Region) => {
  const found = findSheetLabel(material, thickness, region, stock)
  if (!found) throw new Error(`${region} has no ${material} of ${thickness}`)
  return found
}

describe('US boards: Hartford Lumber, table of lumber dimensions, dressed dry, in whole mm', () => {
  it.each([
    ['1x2', 19, 38],
    ['1x3', 19, 64],
    ['1x4', 19, 89],
    ['1x5', 19, 114],
    ['1x6', 19, 140],
    ['1x7', 19, 159],
    ['1x8', 19, 184],
    ['1x10', 19, 235],
    ['1x12', 19, 286],
    ['5/4x4', 25, 89],
    ['5/4x6', 25, 140],
    ['6/4x4', 32, 89],
    ['6/4x6', 32, 140],
    ['2x4', 38, 89],
    ['2x6', 38, 140],
    ['2x8', 38, 184],
    ['2x10', 38, 235],
    ['2x12', 38, 286],
    ['3x6', 64, 140],
    ['4x4', 89, 89],
    ['4x6', 89, 140],
  ])('%s is %d x %d', (name, thick, wide) => {
    const [thickness, width] = board(name, 'US')
    expect(Math.abs(thickness - thick)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(width - wide)).toBeLessThanOrEqual(0.5)
  })

  it('a 2x2 is 1 1/2 in each way (copy of the same table in a magazine)', () => {
    expect(board('2x2', 'US')).toEqual([38.1, 38.1])
  })

  it('US lengths: 6 to 24 ft, in metres to 0.01 (retail guide to lumber sizes)', () => {
    const metres = stock.lengths
      .filter(({ region }) => region === 'US')
      .map(({ length }) => toMillimetres(length) / 1000)
    const printed = [1.83, 2.44, 3.05, 3.66, 4.27, 4.88, 5.49, 6.1, 6.71, 7.32]
    expect(metres.map((length) => Number(length.toFixed(2)))).toEqual(printed)
  })

  it('names of two whole numbers follow the rule of the trade', () => {
    const plain = stock.boards.filter(({ region, name }) => region === 'US' && /^\d+x\d+$/.test(name))
    expect(plain.length).toBeGreaterThan(18)
    for (const { name, thickness, width } of plain) {
      const [thick = 0, wide = 0] = name.split('x').map(Number)
      expect(toInches(thickness)).toBe(thick - (thick === 1 ? 0.25 : 0.5))
      expect(toInches(width)).toBe(wide - (wide < 7 ? 0.5 : 0.75))
    }
  })
})

describe('metric boards', () => {
  it('a UK 4x2, and a 2x4, is sawn 47x100; a 100x50 joist regularised is 97x47 (UK timber size guides)', () => {
    expect(board('4x2', 'UK')).toEqual([47, 100])
    expect(board('2x4', 'UK')).toEqual([47, 100])
    expect(board('4x2 regularised', 'UK')).toEqual([47, 97])
    expect(board('25x50 batten', 'UK')).toEqual([25, 50])
  })

  it('an Australian 2x4 is 90x45 and a 2x6 is 140x45 (common practice, as people write it)', () => {
    expect(board('2x4', 'AU')).toEqual([45, 90])
    expect(board('90x45', 'AU')).toEqual([45, 90])
    expect(board('140x45', 'AU')).toEqual([45, 140])
  })

  it('UK structural lengths run from 1.8 to 7.2 m by 0.3 m (UK design and technology handbook)', () => {
    const lengths = stock.lengths.filter(({ region }) => region === 'UK').map(({ length }) => length)
    expect(lengths).toHaveLength(19)
    expect(lengths[0]).toBe(millimetres(1800))
    for (const [index, length] of lengths.slice(1).entries())
      expect(length - lengths[index]!).toBe(millimetres(300))
  })

  it('every name of two numbers outside the US and of more than a dozen mm is the size itself, either way round', () => {
    for (const { region, name, thickness, width } of stock.boards) {
      const numbers = /^([\d.]+)x([\d.]+)$/.exec(name)?.slice(1).map(Number) ?? []
      if (region === 'US' || Math.min(...numbers) <= 12 || name.includes('50') || numbers.length < 2) continue
      expect([...numbers].sort((a, b) => a - b)).toEqual([toMillimetres(thickness), toMillimetres(width)])
    }
  })
})

describe('US plywood: APA, Performance Category table of PS 1, inches', () => {
  it.each([
    ['1/4', inches(1, 4), 0.219, 0.281],
    ['11/32', inches(11, 32), 0.313, 0.375],
    ['7/16', inches(7, 16), 0.406, 0.469],
    ['15/32', inches(15, 32), 0.438, 0.5],
    ['19/32', inches(19, 32), 0.563, 0.625],
    ['23/32', inches(23, 32), 0.688, 0.75],
    ['13/16', inches(13, 16), 0.781, 0.844],
    ['7/8', inches(7, 8), 0.831, 0.919],
    ['1', inches(1), 0.95, 1.05],
    ['1-1/8', inches(9, 8), 1.069, 1.181],
  ])('%s lies between the printed limits', (_category, thickness, min, max) => {
    const { low, high, actual } = label('plywood', thickness, 'US')
    expect(Math.abs(toInches(low!) - min)).toBeLessThan(0.00051)
    expect(Math.abs(toInches(high!) - max)).toBeLessThan(0.00051)
    expect(toInches(actual)).toBeGreaterThan(min - 0.00051)
    expect(toInches(actual)).toBeLessThanOrEqual(max)
  })

  it.each([
    ['3/8', inches(3, 8), inches(11, 32)],
    ['1/2', inches(1, 2), inches(15, 32)],
    ['5/8', inches(5, 8), inches(19, 32)],
    ['3/4', inches(3, 4), inches(23, 32)],
  ])(
    'sold as %s, it is 1/32 under (softwood plywood weight chart, nominal and actual)',
    (_name, sold, actual) => {
      expect(label('plywood', sold, 'US').actual).toBe(actual)
    },
  )

  it('a sheet sold as 1/4 is reckoned at 7/32 and MDF at its full thickness', () => {
    expect(label('plywood', inches(1, 4), 'US').actual).toBe(inches(7, 32))
    expect(label('MDF', inches(3, 4), 'US').actual).toBe(inches(3, 4))
    expect(label('OSB', inches(7, 16), 'US').actual).toBe(inches(7, 16))
  })
})

describe('birch plywood: manufacturer’s data sheet, sanded', () => {
  it.each([
    [4, 3.8, 3.5, 4.1, 660, 7.9, 12.3],
    [6.5, 6.4, 6.1, 6.9, 670, 13.0, 20.3],
    [9, 9.2, 8.8, 9.5, 710, 19.0, 29.7],
    [12, 12.0, 11.5, 12.5, 695, 24.8, 38.8],
    [15, 14.9, 14.3, 15.3, 690, 30.8, 48.1],
    [18, 17.7, 17.1, 18.1, 685, 36.7, 57.3],
    [21, 20.5, 20.0, 20.9, 680, 42.5, 66.4],
    [24, 23.4, 22.9, 23.7, 680, 48.6, 75.9],
    [30, 29.4, 28.7, 29.9, 672, 60.0, 93.8],
  ])(
    '%d mm: mean %d, %d to %d, %d kg/m3, %d kg and %d kg a sheet',
    (nominal, mean, low, high, density, small, large) => {
      for (const region of REGIONS) {
        const sheet = label('birch plywood', millimetres(nominal), region)
        expect([sheet.mean, sheet.low, sheet.high]).toEqual([mean, low, high].map(millimetres))
        expect(sheet).toMatchObject({ actual: millimetres(nominal), density })
      }
      const weight = (width: number, length: number) => (nominal * width * length * density) / 1e9
      expect(Math.abs(weight(1220, 2440) - small)).toBeLessThan(0.1)
      expect(Math.abs(weight(1525, 3050) - large)).toBeLessThan(0.1)
    },
  )
})

describe('sheet sizes', () => {
  it.each([
    ['4x8', 'US', inches(48), inches(96)],
    ['1220x2440', 'UK', millimetres(1220), millimetres(2440)],
    ['8x4', 'UK', millimetres(1220), millimetres(2440)],
    ['1250x2500', 'EU', millimetres(1250), millimetres(2500)],
    ['1200x2400', 'AU', millimetres(1200), millimetres(2400)],
    ['5x5', 'US', millimetres(1525), millimetres(1525)],
    ['1525x3050', 'EU', millimetres(1525), millimetres(3050)],
  ] as const)(
    '%s in %s (sheet size guides; birch plywood maker’s size page)',
    (name, region, width, length) => {
      expect(findSheetSize(name, region, stock)).toMatchObject({ width, length })
    },
  )
})

describe('finishes', () => {
  const finish = (name: string) => finishes.find((product) => product.name === name)

  it('oil stain covers 4.9 to 9.8 m2/L smooth, 2.4 to 4.9 rough (Wood Handbook, GTR-190, ch. 16)', () => {
    const { smooth, rough } = finish('oil stain') ?? {}
    expect(smooth?.low).toBeCloseTo(4.9, 1)
    expect(smooth?.high).toBeCloseTo(9.8, 1)
    expect(rough?.low).toBeCloseTo(2.45, 1)
    expect(rough?.high).toBeCloseTo(4.9, 1)
  })

  it('latex paint covers 7.4 to 9.8 m2/L (paint maker’s page) and polyurethane 500 to 600 ft2/gal (retailers’ guides)', () => {
    expect(finish('latex paint')?.smooth.low).toBeCloseTo(7.4, 1)
    expect(finish('latex paint')?.smooth.high).toBeCloseTo(9.8, 1)
    expect(finish('oil polyurethane')?.smooth.low).toBeCloseTo(12.27, 2)
    expect(finish('oil polyurethane')?.smooth.high).toBeCloseTo(14.73, 2)
  })

  it('dries in the hours that the data sheets give', () => {
    expect(finish('latex paint')?.drying).toMatchObject({
      touch: { low: 0.5, high: 0.5 },
      recoat: { low: 4, high: 4 },
    })
    expect(finish('oil polyurethane')?.drying).toMatchObject({
      humidityBelow: 85,
      temperature: { low: 13, high: 32 },
    })
    expect(finish('water polyurethane')?.drying?.touch).toEqual({ low: 2, high: 4 })
  })

  it('comes in cans of a half-pint to 5 gal in the US and 250 mL to 5 L elsewhere', () => {
    const cans = (region: Region) =>
      containers.filter((can) => can.region === region).map(({ volume }) => Math.round(volume))
    expect(cans('US')).toEqual([237, 473, 946, 3785, 18_927])
    expect(cans('UK')).toEqual([250, 500, 750, 1000, 2500, 5000])
    expect(cans('EU')).toEqual(cans('UK'))
  })
})
