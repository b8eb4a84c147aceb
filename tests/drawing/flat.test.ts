import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flatPictures } from '../../src/bot/picturesOfFlats.ts'
import { inches, type Length, millimetres } from '../../src/core/measure/length.ts'
import { type Plan, planSurround } from '../../src/core/plan.ts'
import { drawFlat } from '../../src/drawing/flat.ts'
import { placesWords, stepsOf } from '../../src/drawing/flatLines.ts'
import type { Text } from '../../src/drawing/scene.ts'
import { richSpecs } from '../core/panelling/specs.ts'
import { INCHES, METRIC, planOf, USUAL } from './corpus.ts'
import { HELD, isNear, readBack } from './read.ts'

const texts = (scene: ReturnType<typeof drawFlat>): readonly string[] =>
  scene.shapes.filter((shape): shape is Text => shape.shape === 'text').map(({ text }) => text)

const panelOf = (plan: Plan, name: 'lid' | 'bottom') => {
  const panel = plan.parts.find((part) => part.carriedBy === name && part.name.endsWith('panel'))
  if (!panel) throw new Error(`no ${name}`)
  return panel
}

const DRAINED = planOf({
  ...USUAL,
  bottom: { on: 'feet', drain: { diameter: inches(1, 2), spacing: inches(6) } },
})
const NOTCHED = planOf({ ...USUAL, lid: { kind: 'inset', handle: 'notch' }, bottom: { on: 'cleats' } })
const COVERED = planOf({ ...USUAL, lid: { kind: 'overlapping', handle: 'strip' } })

describe('a lid or a bottom from above, read back', () => {
  it('has every hole and notch where the plan has it, the front edge below', () => {
    fc.assert(
      fc.property(richSpecs, fc.constantFrom('lid' as const, 'bottom' as const), (spec, name) => {
        const plan = planSurround(spec)
        fc.pre(plan.status === 'planned' && plan[name] !== undefined)
        if (plan.status !== 'planned') return
        const panel = panelOf(plan, name)
        const scene = drawFlat({ plan, name }, METRIC)
        const [own] = readBack(scene, panel.name, panel.name)
        expect(own && isNear(own, { x: 0, y: 0, width: panel.length, height: panel.width })).toBe(true)
        for (const { kind, round, size, at } of panel.cutouts ?? []) {
          const drawn = readBack(scene, kind, panel.name)
          const wanted = at.map(({ along, across }) => ({
            x: round ? along - size.along / 2 : along,
            y: panel.width - across - (round ? size.across / 2 : size.across),
            width: size.along,
            height: size.across,
          }))
          expect(drawn).toHaveLength(wanted.length)
          expect(wanted.filter((one) => !drawn.some((other) => isNear(one, other)))).toEqual([])
        }
      }),
      { numRuns: 100 },
    )
  })

  it('has feet where they start, across the whole panel', () => {
    const scene = drawFlat({ plan: DRAINED, name: 'bottom' }, INCHES)
    const starts = DRAINED.bottom?.feet?.starts ?? []
    const feet = readBack(scene, 'foot', 'bottom panel')
    expect(starts.length).toBeGreaterThan(2)
    expect(feet).toHaveLength(starts.length)
    for (const [index, x] of starts.entries())
      expect(
        feet[index] &&
          isNear(feet[index], { x, y: 0, width: USUAL.width, height: panelOf(DRAINED, 'bottom').width }),
      ).toBe(true)
  })

  it('has as much of ledgers and cleats as it lies on: their thickness less the gap', () => {
    // Strips 1/2 in, a gap of 1/16 in.
    const held = inches(7, 16)
    for (const [name, strip] of [
      ['lid', 'end ledger'],
      ['bottom', 'end cleat'],
    ] as const) {
      const scene = drawFlat({ plan: NOTCHED, name }, INCHES)
      const { name: panel, length } = panelOf(NOTCHED, name)
      const drawn = readBack(scene, strip, panel)
      expect(drawn.map(({ width }) => Math.abs(width - held) < HELD)).toEqual([true, true])
      expect(drawn.map(({ x }) => Math.abs(x) < HELD || Math.abs(x - (length - held)) < HELD)).toEqual([
        true,
        true,
      ])
      expect(texts(scene)).toContain('7/16')
    }
  })

  it('has the handle in the middle of its lid, and the rim all round', () => {
    const scene = drawFlat({ plan: COVERED, name: 'lid' }, INCHES)
    const { length, width } = panelOf(COVERED, 'lid')
    const [handle] = readBack(scene, 'handle', 'cover panel')
    const long = COVERED.lid?.handle ?? 0
    const middle = { x: (length - long) / 2, y: (width - USUAL.strip) / 2, width: long, height: USUAL.strip }
    expect(handle && isNear(handle, middle)).toBe(true)
    expect(readBack(scene, 'lid rim', 'cover panel')).toHaveLength(2)
    expect(readBack(scene, 'lid rim end', 'cover panel')).toHaveLength(2)
    expect(texts(scene)).toEqual(expect.arrayContaining(['6', '1/2', 'rim 1 1/2 deep']))
  })
})

