import { describe, expect, it } from 'vitest'
import { type Drawable, sceneOf } from '../../src/drawing/drawing.ts'
import { openRoom } from '../room.ts'
import { cutPictures, EXTREMES, INCHES, METRIC, planOf, planPictures, USUAL } from './corpus.ts'

const turned = (drawable: Drawable): Drawable => JSON.parse(JSON.stringify(drawable))

const kindsOf = (drawn: readonly Drawable[]): readonly string[] =>
  [...new Set(drawn.map((each) => ('draw' in each ? each.draw : 'drawn')))].sort()

describe('what a picture is drawn from', () => {
  const shown = [INCHES, METRIC].flatMap((show) => [
    ...[USUAL, ...EXTREMES].flatMap((spec) => planPictures(planOf(spec), show)),
    ...cutPictures(show),
  ])

  it('is the same scene after a turn through JSON', () => {
    for (const { scene } of shown) expect(sceneOf(turned(scene))).toEqual(sceneOf(scene))
    const kinds = ['box', 'brace', 'corner', 'face', 'flat', 'gap', 'grooves', 'rips', 'spacing', 'square']
    expect(kindsOf(shown.map(({ scene }) => scene))).toEqual(kinds)
  })

  it('is so for layouts', async () => {
    const room = await openRoom()
    const lines = ['layout most 12in x 5in from=2ft x 4ft', 'layout most 11 13/16in from=2x4x8']
    const replies = await Promise.all(lines.map((line) => room.reply(line)))
    await room.close()
    const scenes = replies.flatMap(({ pictures = [] }) => pictures.map(({ scene }) => scene))
    for (const scene of scenes) expect(sceneOf(turned(scene))).toEqual(sceneOf(scene))
    expect(kindsOf(scenes)).toEqual(['boards', 'sheet'])
  })
})
