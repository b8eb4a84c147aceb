import { afterAll, describe, expect, it } from 'vitest'
import { sceneOf } from '../../src/drawing/drawing.ts'
import type { Scene } from '../../src/drawing/scene.ts'
import { createPainter } from '../../src/painting/painter.ts'
import { boxPicture } from '../../src/bot/pictures.ts'
import { INCHES, planOf, USUAL } from '../drawing/corpus.ts'

const { scene: drawing } = boxPicture(planOf(USUAL), INCHES, USUAL.kerf)
const painter = createPainter({ threads: 1 })
afterAll(() => painter.close())

describe('the painter', () => {
  it('paints a scene as a PNG that a phone takes easily, the same each time', async () => {
    const [one, other] = await Promise.all([painter.paint(drawing), painter.paint(drawing)])
    expect(Buffer.from(one).subarray(1, 4).toString('latin1')).toBe('PNG')
    expect(Buffer.from(one).readUInt32BE(16)).toBe(960)
    expect(one.length).toBeLessThan(200_000)
    expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true)
  })

  it('draws what is not yet drawn, to the same PNG', async () => {
    const painted = await painter.paint(drawing)
    expect(Buffer.from(await painter.paint(sceneOf(drawing))).equals(Buffer.from(painted))).toBe(true)
  })

  it('leaves the thread that answers free', async () => {
    let turns = 0
    const counting = setInterval(() => (turns += 1), 1)
    // Not one that it remembers.
    const scene = sceneOf(drawing)
    await painter.paint({ ...scene, height: scene.height + 1 })
    clearInterval(counting)
    expect(turns).toBeGreaterThan(2)
  })

  it('rejects what it cannot paint, and goes on', async () => {
    // As a caller's bug would be: a scene without shapes.
    const broken = { width: 100, height: 100 } as unknown as Scene
    await expect(painter.paint(broken)).rejects.toThrow()
    expect((await painter.paint(drawing)).length).toBeGreaterThan(1000)
  })

  it('paints nothing once it is closed', async () => {
    const closed = createPainter({ threads: 1 })
    await closed.close()
    await expect(closed.paint(drawing)).rejects.toThrow('the painter is closed')
  })
})
