import { describe, expect, it } from 'vitest'
import { cornerPicture } from '../../src/bot/pictures.ts'
import { inches, millimetres } from '../../src/core/measure/length.ts'
import type { Spec } from '../../src/core/plan.ts'
import { placeBrackets } from '../../src/core/plan/hardware.ts'
import { drawCorner } from '../../src/drawing/corner.ts'
import type { Scene } from '../../src/drawing/scene.ts'
import { INCHES, planOf, screwOf, USUAL } from './corpus.ts'
import { HELD, isNear, readBack } from './read.ts'

const textsOf = ({ shapes }: Scene): string =>
  shapes.flatMap((shape) => (shape.shape === 'text' ? [shape.text] : [])).join(' ')

const cornerOf = (change: Partial<Spec>) => {
  const plan = planOf({ ...USUAL, braces: 'none', ...change })
  const screw = screwOf(plan)
  return {
    plan,
    screw,
    scene: drawCorner({ plan, screw }, INCHES),
    alt: cornerPicture(plan, INCHES, screw).alt,
  }
}

const near = (one: number | undefined, other: number) =>
  expect(Math.abs((one ?? Number.NaN) - other)).toBeLessThan(HELD)

describe('a cleated corner from above', () => {
  const { screw, scene, alt } = cornerOf({ corner: 'cleated', strip: inches(3, 4) })

  it('has the screw as long as it is sold, from outside of the end panel into the middle of the block', () => {
    const [block] = readBack(scene, 'corner block', 'end panel')
    const [drawn] = readBack(scene, 'screw', 'end panel')
    if (!screw || !block || !drawn) throw new Error('no screw')
    // The panel's outer face is where it is measured from: the stile does not reach so far in.
    near(drawn.x, 0)
    near(drawn.width, screw.length)
    near(drawn.y + drawn.height / 2, block.y + block.height / 2)
    near(block.width, USUAL.width)
    // A tip inside the block.
    expect(drawn.x + drawn.width).toBeLessThan(block.x + block.width)
  })

  it('gives the length of the screw and of the block, and the width of the block', () => {
    expect(textsOf(scene)).toContain('screw 1 1/4')
    expect(textsOf(scene)).toContain('block 1 1/2')
    expect(textsOf(scene)).toContain('corner block, 12 long')
    expect(textsOf(scene)).toContain('3 screws #6 x 1 1/4 in each block, through the end panel')
    expect(alt).toContain('. A corner block 12 in long stands in the corner against both panels. ')
    expect(alt).toContain('3 screws #6 x 1 1/4 in in the block, driven through the end panel')
  })

  it('has a screw from the face of the stile where that covers the block', () => {
    const covered = cornerOf({ corner: 'cleated', width: inches(5, 2), strip: inches(1) })
    const [stile] = readBack(covered.scene, 'end stile', 'end stile')
    const [drawn] = readBack(covered.scene, 'screw', 'end stile')
    if (!covered.screw || !stile || !drawn) throw new Error('no screw')
    near(drawn.x, stile.x)
    near(drawn.width, covered.screw.length)
    expect(textsOf(covered.scene)).toContain('through the end stile and panel')
  })

  it('says so where no screw holds', () => {
    const thin = cornerOf({ corner: 'cleated', strip: millimetres(6) })
    expect(thin.screw).toBeUndefined()
    expect(readBack(thin.scene, 'corner block', 'corner block')).toHaveLength(1)
    expect(thin.scene.shapes.filter(({ of }) => of === 'screw')).toEqual([])
    expect(textsOf(thin.scene)).toContain('no screw that is sold holds here')
    expect(thin.alt).toContain('No screw that is sold holds here')
  })
})

describe('a bracketed corner from above', () => {
  const { screw, scene, alt } = cornerOf({ corner: 'bracketed' })

  it('has a bracket with legs as long as a rail is wide, in the corner, and the rails behind', () => {
    const [side] = readBack(scene, 'side panel', 'side panel')
    const [bracket] = readBack(scene, 'corner bracket', 'side panel')
    if (!side || !bracket) throw new Error('no bracket')
    const leg = USUAL.width
    expect(isNear(bracket, { x: 0, y: -leg, width: leg, height: leg })).toBe(true)
    expect(readBack(scene, 'side rail', 'side rail')).toHaveLength(1)
    expect(readBack(scene, 'end rail', 'end rail')).toHaveLength(1)
  })

  it('has two screws in each leg, from the inner face of 2 mm of steel', () => {
    const drawn = readBack(scene, 'screw', 'side panel')
    if (!screw) throw new Error('no screw')
    const down = drawn.filter(({ width, height }) => height > width)
    expect([drawn.length, down.length]).toEqual([4, 2])
    for (const one of down) {
      near(one.y, -millimetres(2))
      near(one.height, screw.length)
    }
    for (const one of drawn.filter((each) => !down.includes(each))) {
      near(one.x + one.width, millimetres(2))
      near(one.width, screw.length)
    }
  })

  it('gives the length of leg and screw', () => {
    expect(textsOf(scene)).toContain('Corner from above, cut at a bracket')
    expect(textsOf(scene)).toContain('leg 1 1/2')
    expect(textsOf(scene)).toContain('screw 5/8')
    expect(textsOf(scene)).toContain('2 screws #4 x 5/8 in each leg, from inside')
    expect(alt).toContain(
      'A steel bracket with legs 1 1/2 in long stands inside the corner, one near each rail',
    )
  })

  it('is cut above a bottom, where stiles and no rails are behind', () => {
    const { plan, scene: raised } = cornerOf({
      corner: 'bracketed',
      bottom: { on: 'cleats' },
      sheet: inches(3, 4),
    })
    expect(readBack(raised, 'side stile', 'side stile')).toHaveLength(1)
    expect(raised.shapes.filter(({ of }) => of === 'side rail')).toEqual([])
    // On cleats 1 1/2 in high lies a bottom of 3/4 in.
    expect(placeBrackets(plan.spec, plan.panelHeight)).toEqual({
      leg: inches(3, 2),
      feet: [inches(9, 4), inches(27, 2)],
    })
  })
})

describe('other corners', () => {
  it('have neither screws nor brackets', () => {
    for (const corner of ['captured', 'butted', 'halved'] as const) {
      const { screw, scene } = cornerOf({ corner })
      expect(screw).toBeUndefined()
      expect(scene.shapes.filter(({ of }) => of === 'screw' || of === 'corner bracket')).toEqual([])
      expect(textsOf(scene)).not.toContain('screw')
    }
  })
})
