import { describe, expect, it } from 'vitest'
import { remember } from '../../src/painting/remember.ts'

const scene = (width: number): string => JSON.stringify({ width, height: 10, shapes: [] })

/** A painter of pictures of ten bytes, that notes what it paints. */
function tenBytes(mostBytes: number) {
  const painted: number[] = []
  const paint = remember(async (picture) => {
    const { width } = JSON.parse(picture)
    painted.push(width)
    if (width < 0) throw new Error('too narrow')
    return new Uint8Array(10).fill(width)
  }, mostBytes)
  return { painted, paint }
}

describe('pictures that are remembered', () => {
  it('are painted once, also when asked for twice at once', async () => {
    const { painted, paint } = tenBytes(100)
    const pair = await Promise.all([paint(scene(1)), paint(scene(1))])
    expect(await paint(scene(1))).toEqual(new Uint8Array(10).fill(1))
    expect(pair[0]).toEqual(pair[1])
    expect(painted).toEqual([1])
  })

  it('give way where they take too much, the one asked for longest ago first', async () => {
    const { painted, paint } = tenBytes(20)
    for (const width of [1, 2, 1, 3, 1, 2]) await paint(scene(width))
    expect(painted).toEqual([1, 2, 3, 2])
  })

  it('are handed out, but not kept, where one alone takes too much', async () => {
    const { painted, paint } = tenBytes(5)
    expect(await paint(scene(1))).toHaveLength(10)
    await paint(scene(1))
    expect(painted).toEqual([1, 1])
  })

  it('are tried anew where they could not be painted', async () => {
    const { painted, paint } = tenBytes(100)
    await expect(paint(scene(-1))).rejects.toThrow('too narrow')
    await expect(paint(scene(-1))).rejects.toThrow('too narrow')
    expect(painted).toEqual([-1, -1])
  })
})
