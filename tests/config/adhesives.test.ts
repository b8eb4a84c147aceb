import { describe, expect, it } from 'vitest'
import { readConfig } from '../../src/config.ts'
import { inches } from '../../src/core/measure/length.ts'
import { CONFIG, edited, problemsWith } from './folder.ts'

const { glue } = readConfig(CONFIG)

describe('config/adhesives.yaml', () => {
  // Wood glue maker's gluing guide, psi.
  it.each([
    ['soft', 100, 150],
    ['medium', 150, 200],
    ['hard', 200, 300],
  ] as const)('%s wood is pressed with %d to %d psi', (wood, low, high) => {
    expect(glue.clamping.pressure[wood].low / 6894.757).toBeCloseTo(low, 3)
    expect(glue.clamping.pressure[wood].high / 6894.757).toBeCloseTo(high, 3)
  })

  it('clamps stand 8 to 12 in apart and 1 1/2 to 2 in from the ends (same guide)', () => {
    expect(glue.clamping.apart).toEqual({ low: inches(8), high: inches(12) })
    expect(glue.clamping.fromEnds).toEqual({ low: inches(3, 2), high: inches(2) })
  })

  it('reads temperatures in F and differences of them in C', () => {
    expect(glue.timing.ratedAt).toBeCloseTo(21.11, 2)
    expect(glue.timing.doublesPer).toBeCloseTo(8.333, 3)
  })

  it.each([
    ['a name that is taken', edited('adhesives.yaml', 'white PVA', 'wood glue'), '("wood glue" is taken)'],
    ['a bare temperature', edited('adhesives.yaml', 'ratedAt: 70 F', 'ratedAt: 70'), 'a temperature such as'],
    ['no pressure for hard wood', edited('adhesives.yaml', ', hard: [200, 300]', ''), 'hard'],
  ])('says on one line what is wrong: %s', (_, wrong, expected) => {
    const [problem, ...rest] = problemsWith({ 'adhesives.yaml': wrong })
    expect(problem).toContain(expected)
    expect(rest).toEqual([])
  })
})
