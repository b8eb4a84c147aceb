import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { panelGrooves } from '../../src/bot/plannedGrooves.ts'
import { inches } from '../../src/core/measure/length.ts'
import { planSurround } from '../../src/core/plan.ts'
import { drawCorner } from '../../src/drawing/corner.ts'
import { drawFace } from '../../src/drawing/face.ts'
import type { Text } from '../../src/drawing/scene.ts'
import { specs } from '../core/panelling/specs.ts'
import { EXTREMES, INCHES, METRIC, planOf, USUAL } from './corpus.ts'
import { HELD, isNear, readBack } from './read.ts'

const texts = (scene: ReturnType<typeof drawFace>): readonly string[] =>
  scene.shapes.filter((shape): shape is Text => shape.shape === 'text').map(({ text }) => text)

describe('a panel from outside', () => {
  it('has its frame where the plan has it', () => {
    fc.assert(
      fc.property(specs, fc.constantFrom('end' as const, 'side' as const), (spec, name) => {
        const plan = planSurround(spec)
        if (plan.status === 'impossible') return fc.pre(false)
        const scene = drawFace({ plan, name }, METRIC)
        const face = plan.faces[name === 'end' ? 0 : 1]
        const { width, height } = spec
        const rails = readBack(scene, `${name} rail`, `${name} rail`)
        const rail = { x: 0, y: 0, width: face.shows, height: width }
        expect(rails.map((each, index) => isNear(each, { ...rail, y: index * (height - width) }))).toEqual([
          true,
          true,
        ])
        const stile =
          name === 'end' ? 'end stile' : spec.corner === 'captured' ? 'corner stile' : 'side stile'
        const long = name === 'end' ? plan.endStileLength : plan.cornerStileLength
        const [left, right] = readBack(scene, stile, `${name} rail`)
        const upright = { x: 0, y: (height - long) / 2, width, height: long }
        expect(left && isNear(left, upright)).toBe(true)
        expect(right && isNear(right, { ...upright, x: face.shows - width })).toBe(true)
      }),
      { numRuns: 60 },
    )
  })

  it('has every groove where the fence puts it', () => {
    const plan = planOf({ ...USUAL, grooves: 7, braces: 'none' })
    for (const { face: name, laid } of panelGrooves(plan, { kerf: USUAL.kerf })) {
      if (laid.status !== 'laid') throw new Error(laid.kind)
      const face = plan.faces.find((each) => each?.name === name)
      if (!face) throw new Error(name)
      const scene = drawFace({ plan, name, grooves: laid.centres }, INCHES)
      const start = (face.shows - face.panel) / 2
      const drawn = readBack(scene, 'groove', `${name} rail`).map(({ x }) => x - start)
      expect(drawn).toHaveLength(7)
      for (const [index, x] of drawn.entries())
        expect(Math.abs(x - (laid.centres[index] ?? 0))).toBeLessThan(HELD)
    }
  })

  it('has its brace from corner to corner of the opening', () => {
    const plan = planOf(USUAL)
    for (const face of plan.faces.flatMap((each) => each ?? [])) {
      const scene = drawFace({ plan, name: face.name }, INCHES)
      const [brace] = readBack(scene, `${face.name} brace`, `${face.name} rail`)
      const { width, height } = face.opening
      const inner = { x: USUAL.width, y: USUAL.width, width, height }
      expect(brace && isNear(brace, inner)).toBe(true)
    }
  })

  it('shows the sizes that the parts are cut to, in the units of whoever asked', () => {
    const plan = planOf({ ...USUAL, braces: 'none' })
    const scene = drawFace({ plan, name: 'side' }, INCHES)
    expect(texts(scene)).toEqual(
      expect.arrayContaining([
        INCHES.mark(plan.sideRailLength, 'into'),
        INCHES.mark(plan.cornerStileLength, 'into'),
        '15',
        '1 1/2',
        'sizes in inches',
      ]),
    )
    expect(texts(drawFace({ plan, name: 'side' }, METRIC))).toEqual(
      expect.arrayContaining(['381', METRIC.mark(plan.sideRailLength, 'into'), 'sizes in mm']),
    )
  })

  it('names every part of the frame by its letter in the list', () => {
    for (const spec of [USUAL, ...EXTREMES]) {
      const plan = planOf(spec)
      for (const face of plan.faces.flatMap((each) => each ?? [])) {
        const shown = texts(drawFace({ plan, name: face.name }, INCHES))
        const own = plan.parts.filter(({ name }) =>
          [`${face.name} panel`, `${face.name} rail`, `${face.name} brace`].includes(name),
        )
        expect(own.length).toBeGreaterThan(1)
        for (const { label, name } of own) {
          expect(shown.filter((text) => text === label).length).toBeGreaterThan(1)
          expect(shown).toContain(name)
        }
      }
    }
  })

  it('is the one with the notch where the other has none', () => {
    const cord = { face: 'end', width: inches(2), height: inches(1) } as const
    const shown = texts(drawFace({ plan: planOf({ ...USUAL, braces: 'none', cord }), name: 'end' }, INCHES))
    expect(shown[shown.length - 1]).toBe('sizes in inches')
    expect(shown).toContain('End panel with the notch')
    expect(shown).toContain('notch 2 x 1; the other panel has none')
    expect(shown.join()).not.toContain('2 of these')
  })

  it('has the depth, the width and the place of its slots', () => {
    // A front 9 in high in a box of 15 in: the slots of an end go down to half of each, 4 1/2 and 7 1/2 in from the floor.
    const plan = planOf({ ...USUAL, corner: 'halved', braces: 'none', front: { height: inches(9) } })
    const end = texts(drawFace({ plan, name: 'end' }, INCHES))
    expect(end).toEqual(expect.arrayContaining(['10 1/2', '7 1/2', 'slots 1/2 wide']))
    const side = texts(drawFace({ plan, name: 'side' }, METRIC))
    const [slot] = plan.parts.find(({ name }) => name === 'side panel')?.cutouts ?? []
    const from = slot?.at[0]?.along
    if (from === undefined) throw new Error('no slot')
    expect(side).toEqual(expect.arrayContaining(['190.5', METRIC.mark(from), 'slots 12.7 wide']))
  })

  it('gives what stock measures as the answer in words does', () => {
    const plan = planOf({ ...USUAL, braces: 'none' })
    expect(texts(drawFace({ plan, name: 'end' }, METRIC))).toContain('38.1')
    // 15/32 in is 11.90625 mm, which no tape has a mark for.
    expect(texts(drawCorner({ plan }, METRIC))).toEqual(expect.arrayContaining(['11.91', '12.7', '38.1']))
  })
})
