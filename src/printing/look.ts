import type { Facing, Fill, Polygon, Stroke, Text } from '../drawing/scene.ts'
import type { PatternName } from './patterns.ts'

interface Pen {
  readonly colour: string
  readonly width: number
  readonly dashes?: readonly [number, number]
}

const INK = '#000000'

/** How each stroke is drawn on a page 1000 units wide: black, told apart by width and dashes alone. */
export const PENS: Readonly<Record<Stroke, Pen>> = {
  outline: { colour: INK, width: 3 },
  thin: { colour: INK, width: 1.8 },
  dashed: { colour: INK, width: 2, dashes: [12, 8] },
  dimension: { colour: INK, width: 1.8 },
  groove: { colour: INK, width: 2.2 },
  cut: { colour: INK, width: 4 },
  pointer: { colour: INK, width: 1.5 },
}

/** A grey, and a pattern over it. */
export interface Filling {
  readonly paper: string
  readonly pattern?: PatternName
  readonly ink: string
}

const plain = (paper: string): Filling => ({ paper, ink: INK })

const FILLS: Readonly<Record<Exclude<Fill, 'none'>, Filling>> = {
  paper: plain('#ffffff'),
  ink: plain(INK),
  accent: plain(INK),
  sheet: plain('#ffffff'),
  strip: plain('#e4e4e4'),
  sheetCut: { paper: '#ffffff', pattern: 'layers', ink: '#777777' },
  sheetCutUpright: { paper: '#ffffff', pattern: 'uprightLayers', ink: '#777777' },
  stripCut: { paper: '#e4e4e4', pattern: 'hatch', ink: '#555555' },
  hatched: { paper: '#ffffff', pattern: 'hatch', ink: '#888888' },
  dotted: { paper: '#ffffff', pattern: 'dots', ink: '#555555' },
}

/** The same wood where it is turned from the light. */
const FACES: Readonly<Partial<Record<Fill, Readonly<Record<Facing, string>>>>> = {
  sheet: { up: '#ffffff', left: '#f6f6f6', right: '#e9e9e9' },
  strip: { up: '#e8e8e8', left: '#dadada', right: '#c6c6c6' },
}

/** What a shape is filled with; undefined for nothing. */
export function fillOf({ fill, facing }: Pick<Polygon, 'fill' | 'facing'>): Filling | undefined {
  if (fill === 'none') return undefined
  const face = facing && FACES[fill]?.[facing]
  return face ? plain(face) : FILLS[fill]
}

export const TONES: Readonly<Record<NonNullable<Text['tone']> | 'ink', string>> = {
  ink: INK,
  soft: '#333333',
  accent: INK,
}
