import { describe, expect, it } from 'vitest'
import { inches } from '../../../src/core/measure/length.ts'
import { type SheetSetting, sheetSteps } from '../../../src/core/steps/sheetSteps.ts'
import { grid } from './grid.ts'

const [[, plan]] = grid as [(typeof grid)[number]]
const parts = plan.parts.filter(({ material }) => material === 'sheet')
const [first, second] = parts.map(({ label }) => label)

const setting = (
  kind: SheetSetting['kind'],
  size: number,
  cuts: number,
  finished: Readonly<Record<string, number>> = {},
): SheetSetting => ({
  kind,
  length: inches(size),
  cuts,
  parts: Object.entries(finished).map(([label, count]) => ({ label, count, whole: label })),
  narrow: false,
})

describe('the sheets in the order of their settings', () => {
  it('joins settings that finish nothing, and makes a step of each other one', () => {
    const steps = sheetSteps(parts, [
      setting('trim', 48, 1),
      setting('crosscut', 15, 2),
      setting('rip', 18, 2, { [second as string]: 2 }),
      setting('rip', 14, 2, { [first as string]: 2 }),
    ])
    const [down, ...cut] = steps
    expect(down).toMatchObject({ id: 'break down sheets', stage: 'break down', work: 3, cuts: [] })
    expect(down?.settings.map(({ what, length }) => [what, length])).toEqual([
      ['trim', inches(48)],
      ['crosscut', inches(15)],
    ])
    expect(down?.parts.map(({ label }) => label).sort()).toEqual([first, second].sort())
    expect(cut.map(({ stage, cuts }) => [stage, cuts])).toEqual([
      ['cut panel', [second]],
      ['cut panel', [first]],
    ])
    expect(cut[0]?.settings[0]?.of).toBe(`2 ${second}`)
  })

  it('a part that two settings finish is cut by the later one, and no two steps have one name', () => {
    const steps = sheetSteps(parts, [
      setting('rip', 18, 1, { [first as string]: 1 }),
      setting('crosscut', 15, 1),
      setting('crosscut', 18, 1, { [first as string]: 1 }),
      setting('crosscut', 12, 1),
      setting('rip', 12, 1, { [second as string]: 2, [first as string]: 1 }),
    ])
    expect(steps.map(({ cuts }) => cuts)).toEqual([[], [], [], [], expect.arrayContaining([first, second])])
    const ids = steps.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids.filter((id) => id.startsWith('break down sheets'))).toHaveLength(2)
  })

  it('asks for the cautions of its cuts', () => {
    const [crosscut, rip] = sheetSteps(parts, [
      setting('crosscut', 15, 1),
      setting('rip', 15, 1, { [first as string]: 1 }),
    ])
    expect(crosscut?.facts).toMatchObject({ sheetCut: true, crosscut: true, dust: true })
    expect(rip?.facts).toEqual({ sheetCut: true })
  })
})
