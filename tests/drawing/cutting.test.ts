import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CutTree } from '../../src/core/cutting/problem.ts'
import { type Length, inches, millimetres } from '../../src/core/measure/length.ts'
import { layGrooves } from '../../src/core/panelling/grooves.ts'
import { ripSettings } from '../../src/core/panelling/rips.ts'
import { spaceEvenly } from '../../src/core/panelling/spacing.ts'
import { drawBoardLayouts } from '../../src/drawing/boardLayouts.ts'
import { braceOutline } from '../../src/drawing/brace.ts'
import { diagonal } from '../../src/core/panelling/diagonal.ts'
import { numberCuts } from '../../src/drawing/cuts.ts'
import { drawGrooves } from '../../src/drawing/grooves.ts'
import type { Scene } from '../../src/drawing/scene.ts'
import { drawRips } from '../../src/drawing/rips.ts'
import { drawSheetLayout } from '../../src/drawing/sheetLayout.ts'
import { drawSpacing } from '../../src/drawing/spacing.ts'
import { areaOf, overlap, textArea } from '../../src/drawing/area.ts'
import { sceneOf } from '../../src/drawing/drawing.ts'
import { cutPictures, INCHES, METRIC } from './corpus.ts'
import { faultsOf } from './legible.ts'
import { HELD, readBack } from './read.ts'

const near = (one: number | undefined, other: number) =>
  expect(Math.abs((one ?? Number.NaN) - other)).toBeLessThan(HELD)

describe('pictures of cuts, read back', () => {
  it('have strips and kerfs where the fence puts them', () => {
    const [board, strip, kerf] = [inches(11, 2), inches(1, 2), inches(1, 8)]
    const { settings } = ripSettings({ board, strip, kerf, safe: inches(2) })
    const scene = drawRips({ width: board, thickness: inches(3, 2), strip, kerf, settings }, INCHES)
    const kerfs = readBack(scene, 'kerf', 'rest')
    expect(kerfs).toHaveLength(settings.length)
    for (const [index, setting] of settings.entries()) {
      near(kerfs[index]?.x, setting)
      near(kerfs[index]?.width, kerf)
      const [piece] = readBack(scene, `strip ${index + 1}`, 'rest')
      near(piece?.x, setting + kerf)
      near(piece?.width, strip)
    }
    near(readBack(scene, 'rest', 'rest')[0]?.width, settings.at(-1) ?? 0)
  })

  it('have the middle of every groove where it was laid', () => {
    const [panel, kerf, thickness] = [inches(24), inches(1, 8), inches(1, 2)]
    const laid = layGrooves({ panel, count: 7, kerf, thickness, equalOver: 'panel' })
    if (laid.status !== 'laid') throw new Error(laid.kind)
    const scene = drawGrooves({ name: 'panel', panel, kerf, thickness, laid }, METRIC)
    const drawn = readBack(scene, 'groove', 'panel')
    expect(drawn).toHaveLength(7)
    for (const [index, { x, width }] of drawn.entries()) near(x + width / 2, laid.centres[index] ?? 0)
  })

  it('have equal pieces at their starts', () => {
    const [span, piece] = [inches(36), inches(7, 2)]
    const spaced = spaceEvenly({ span, piece, count: 6, ends: 'flush' })
    if (spaced.status !== 'spaced') throw new Error(spaced.kind)
    const drawn = readBack(drawSpacing({ span, piece, spaced }, INCHES), 'piece', 'piece')
    for (const [index, start] of spaced.starts.entries()) {
      near(drawn[index]?.x, start)
      near(drawn[index]?.width, piece)
    }
  })

  it('have both long edges of a brace a strip apart', () => {
    const size = fc.integer({ min: 200, max: 2500 }).map((count) => millimetres(count))
    const strips = fc.integer({ min: 3, max: 90 }).map((count) => millimetres(count))
    const ends = fc.constantFrom('pointed' as const, 'rails' as const, 'stiles' as const)
    fc.assert(
      fc.property(size, size, strips, ends, (width, height, strip, how) => {
        const laid = diagonal({ width, height, strip, ends: how })
        if (laid.status === 'impossible') return fc.pre(false)
        const outline = braceOutline({ opening: { width, height }, strip, ends: how, slope: laid.slope })
        const turn = (laid.slope * Math.PI) / 180
        // Distance of every corner across the strip: as wide as the strip, whichever way it ends.
        const across = outline.map(([x, y]) => y * Math.cos(turn) - x * Math.sin(turn))
        expect(Math.abs(Math.max(...across) - Math.min(...across) - strip)).toBeLessThan(10)
        const along = outline.map(([x, y]) => x * Math.cos(turn) + y * Math.sin(turn))
        expect(Math.abs(Math.max(...along) - Math.min(...along) - laid.length)).toBeLessThan(10)
      }),
    )
  })
})

