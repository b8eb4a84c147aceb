import { describe, expect, it } from 'vitest'
import { NOISE_RULES, noiseLimit } from '../../../src/core/checks/noise.ts'
import { shippedRules } from './shippedRules.ts'

describe('noiseLimit', () => {
  // OSHA 29 CFR 1910.95 table G-16 (quoted for 95 dBA); NIOSH recommended limit; a Canadian federal noise table.
  it.each([
    ['OSHA', 95, 4],
    ['NIOSH', 85, 8],
    ['Canada', 87, 8],
    ['Canada', 90, 4],
    ['Canada', 93, 2],
    ['Canada', 96, 1],
    ['Canada', 99, 0.5],
  ] as const)('%s, %s dBA: %s h', (rule, level, hours) => {
    expect(noiseLimit(level, NOISE_RULES[rule])).toBe(hours)
  })

  it.each(Object.entries(NOISE_RULES))('%s halves with every exchange', (_, rule) => {
    expect(noiseLimit(rule.level + 0.7 + rule.exchange, rule)).toBeCloseTo(
      noiseLimit(rule.level + 0.7, rule) / 2,
      9,
    )
  })

  it('gives the minutes that the caution names', () => {
    const { text } = shippedRules.find(({ id }) => id === 'noise')!
    const [, level, minutes] = /At (\d+) dBA.* in (\d+) minutes/.exec(text) ?? []
    expect(Math.round(60 * noiseLimit(Number(level), NOISE_RULES.NIOSH))).toBe(Number(minutes))
  })
})
