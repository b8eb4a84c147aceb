import { describe, expect, it } from 'vitest'
import { inches } from '../../src/core/measure/length.ts'
import { drawSheetLayout } from '../../src/drawing/sheetLayout.ts'
import { INCHES } from './corpus.ts'
import { faultsOf } from './legible.ts'

const [KERF, SHEET] = [inches(1, 8), { length: inches(96), width: inches(48) }]

/** One part, and offcuts as wide as they are, one above the other at its right. */
function withOffcuts(...widths: readonly number[]) {
  const length = inches(30)
  const tops = widths.map((_, index) => widths.slice(0, index).reduce((sum, each) => sum + each + KERF, 0))
  const offcuts = widths.map((width, index) => ({ x: inches(60), y: tops[index] ?? 0, length, width }))
  const part = { part: 'A', turned: false, x: 0, y: 0, length: inches(59), width: inches(47) }
  const cuts = { kind: 'rest' } as const
  return drawSheetLayout(
    {
      layout: { stock: 'sheet', count: 1, placements: [part], offcuts, cuts },
      stock: SHEET,
      kerf: KERF,
      trim: 0,
      which: { number: 1, of: 1 },
    },
    INCHES,
  )
}

const textsOf = ({ shapes }: ReturnType<typeof withOffcuts>): readonly string[] =>
  shapes.flatMap((shape) => (shape.shape === 'text' ? [shape.text] : []))

describe('what is kept of a sheet', () => {
  it('has its size on it where there is room, and is named no further', () => {
    const scene = withOffcuts(inches(20))
    expect(textsOf(scene)).toContain('keep 30 x 20')
    expect(textsOf(scene).join()).not.toContain('no room')
  })

  it('has its size below where it is too narrow, each size once', () => {
    const scene = withOffcuts(inches(20), inches(3), inches(2), inches(2))
    expect(textsOf(scene)).toEqual(
      expect.arrayContaining([
        'keep 30 x 20',
        'no room for a size: keep 30 x 3',
        'no room for a size: keep 30 x 2 (2 of these)',
      ]),
    )
    expect(faultsOf(scene)).toEqual([])
  })
})
