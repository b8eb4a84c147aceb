import { describe, expect, it } from 'vitest'
import { STAGES } from '../../../src/core/steps/step.ts'
import { minutesOf } from '../../../src/core/steps/times.ts'
import { config } from '../../room.ts'
import { grid, SAW, stepsOf } from './grid.ts'
import { buildSteps } from '../../../src/core/steps/buildSteps.ts'

describe('minutes', () => {
  it('are so many for each setting, once at least, and for each piece', () => {
    const times = { ...config.times, mark: { set: 2, each: 1 }, 'cut panel': { set: 4, each: 3 } }
    const steps = stepsOf()
    const minutes = (id: string) => minutesOf(steps.find((step) => step.id === id)!, times)
    expect(minutes('mark')).toBe(2 + 4)
    expect(minutes('cut side panel')).toBe(4 + 2 * 3)
  })

  it('are there for every stage, whole and above nothing', () => {
    expect(Object.keys(config.times).sort()).toEqual([...STAGES].sort())
    for (const [, plan] of grid)
      for (const step of buildSteps(plan, SAW)) {
        const minutes = minutesOf(step, config.times)
        expect(Number.isInteger(minutes) && minutes > 0 && minutes < 600, step.id).toBe(true)
      }
  })
})
