import type { Facing, Fill, Stroke, Text } from '../drawing/scene.ts'

/** Colours: ink on white paper, two woods, one accent. Every one keeps its place when it is printed in grey. */
export const INK = '#22262b'
export const SOFT = '#565d66'
export const ACCENT = '#a63c06'
export const PAPER = '#ffffff'
const GROOVE = '#6b5a40'

interface Pen {
  readonly colour: string
  readonly width: number
  readonly dashes?: string
}

/** How each stroke is drawn on a page 1000 units wide. */
export const PENS: Readonly<Record<Stroke, Pen>> = {
  outline: { colour: INK, width: 3 },
  thin: { colour: INK, width: 1.8 },
  dashed: { colour: SOFT, width: 2.2, dashes: '12 8' },
  dimension: { colour: INK, width: 2 },
  groove: { colour: GROOVE, width: 2.4 },
  cut: { colour: ACCENT, width: 3.4 },
  pointer: { colour: INK, width: 1.6 },
}

/** A plain colour or, by its name, a pattern of patterns.ts. */
export const FILLS: Readonly<Record<Fill, string>> = {
  none: 'none',
  paper: PAPER,
  ink: INK,
  accent: ACCENT,
  sheet: '#f7efe0',
  strip: '#e3cda6',
  sheetCut: 'url(#layers)',
  sheetCutUpright: 'url(#uprightLayers)',
  stripCut: 'url(#grain)',
  hatched: 'url(#hatch)',
  dotted: 'url(#dots)',
}

/** The same wood where it is turned from the light. */
export const FACES: Readonly<Partial<Record<Fill, Readonly<Record<Facing, string>>>>> = {
  sheet: { up: '#fdf8ee', left: '#f7efe0', right: '#e9dcc3' },
  strip: { up: '#efdfc0', left: '#e3cda6', right: '#cfb485' },
}

/** The colour of a text. */
export const TONES: Readonly<Record<NonNullable<Text['tone']> | 'ink', string>> = {
  ink: INK,
  soft: SOFT,
  accent: ACCENT,
}
