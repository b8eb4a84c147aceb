import { describe, expect, it } from 'vitest'
import { inches } from '../../../src/core/measure/length.ts'
import { currentOf, standings, withMark, withoutMarks } from '../../../src/core/steps/progress.ts'
import { stepsOf } from './grid.ts'

const steps = stepsOf()
const anna = { state: 'done', by: 'anna', at: '2026-03-06T18:00:00.000Z' } as const
const ben = { state: 'done', by: 'ben', at: '2026-03-06T18:05:00.000Z' } as const

describe('marks', () => {
  it('of a step say who and when, and the next one is in hand', () => {
    const marks = withMark({}, steps.slice(0, 2), anna)
    const all = standings(steps, marks)
    expect(all.slice(0, 3).map(({ mark }) => mark?.by)).toEqual(['anna', 'anna', undefined])
    expect(currentOf(all)?.number).toBe(3)
    expect(all.some(({ changed }) => changed)).toBe(false)
  })

  it('stay those of whoever was first, unless they say something else', () => {
    const first = withMark({}, steps.slice(0, 1), anna)
    expect(withMark(first, steps.slice(0, 1), ben)).toEqual(first)
    const skipped = withMark(first, steps.slice(0, 1), { ...ben, state: 'skipped' })
    expect(Object.values(skipped)).toMatchObject([{ by: 'ben', state: 'skipped' }])
  })

  it('are taken away, and a build that is all marked has no step in hand', () => {
    const all = withMark({}, steps, anna)
    expect(currentOf(standings(steps, all))).toBeUndefined()
    expect(currentOf(standings(steps, withoutMarks(all, steps.slice(4, 5))))?.number).toBe(5)
  })

  it('by a name that every object has are no marks', () => {
    const [step] = steps
    const odd = { ...step!, id: 'constructor' }
    expect(standings([odd], {})[0]?.mark).toBeUndefined()
    expect(standings([odd], withMark({}, [odd], anna))[0]?.mark?.by).toBe('anna')
  })
})

describe('a plan that changes', () => {
  const marks = withMark({}, steps, anna)
  const changed = (changes: Parameters<typeof stepsOf>[0]) =>
    standings(stepsOf(changes), marks).flatMap((each) => (each.changed ? [each.step.id] : []))
  const fresh = (changes: Parameters<typeof stepsOf>[0]) =>
    standings(stepsOf(changes), marks).flatMap((each) => (each.mark ? [] : [each.step.id]))

  it('flags what was done by other numbers, and nothing else', () => {
    expect(changed({})).toEqual([])
    const higher = changed({ height: inches(16) })
    expect(higher).toContain('break down sheets')
    expect(higher).toContain('crosscut end stile')
    expect(higher).toContain('frame end')
    expect(higher).not.toContain('crosscut side rail')
    expect(higher).not.toContain('rip strips')
    expect(changed({ strip: inches(3, 8) })).toContain('rip strips')
  })

  it('opens only what is new, and brings ticks back when it is changed back', () => {
    expect(fresh({ braces: 'ends' })).toEqual(['brace end'])
    expect(fresh({ corner: 'butted' })).toEqual(['crosscut side stile'])
    expect(standings(steps, marks).every(({ mark, changed: other }) => mark && !other)).toBe(true)
  })
})