describe('a brace and its opening', () => {
  it('have the height clear of the opening, however many figures it has', () => {
    for (const scene of cutPictures(METRIC).flatMap(({ name, scene }) =>
      name === 'brace' ? [sceneOf(scene)] : [],
    )) {
      const opening = scene.shapes.find(({ of }) => of === 'opening')
      if (!opening) throw new Error('no opening')
      const { left, right, top, bottom } = areaOf(opening)
      const over = scene.shapes.filter(
        (shape) =>
          shape.shape === 'text' &&
          overlap(textArea(shape), { left: left - 4, right: right + 4, top, bottom }),
      )
      expect(over).toEqual([])
    }
  })
})

const SHEET = { length: inches(96), width: inches(48) }
const KERF = inches(1, 8)

/** Two parts side by side, an offcut past them, and a rest under all. */
const LAYOUT = {
  stock: 'sheet',
  count: 2,
  placements: [
    { part: 'A', turned: false, x: 0, y: 0, length: inches(24), width: inches(15) },
    { part: 'B', turned: false, x: inches(24) + KERF, y: 0, length: inches(20), width: inches(15) },
  ],
  offcuts: [{ x: 0, y: inches(15) + KERF, length: inches(96), width: inches(33) - KERF }],
  cuts: {
    kind: 'cut',
    across: 'y',
    at: inches(15),
    first: {
      kind: 'cut',
      across: 'x',
      at: inches(24),
      first: { kind: 'part', part: 'A', turned: false },
      second: {
        kind: 'cut',
        across: 'x',
        at: inches(20),
        first: { kind: 'part', part: 'B', turned: false },
        second: { kind: 'rest' },
      },
    },
    second: { kind: 'rest' },
  },
} as const

const textsOf = ({ shapes }: Scene): readonly string[] =>
  shapes.flatMap((shape) => (shape.shape === 'text' ? [shape.text] : []))

/** Columns and rows of square parts, cut into columns first. */
function gridOf(columns: number, rows: number, side: Length): Parameters<typeof drawSheetLayout>[0] {
  const part: CutTree = { kind: 'part', part: 'A', turned: false }
  const cut = (across: 'x' | 'y', first: CutTree, second: CutTree): CutTree => ({
    kind: 'cut',
    across,
    at: side,
    first,
    second,
  })
  const repeat = (count: number, across: 'x' | 'y', one: CutTree): CutTree =>
    Array.from({ length: count }).reduce<CutTree>((rest) => cut(across, one, rest), { kind: 'rest' })
  const placements = Array.from({ length: columns * rows }, (_, index) => ({
    part: 'A',
    turned: false,
    x: (index % columns) * (side + KERF),
    y: Math.floor(index / columns) * (side + KERF),
    length: side,
    width: side,
  }))
  const cuts = repeat(columns, 'x', repeat(rows, 'y', part))
  const layout = { stock: 'sheet', count: 1, placements, offcuts: [], cuts }
  return { layout, stock: SHEET, kerf: KERF, trim: 0, which: { number: 1, of: 1 } }
}

