import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { inches, millimetres, toMillimetres } from '../../src/core/measure/length.ts'
import { planSurround, type Spec } from '../../src/core/plan.ts'
import { exposedSurfaces, finishedArea } from '../../src/core/quantities/exposedSurface.ts'
import { openRoom } from '../room.ts'

const room = await openRoom()
afterAll(() => room.close())

const tenths = (low: number, high: number) =>
  fc.integer({ min: low * 10, max: high * 10 }).map((each) => each / 10)

/** A plan as it may be typed, in mm; many of them cannot be built. */
const plans = fc.record({
  length: tenths(80, 900),
  width: tenths(80, 900),
  round: fc.boolean(),
  height: tenths(60, 700),
  clearance: tenths(0, 60),
  sheet: tenths(3, 25),
  strip: tenths(3, 25),
  face: tenths(12, 60),
  corner: fc.constantFrom('captured' as const, 'cleated' as const, 'butted' as const),
  braces: fc.constantFrom('ends' as const, 'sides' as const, 'all' as const, 'none' as const),
  grooves: fc.integer({ min: 0, max: 9 }),
  fit: tenths(0, 3),
})
type Typed = typeof plans extends fc.Arbitrary<infer Value> ? Value : never

const asTyped = (plan: Typed): string =>
  [
    plan.round ? `${plan.length}mm round` : `${plan.length}mm x ${plan.width}mm`,
    `height=${plan.height}mm clearance=${plan.clearance}mm sheet=${plan.sheet}mm strip=${plan.strip}mm width=${plan.face}mm`,
    `corner=${plan.corner} braces=${plan.braces} grooves=${plan.grooves} fit=${plan.fit}mm`,
  ].join(' ')

const asSpec = (plan: Typed): Spec => ({
  object: plan.round
    ? { shape: 'round', diameter: millimetres(plan.length) }
    : { shape: 'rectangle', length: millimetres(plan.length), width: millimetres(plan.width) },
  height: millimetres(plan.height),
  clearance: millimetres(plan.clearance),
  sheet: millimetres(plan.sheet),
  strip: millimetres(plan.strip),
  width: millimetres(plan.face),
  corner: plan.corner,
  braces: plan.braces,
  grooves: plan.grooves,
  fit: millimetres(plan.fit),
  kerf: inches(1, 8),
})

const LATER = [
  'project',
  'project parts',
  'strips 2x6',
  'strips',
  'diagonal',
  'diagonal face=side cross=halving',
  'grooves count=2',
  'grooves',
  'finish',
  'sizing height=300mm',
  'project change sheet=9mm',
  'project undo',
  'project redo',
  'project change corner=cleated braces=all grooves=3',
  'project undo',
]

describe('any plan at all', () => {
  it('is kept as it is worked out or refused in a sentence, and nothing that follows goes wrong', async () => {
    let built = 0
    await fc.assert(
      fc.asyncProperty(plans, async (typed) => {
        await room.ask('project forget sure=yes')
        const worked = planSurround(asSpec(typed))
        const kept = await room.ask(`project start ${asTyped(typed)}`)
        if (!kept.ok) {
          expect(kept.kind).toBe('invalid')
          if (worked.status === 'planned') expect(kept.error).toMatch(/grooves in each/u)
          return
        }
        built += 1
        if (worked.status === 'impossible') throw new Error(`kept, but ${worked.obstacle.kind}`)
        const { figures } = kept.reply
        expect(figures).toMatchObject({
          insideLength: toMillimetres(worked.inside.length),
          outsideWidth: toMillimetres(worked.outside.width),
          sideRailLength: toMillimetres(worked.sideRailLength),
          cornerStileLength: toMillimetres(worked.cornerStileLength),
          lip: toMillimetres(worked.lip),
          flatStack: toMillimetres(worked.flatStack),
          parts: worked.parts.map(({ label, count, length }) => ({
            label,
            count,
            length: toMillimetres(length),
          })),
        })
        for (const line of LATER) {
          const answer = await room.ask(line)
          if (!answer.ok) expect(answer.kind, `${line}: ${answer.error}`).toBe('invalid')
          if (answer.ok && line === 'project') expect(answer.reply.figures).toEqual(figures)
          if (answer.ok && line === 'finish')
            expect(answer.reply.figures.area).toBeCloseTo(finishedArea(exposedSurfaces(worked), 'all'), 3)
          if (answer.ok && line === 'grooves')
            expect(answer.reply.figures.centres).toHaveLength(typed.grooves)
        }
        expect(room.logged).toEqual([])
      }),
      { numRuns: 40 },
    )
    expect(built).toBeGreaterThan(5)
  })
})
