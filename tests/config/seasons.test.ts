import { describe, expect, it } from 'vitest'
import { readConfig } from '../../src/config.ts'
import { PLACES } from '../../src/core/moisture/seasons.ts'
import { CONFIG, edited, lineOf, problemsWith, textOf } from './folder.ts'

const { seasons } = readConfig(CONFIG)

describe('config/seasons.yaml', () => {
  it('has a year for every place, damper the less it is heated', () => {
    for (const place of PLACES)
      expect(seasons.places[place].driest).toBeLessThan(seasons.places[place].wettest)
    const { heated, unheated, outdoors } = seasons.places
    expect(heated.wettest).toBeLessThan(unheated.wettest)
    expect(unheated.wettest).toBeLessThanOrEqual(outdoors.wettest)
    // Monthly means read for Wyoming and Vermont (USDA FPL-RN-0268, quoted): 9.0 to 14.2 %.
    expect(outdoors.driest).toBeLessThanOrEqual(9)
    expect(outdoors.wettest).toBeGreaterThanOrEqual(14.2)
  })

  it.each([
    [
      'a wood that there is not',
      'wood: hem-fir',
      'wood: hemfur',
      /^seasons.yaml line \d+: wood: .* read "hemfur"/u,
    ],
    ['a wood without a weight', 'wood: hem-fir', 'wood: white fir', /growth and gravity, read "white fir"/u],
    [
      'a year turned round',
      'driest: 6, wettest: 10',
      'driest: 10, wettest: 6',
      /the driest month, then the wettest/u,
    ],
    ['a bare temperature', 'temperature: 70 F', 'temperature: 70', /a temperature such as "70 F"/u],
  ])('says on one line what is wrong: %s', (_, from, to, message) => {
    const problems = problemsWith({ 'seasons.yaml': edited('seasons.yaml', from, to) })
    expect(problems).toEqual([expect.stringMatching(message)])
    expect(problems[0]).toContain(`line ${lineOf(textOf('seasons.yaml'), from)}`)
  })
})
