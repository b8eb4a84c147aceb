import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches } from '../../../src/core/measure/length.ts'
import { layGrooves } from '../../../src/core/panelling/grooves.ts'
import { type Plan, planSurround } from '../../../src/core/plan.ts'
import { buildSteps } from '../../../src/core/steps/buildSteps.ts'
import { isGluedUp } from '../../../src/core/steps/closing.ts'
import { STAGES, type Step } from '../../../src/core/steps/step.ts'
import { richSpecs, specs } from '../panelling/specs.ts'
import { grid, planOf, SAW, stepsOf } from './grid.ts'

const at = (steps: readonly Step[], id: string): number => steps.findIndex((step) => step.id === id)
const find = (steps: readonly Step[], id: string): Step => {
  const step = steps[at(steps, id)]
  if (!step) throw new Error(`no step ${id} among ${steps.map((each) => each.id).join(', ')}`)
  return step
}

/** Whatever can be said of the steps of any plan at all; a sentence for each thing that is wrong. */
function wrongWith(plan: Plan, steps: readonly Step[]): readonly string[] {
  const wrong: string[] = []
  const ids = steps.map(({ id }) => id)
  if (new Set(ids).size !== ids.length) wrong.push('two steps have one name')
  const cut = steps.flatMap(({ cuts }) => cuts).sort()
  const labels = plan.parts.map(({ label }) => label).sort()
  if (cut.join() !== labels.join()) wrong.push(`cut: ${cut.join()}; parts: ${labels.join()}`)
  const cutAt = new Map(steps.flatMap(({ cuts }, index) => cuts.map((label) => [label, index] as const)))
  const stageAt = (stage: Step['stage']) => steps.findIndex((step) => step.stage === stage)
  steps.forEach(({ id, stage, parts, settings, work }, index) => {
    const early = parts.filter(({ label }) => (cutAt.get(label) ?? Number.POSITIVE_INFINITY) > index)
    if (!['break down', 'rip'].includes(stage) && early.length > 0)
      wrong.push(`${id} has ${early.map(({ label }) => label).join()} in hand before it is cut`)
    if (settings.some(({ length, degrees }) => !((length ?? degrees ?? 0) >= 0)))
      wrong.push(`${id}: no number`)
    if (!(work > 0)) wrong.push(`${id}: no work`)
  })
  const panelsCut = Math.max(
    ...plan.parts.flatMap((part) => (part.material === 'sheet' ? [cutAt.get(part.label) ?? 0] : [])),
  )
  for (const stage of ['groove', 'cut out', 'frame'] as const)
    if (stageAt(stage) >= 0 && stageAt(stage) < panelsCut) wrong.push(`${stage} before the panels are cut`)
  const fixed = Math.max(
    ...steps.flatMap(({ stage }, index) =>
      ['groove', 'cut out', 'frame', 'fit', 'brace'].includes(stage) ? [index] : [],
    ),
  )
  if (stageAt('dry fit') < fixed) wrong.push('a dry fit before all is fixed')
  if (stageAt('mark') < stageAt('dry fit')) wrong.push('marked before the dry fit')
  const [finish, assemble] = [stageAt('finish'), stageAt('assemble')]
  if (isGluedUp(plan) ? finish < assemble : assemble < finish) wrong.push('finished at the wrong end')
  if (stageAt('store flat') >= 0 === isGluedUp(plan)) wrong.push('stored flat though glued, or not')
  return wrong
}

describe('the steps of every plan of a grid', () => {
  it.each(grid)('cut each part once and keep their order: %s', (_, plan) => {
    expect(wrongWith(plan, buildSteps(plan, SAW))).toEqual([])
  })

  it('do so for any plan', () => {
    fc.assert(
      fc.property(fc.oneof(specs, richSpecs), (spec) => {
        const plan = planSurround(spec)
        if (plan.status === 'impossible') return
        expect(wrongWith(plan, buildSteps(plan, { safe: inches(2) }))).toEqual([])
      }),
      { numRuns: 200 },
    )
  })

  it('are the same for the same plan, and stages come in their order but for glue and finish', () => {
    for (const [, plan] of grid.slice(0, 20)) {
      const steps = buildSteps(plan, SAW)
      expect(buildSteps(plan, SAW)).toEqual(steps)
      if (isGluedUp(plan)) continue
      const places = steps.map(({ stage }) => STAGES.indexOf(stage))
      expect(places).toEqual(places.toSorted((a, b) => a - b))
    }
  })
})

