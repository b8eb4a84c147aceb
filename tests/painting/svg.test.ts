import { describe, expect, it } from 'vitest'
import type { Scene } from '../../src/drawing/scene.ts'
import { writeSvg } from '../../src/painting/svg.ts'

const scene = (shapes: Scene['shapes']): Scene => ({ width: 100, height: 50, shapes })

describe('a scene as SVG', () => {
  it('has its size, a ground of paper and the open font', () => {
    const svg = writeSvg(scene([]))
    expect(svg).toContain('viewBox="0 0 100 50"')
    expect(svg).toContain('<rect width="100" height="50" fill="#ffffff"/>')
    expect(svg).toContain('font-family="DejaVu Sans"')
  })

  it('keeps what is written from being read as markup', () => {
    const svg = writeSvg(scene([{ shape: 'text', at: [1, 2], text: '<A> & "B"', size: 9 }]))
    expect(svg).toContain('&lt;A&gt; &amp; &quot;B&quot;')
  })

  it('holds numbers to a thousandth, so that every machine writes the same', () => {
    const svg = writeSvg(
      scene([
        {
          shape: 'line',
          points: [
            [1 / 3, 2 / 3],
            [-0.0001, 5],
          ],
          stroke: 'thin',
        },
      ]),
    )
    expect(svg).toContain('points="0.333,0.667 0,5"')
  })

  it('brings only the patterns that are used', () => {
    const square = [
      [0, 0],
      [1, 0],
      [1, 1],
    ] as const
    const svg = writeSvg(scene([{ shape: 'polygon', points: square, fill: 'hatched' }]))
    expect([...svg.matchAll(/<pattern id="(\w+)"/gu)].map((match) => match[1])).toEqual(['hatch'])
    expect(svg).toContain('fill="url(#hatch)"')
  })

  it('turns a text about its foot', () => {
    const svg = writeSvg(scene([{ shape: 'text', at: [10, 20], text: 'A', size: 9, turn: -90, rim: false }]))
    expect(svg).toContain('transform="rotate(-90 10 20)"')
    expect(svg).not.toContain('paint-order')
  })
})