describe('pictures of layouts, read back', () => {
  it('have every part and offcut in its place', () => {
    const asked = { layout: LAYOUT, stock: SHEET, kerf: KERF, trim: 0, which: { number: 1, of: 1 } }
    const scene = drawSheetLayout(asked, INCHES)
    for (const { part, x, y, length, width } of LAYOUT.placements) {
      const [drawn] = readBack(scene, part, 'sheet')
      near(drawn?.x, x)
      near(drawn?.y, y)
      near(drawn?.width, length)
      near(drawn?.height, width)
    }
    near(readBack(scene, 'offcut', 'sheet')[0]?.y, LAYOUT.offcuts[0].y)
    expect(faultsOf(scene)).toEqual([])
    const said = scene.shapes.flatMap((shape) => (shape.shape === 'text' ? [shape.text] : []))
    expect(said).toEqual(
      expect.arrayContaining([
        'Sheet layout, cut 2 like this',
        'A',
        '24 x 15',
        'keep 96 x 32 7/8',
        '1',
        '2',
        '3',
      ]),
    )
  })

  it('number cuts so that each piece is parted before what comes of it', () => {
    const cuts = numberCuts(LAYOUT.cuts, { x: 0, y: 0, ...SHEET }, KERF)
    expect(cuts.map(({ number, across, from, to }) => [number, across, from, to])).toEqual([
      [1, 'y', 0, inches(96)],
      [2, 'x', 0, inches(15)],
      [3, 'x', 0, inches(15)],
    ])
    expect(cuts[2]?.at).toBe(inches(24) + KERF + inches(20) + KERF / 2)
  })

  it('number the cuts of a crowded sheet where there is room, and name what is too small for its letter', () => {
    const crowded = drawSheetLayout(gridOf(8, 4, inches(11)), INCHES)
    expect(faultsOf(crowded)).toEqual([])
    const numbered = textsOf(crowded).filter((text) => /^\d+$/u.test(text) && !['96', '48'].includes(text))
    expect(new Set(numbered).size).toBe(numbered.length)
    expect(numbered.length).toBeGreaterThan(30)
    expect(textsOf(crowded)).toContain('numbers are the cuts in order, where there is room')
    const tiny = drawSheetLayout(gridOf(9, 5, inches(2)), INCHES)
    expect(faultsOf(tiny)).toEqual([])
    expect(textsOf(tiny)).toEqual(
      expect.arrayContaining(['too many cuts to number: see the cut order', 'no room for A: 2 x 2']),
    )
    expect(textsOf(crowded).join()).not.toContain('no room for')
  })

  it('have the parts of a board one after the other, a kerf between', () => {
    const parts = [
      ['C', inches(30)],
      ['D', inches(12)],
    ] as const
    const layout = { stock: 'L', count: 3, parts: ['C', 'D', 'D'], offcut: inches(40) }
    const trim = inches(1, 4)
    const scene = drawBoardLayouts(
      {
        kind: 'strip',
        layouts: [layout],
        stock: [['L', inches(96)]],
        parts,
        kerf: KERF,
        trim,
        keepable: inches(12),
      },
      INCHES,
    )
    near(readBack(scene, 'C', 'L')[0]?.x, trim)
    const [first, second] = readBack(scene, 'D', 'L')
    near(first?.x, trim + inches(30) + KERF)
    near(second?.x, trim + inches(42) + 2 * KERF)
    near(second?.width, inches(12))
    near(readBack(scene, 'offcut', 'L')[0]?.x, inches(56))
    expect(faultsOf(scene)).toEqual([])
  })

  it('turn the letter of a short part, and name what is too short even so', () => {
    const drawn = (short: Length, offcut: Length) =>
      drawBoardLayouts(
        {
          kind: 'strip',
          layouts: [{ stock: 'L', count: 1, parts: ['A', 'G4', 'G4'], offcut }],
          stock: [['L', inches(96)]],
          parts: [
            ['A', inches(60)],
            ['G4', short],
          ],
          kerf: KERF,
          trim: 0,
          keepable: inches(12),
        },
        INCHES,
      )
    const turned = drawn(inches(6), inches(20))
    expect(faultsOf(turned)).toEqual([])
    const letters = turned.shapes.filter((shape) => shape.shape === 'text' && shape.text === 'G4')
    expect(letters).toMatchObject([{ turn: -90 }, { turn: -90 }])
    expect(textsOf(turned)).toContain('hatched: keep')
    expect(textsOf(turned).join()).not.toContain('no room for')
    const tiny = drawn(inches(1), inches(4))
    expect(textsOf(tiny)).toContain('no room for G4: 1')
    expect(textsOf(tiny)).not.toContain('hatched: keep')
  })

  it('can be read however many parts there are', () => {
    const lengths = fc.array(fc.integer({ min: 5, max: 900 }), { minLength: 1, maxLength: 25 })
    fc.assert(
      fc.property(fc.array(lengths, { minLength: 1, maxLength: 14 }), (rows) => {
        const sizes = [...new Set(rows.flat())]
        const parts = sizes.map((size) => [`part ${size}`, millimetres(size)] as const)
        const long = Math.max(...rows.map((row) => row.reduce((sum, size) => sum + size + 3, 0))) + 300
        const layouts = rows.map((row) => ({
          stock: 'L',
          count: row.length,
          parts: row.map((size) => `part ${size}`),
          offcut: millimetres(200) as Length,
        }))
        const scene = drawBoardLayouts(
          {
            kind: 'board',
            layouts,
            stock: [['L', millimetres(long)]],
            parts,
            kerf: millimetres(3),
            trim: 0,
            keepable: millimetres(100),
          },
          METRIC,
        )
        expect(faultsOf(scene)).toEqual([])
      }),
      { numRuns: 40 },
    )
  })
})
