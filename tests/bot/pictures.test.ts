import { describe, expect, it } from 'vitest'
import { facePicture } from '../../src/bot/pictures.ts'
import { bracePicture, groovesPicture } from '../../src/bot/picturesOfCuts.ts'
import { inches } from '../../src/core/measure/length.ts'
import { layGrooves } from '../../src/core/panelling/grooves.ts'
import { INCHES, planOf, USUAL } from '../drawing/corpus.ts'

describe('a picture in words', () => {
  it('is sentences that each begin as sentences do', () => {
    const { alt } = facePicture(planOf(USUAL), 'end', INCHES, USUAL.kerf)
    for (const sentence of alt.split('. ')) expect(sentence).toMatch(/^[\p{Lu}\d]/u)
    expect(alt).toContain('. A brace rises from the lower left at ')
  })

  it('has slots and notches with their sizes, and which panel has the notch', () => {
    const cord = { face: 'end', width: inches(2), height: inches(1) } as const
    const spec = { ...USUAL, corner: 'halved', braces: 'none', cord } as const
    const end = facePicture(planOf(spec), 'end', INCHES, USUAL.kerf)
    expect(end.alt).toContain('2 slots 1/2 in wide, 7 1/2 in deep from the top')
    expect(end.alt).toContain('A cord notch 2 x 1 in, in one of the two')
    const low = facePicture(planOf({ ...spec, front: { height: inches(9) } }), 'end', INCHES, USUAL.kerf)
    expect(low.alt).toContain('A slot 1/2 in wide, 10 1/2 in deep from the top')
    const side = facePicture(planOf(spec), 'side', INCHES, USUAL.kerf)
    expect(side.alt).toContain('2 slots 1/2 in wide, 7 1/2 in deep from the bottom')
  })

  it('says whose brace and whose grooves they are', () => {
    const { faces } = planOf(USUAL)
    const [end, side] = faces.flatMap(({ name, opening, brace }) =>
      brace ? [bracePicture({ name, ...opening }, USUAL.width, brace, INCHES)] : [],
    )
    expect([end?.name, side?.name]).toEqual(['end-brace', 'side-brace'])
    expect(end?.alt).toMatch(/^The end brace across an opening of /u)
    const panel = { name: 'end', length: inches(24), thickness: inches(1, 2) }
    const laid = layGrooves({
      panel: panel.length,
      count: 3,
      kerf: inches(1, 8),
      thickness: panel.thickness,
      equalOver: 'panel',
    })
    if (laid.status !== 'laid') throw new Error(laid.kind)
    const picture = groovesPicture(panel, inches(1, 8), laid, INCHES)
    expect(picture.name).toBe('end-grooves')
    expect(picture.alt).toMatch(/^3 grooves across an end panel 24 in long/u)
  })
})