describe('the sizes of a lid or a bottom', () => {
  it('are how far the first hole is from end and edge, how far on the next, and where all are', () => {
    const [first, second] = [...new Set(DRAINED.bottom?.drain?.at.map(({ along }) => along))]
    const row = DRAINED.bottom?.drain?.at[0]?.across
    if (first === undefined || second === undefined || row === undefined) throw new Error('no holes')
    const shown = texts(drawFlat({ plan: DRAINED, name: 'bottom' }, INCHES))
    expect(shown).toEqual(
      expect.arrayContaining([
        INCHES.mark(first),
        INCHES.mark((second - first) as Length),
        INCHES.mark(row),
        '1 1/2',
      ]),
    )
    expect(shown.join(' ')).toContain('12 holes 1/2 across; middles from the left end: 4 1/16, 9 1/8,')
    expect(shown.join(' ')).toContain('feet from the left end: 0, 11 11/16 and 23 3/8')
  })

  it('have no line at the foot that begins with the fraction of a number in the line above', () => {
    const shown = texts(drawFlat({ plan: DRAINED, name: 'bottom' }, INCHES))
    expect(shown.filter((text) => /^\d+\/\d+\D/u.test(text))).toEqual([])
  })

  it('are where a finger notch begins, how long and how deep it is', () => {
    const [notch] = panelOf(NOTCHED, 'lid').cutouts ?? []
    const place = notch?.at[0]
    if (!notch || !place) throw new Error('no notch')
    const cover = (length: Length): string => INCHES.mark(length, 'cover', true)
    expect(texts(drawFlat({ plan: NOTCHED, name: 'lid' }, INCHES))).toEqual(
      expect.arrayContaining([INCHES.mark(place.along), cover(notch.size.along), cover(notch.size.across)]),
    )
  })

  it('name each place of a few, and tell many by their steps', () => {
    const say = (length: Length): string => String(length / 1_000_000)
    const places = (...values: readonly number[]) => values.map((value) => millimetres(value))
    expect(placesWords(places(30), say)).toBe('30')
    expect(placesWords(places(30, 90, 150), say)).toBe('30, 90 and 150')
    const bays = places(30, 90, 180, 240, 330, 390, 480, 540, 630, 690)
    expect(stepsOf(bays)).toEqual([places(30, 90), places(90, 180)])
    expect(placesWords(bays, say)).toBe('30, then every 60 (over a foot 90), the last 690')
  })
})

describe('a lid or a bottom in words', () => {
  it('has the numbers of the picture, in sentences', () => {
    const [bottom] = flatPictures(DRAINED, INCHES)
    expect(bottom?.alt).toBe(
      'The bottom from above, 24 7/8 x 17 7/8 in. 3 feet 1 1/2 in wide run across under it; from the left end they begin at 0, 11 11/16 and 23 3/8 in. 12 drain holes 1/2 in across, their middles from the left end at 4 1/16, 9 1/8, 15 3/4 and 20 13/16 in and from the front edge at 3, 8 15/16 and 14 7/8 in.',
    )
    const [lid] = flatPictures(NOTCHED, INCHES)
    expect(lid?.alt).toContain('A finger notch 4 x 1 1/4 in deep in the front edge, 10 7/16 in from the left')
    expect(flatPictures(planOf(USUAL), INCHES)).toEqual([])
  })
})
