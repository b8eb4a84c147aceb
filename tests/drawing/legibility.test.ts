import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planSurround } from '../../src/core/plan.ts'
import { sceneOf } from '../../src/drawing/drawing.ts'
import { richSpecs } from '../core/panelling/specs.ts'
import { cutPictures, EXTREMES, INCHES, METRIC, planOf, planPictures, USUAL } from './corpus.ts'
import { faultsOf } from './legible.ts'

const faults = (pictures: ReturnType<typeof planPictures>) =>
  pictures.flatMap(({ name, scene }) => faultsOf(sceneOf(scene)).map((fault) => `${name}: ${fault}`))

describe('every picture', { timeout: 120_000 }, () => {
  it('can be read: letters large enough, none over another, nothing off the page', () => {
    for (const spec of [USUAL, ...EXTREMES])
      for (const show of [INCHES, METRIC]) expect(faults(planPictures(planOf(spec), show))).toEqual([])
  })

  it('can be read where a single cut is at the edge of what can be asked', () => {
    for (const show of [INCHES, METRIC]) expect(faults(cutPictures(show))).toEqual([])
  })

  it('can be read for any plan', () => {
    fc.assert(
      fc.property(richSpecs, fc.constantFrom(INCHES, METRIC), (spec, show) => {
        const plan = planSurround(spec)
        fc.pre(plan.status === 'planned')
        if (plan.status === 'planned') expect(faults(planPictures(plan, show))).toEqual([])
      }),
      { numRuns: 30 },
    )
  })

  it('is no taller than a phone held upright takes, and says in words what it shows', () => {
    const pictures = [
      ...[USUAL, ...EXTREMES].flatMap((spec) => planPictures(planOf(spec), INCHES)),
      ...cutPictures(INCHES),
    ]
    for (const { alt, scene } of pictures) {
      const { width, height } = sceneOf(scene)
      expect(width).toBe(1000)
      expect(height).toBeLessThan(1700)
      expect(alt.length).toBeLessThan(1000)
      expect(alt).toMatch(/\d.*\.$/u)
    }
  })
})