describe('the saw settings', () => {
  it('of panels: each width once as a fence, each length as a stop', () => {
    const steps = stepsOf()
    expect(find(steps, 'break down sheets').settings).toEqual([{ what: 'rip fence', length: inches(15) }])
    // Inside 19 x 15 in; the ends cover the edges of both sides.
    expect(find(steps, 'cut side panel').settings).toEqual([{ what: 'stop', length: inches(19) }])
    expect(find(steps, 'cut end panel').settings).toEqual([{ what: 'stop', length: inches(16) }])
  })

  it('of strips: 3 1/2 less 5/8 in each time, while 2 in stay at the fence; or the strip where no board is known', () => {
    const fences = (steps: readonly Step[]) => find(steps, 'rip strips').settings.map(({ length }) => length)
    expect(fences(stepsOf())).toEqual([inches(23, 8), inches(9, 4)])
    expect(fences(stepsOf({}, { safe: inches(2) }))).toEqual([inches(1, 2)])
    expect(fences(stepsOf({}, { board: inches(2), safe: inches(2) }))).toEqual([inches(1, 2)])
  })

  it('of strips to length: longest first, and the stop that stays is told', () => {
    const steps = stepsOf({ corner: 'cleated', width: inches(3, 2) })
    const stops = steps
      .filter(({ stage }) => stage === 'crosscut')
      .map(({ settings }) => settings[0]?.length ?? 0)
    expect(stops.length).toBeGreaterThan(3)
    expect(stops).toEqual(stops.toSorted((a, b) => b - a))
    expect(find(steps, 'crosscut side stile').how).toBe('the stop stays where it was for the end stiles')
  })

  it('of grooves: those of the groove sums, depth first', () => {
    const plan = planOf({ grooves: 3 })
    const { panel, covered } = plan.faces[1]
    const laid = layGrooves({
      panel,
      count: 3,
      kerf: plan.spec.kerf,
      thickness: plan.spec.sheet,
      equalOver: 'between stiles',
      stile: covered,
    })
    if (laid.status === 'impossible') throw new Error('three grooves go')
    expect(find(buildSteps(plan, SAW), 'groove side panel').settings).toEqual([
      { what: 'blade height', length: laid.depth },
      ...laid.settings.map(({ fence }) => ({ what: 'groove fence', length: fence })),
    ])
  })

  it('of braces: the angle from square, then the blank', () => {
    const plan = planOf({ braces: 'all' })
    for (const { name, brace } of plan.faces)
      expect(find(buildSteps(plan, SAW), `brace ${name}`).settings).toEqual([
        { what: 'saw angle', degrees: brace?.saw },
        { what: 'tip to tip', length: brace?.length },
      ])
  })
})

describe('what to measure at the dry fit', () => {
  const checks = (changes: Parameters<typeof planOf>[0]) =>
    new Map(find(stepsOf(changes), 'dry fit').settings.map(({ what, ...rest }) => [what, rest]))

  it('is inside, diagonals, thickness, lip, gap and brace angle', () => {
    const found = checks({ braces: 'ends' })
    expect([...found.keys()]).toEqual([
      'inside length',
      'inside width',
      'end diagonals',
      'side diagonals',
      'panel thickness',
      'strip thickness',
      'lip',
      'gap at each end of a corner stile',
      'end brace, saw angle',
    ])
    expect(found.get('inside length')).toEqual({ length: inches(19) })
    expect(found.get('lip')).toEqual({ length: inches(1, 2) })
    expect(found.get('gap at each end of a corner stile')).toEqual({ length: inches(1, 32) })
  })

  it('lets diagonals differ by 1/16 in on 45 in (fair cabinet work)', () => {
    // The side face is 21 x 15 in from edge to edge: captured rails overhang by 1 in at each end.
    const side = checks({}).get('side diagonals')
    expect((side?.length ?? 0) / inches(1)).toBeCloseTo(Math.hypot(21, 15), 6)
    expect((side?.within ?? 0) / inches(1)).toBeCloseTo(Math.hypot(21, 15) / 45 / 16, 6)
  })

  it('has no lip and no gap where there is none', () => {
    const found = checks({ corner: 'butted' })
    expect(found.has('lip')).toBe(false)
    expect(found.has('gap at each end of a corner stile')).toBe(false)
  })
})

describe('corners', () => {
  it('that are glued for good are glued before they are finished, and never stored flat', () => {
    const ids = stepsOf({ corner: 'butted' }).map(({ id }) => id)
    expect(ids.slice(-4)).toEqual(['dry fit', 'mark', 'assemble', 'finish'])
  })

  it.each(['captured', 'cleated', 'halved', 'bracketed'] as const)(
    'that come apart are finished first and stored flat at the end: %s',
    (corner) => {
      const ids = stepsOf({ corner }).map(({ id }) => id)
      expect(ids.slice(-5)).toEqual(['dry fit', 'mark', 'finish', 'assemble', 'store flat'])
    },
  )

  it('that are captured have their stiles fitted once the frames are there', () => {
    const steps = stepsOf()
    expect(at(steps, 'crosscut corner stile')).toBe(-1)
    expect(at(steps, 'fit corner stile')).toBeGreaterThan(at(steps, 'frame side'))
    expect(find(steps, 'fit corner stile').settings[0]).toEqual({
      what: 'stop',
      length: planOf({}).cornerStileLength,
    })
  })
})
