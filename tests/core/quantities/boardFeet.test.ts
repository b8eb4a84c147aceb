import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, millimetres } from '../../../src/core/measure/length.ts'
import {
  boardFeet,
  linearTotals,
  nominalSection,
  type Section,
} from '../../../src/core/quantities/boardFeet.ts'

const nominal = (name: string): Section => {
  const section = nominalSection(name)
  if (!section) throw new Error(`no ${name}`)
  return section
}

describe('boardFeet', () => {
  // US Navy, Engineering Aid (2x4x14); hardwood dealer, building inspection, furniture making and freight pages (the rest).
  it.each([
    ['2x4', 14, 9 + 1 / 3],
    ['1x8', 14, 9 + 4 / 12],
    ['3x8', 14, 28],
    ['2x6', 8, 8],
    ['1x3', 8, 2],
    ['1x4', 6, 2],
    ['1x12', 10, 10],
  ])('%s by %d ft: %d', (name, feet, printed) => {
    expect(boardFeet(nominal(name), inches(12 * feet))).toBeCloseTo(printed, 9)
  })

  it('2x4 by 16 ft: 10 2/3 as sold, 7 by the wood that is there (mathematics help page)', () => {
    const actual: Section = { thickness: inches(3, 2), width: inches(7, 2), basis: 'actual' }
    expect(boardFeet(nominal('2x4'), inches(192))).toBeCloseTo(10.667, 3)
    expect(boardFeet(actual, inches(192))).toBe(7)
  })

  it('counts thin stock as an inch where it is sold, and as it is where it is measured', () => {
    const thin = { thickness: inches(1, 2), width: inches(12) }
    expect(boardFeet({ ...thin, basis: 'nominal' }, inches(12))).toBe(1)
    expect(boardFeet({ ...thin, basis: 'actual' }, inches(12))).toBe(0.5)
  })

  it('is no less for a longer or a wider board', () => {
    const size = fc.integer({ min: 1, max: 3_000_000_000 }).map((count) => count as Length)
    fc.assert(
      fc.property(size, size, size, (thickness, width, length) => {
        const section: Section = { thickness, width, basis: 'nominal' }
        const feet = boardFeet(section, length)
        expect(boardFeet(section, (length + 1) as Length)).toBeGreaterThanOrEqual(feet)
        expect(boardFeet({ ...section, width: (width + 1) as Length }, length)).toBeGreaterThanOrEqual(feet)
        expect(boardFeet({ ...section, basis: 'actual' }, length)).toBeLessThanOrEqual(feet)
      }),
    )
    expect(() => boardFeet({ thickness: inches(0), width: inches(1), basis: 'actual' }, inches(1))).toThrow(
      RangeError,
    )
  })
})

describe('nominalSection', () => {
  it('reads US names and no others', () => {
    expect(nominalSection('5/4x6')).toEqual({ thickness: inches(5, 4), width: inches(6), basis: 'nominal' })
    expect(nominalSection('2 × 4')).toEqual(nominal('2x4'))
    expect(nominalSection('CLS')).toBeUndefined()
    expect(nominalSection('5/0x6')).toBeUndefined()
  })
})

describe('linearTotals', () => {
  it('adds up by section, in the order they come', () => {
    const rows = [
      { section: '2x4', length: millimetres(500), count: 4 },
      { section: '1x6', length: millimetres(800), count: 1 },
      { section: '2x4', length: millimetres(250), count: 2 },
    ]
    expect(linearTotals(rows)).toEqual([
      { section: '2x4', count: 6, length: millimetres(2500) },
      { section: '1x6', count: 1, length: millimetres(800) },
    ])
    expect(linearTotals([])).toEqual([])
  })
})
