import { describe, expect, it } from 'vitest'
import { readConfig } from '../../src/config.ts'
import { toInches, toMillimetres } from '../../src/core/measure/length.ts'
import { FASTENER_KINDS } from '../../src/core/quantities/fastenerSize.ts'
import { REGIONS } from '../../src/core/stock/stock.ts'
import { CONFIG, edited, problemsWith } from './folder.ts'

const { sizes } = readConfig(CONFIG).fasteners

const gauge = (name: string, region: string) => {
  const rows = sizes.filter((size) => size.kind === 'brad' && size.region === region && size.name === name)
  const lengths = rows.map(({ length }) => length)
  return { diameter: rows[0]!.diameter, shortest: Math.min(...lengths), longest: Math.max(...lengths) }
}

describe('config/fasteners.yaml', () => {
  // UK tool retailer, sizes and types of fasteners.
  it.each([
    ['23 gauge', 0.64, 12, 28],
    ['18 gauge', 1.25, 10, 50],
    ['16 gauge', 1.6, 20, 64],
    ['15 gauge', 1.9, 25, 64],
  ])('%s is %d mm thick, %d to %d mm long', (name, diameter, shortest, longest) => {
    const found = gauge(name, 'UK')
    expect(toMillimetres(found.diameter)).toBe(diameter)
    expect([found.shortest / 1e6, found.longest / 1e6]).toEqual([shortest, longest])
  })

  // US nailer guide: gauge, inches.
  it.each([
    ['18 gauge', 0.0475, 5 / 8, 2],
    ['16 gauge', 0.0625, 1, 2.5],
  ])('%s is %d in thick, %d to %d in long', (name, diameter, shortest, longest) => {
    const found = gauge(name, 'US')
    expect(toInches(found.diameter)).toBeCloseTo(diameter, 6)
    expect([found.shortest, found.longest].map((length) => length / 25_400_000)).toEqual([shortest, longest])
  })

  it('sells every kind in every region', () => {
    for (const region of REGIONS)
      for (const kind of FASTENER_KINDS)
        expect(sizes.some((size) => size.region === region && size.kind === kind)).toBe(true)
  })

  it.each([
    [
      'a length without a unit',
      edited('fasteners.yaml', 'tipShort: 1/8in', 'tipShort: 3'),
      'a length such as',
    ],
    [
      'a pilot wider than the root',
      edited('fasteners.yaml', 'soft: 3/64in', 'soft: 1/8in'),
      'in order of size',
    ],
    ['a rule left out', edited('fasteners.yaml', '  nailTimes: 3\n', ''), 'nailTimes'],
  ])('says on one line what is wrong: %s', (_, wrong, expected) => {
    const [problem, ...rest] = problemsWith({ 'fasteners.yaml': wrong })
    expect(problem).toContain(expected)
    expect(rest).toEqual([])
  })
})
