import { cornerScrew } from '../../src/bot/cornerScrew.ts'
import { boxPicture, cornerPicture, facePicture } from '../../src/bot/pictures.ts'
import {
  bracePicture,
  gapPicture,
  groovesPicture,
  ripsPicture,
  spacingPicture,
  squarePicture,
} from '../../src/bot/picturesOfCuts.ts'
import { flatPictures } from '../../src/bot/picturesOfFlats.ts'
import { panelGrooves } from '../../src/bot/plannedGrooves.ts'
import type { Picture } from '../../src/bot/reply.ts'
import { type Show, showIn } from '../../src/bot/show.ts'
import { readConfig } from '../../src/config.ts'
import { inches, type Length, millimetres } from '../../src/core/measure/length.ts'
import { diagonal } from '../../src/core/panelling/diagonal.ts'
import { ripSettings } from '../../src/core/panelling/rips.ts'
import { spaceEvenly } from '../../src/core/panelling/spacing.ts'
import { checkSquare, type Measured } from '../../src/core/panelling/squareCheck.ts'
import { type Plan, planSurround, type Spec } from '../../src/core/plan.ts'
import { CONFIG } from '../config/folder.ts'

/** Numbers as most people in each unit system see them. */
export const INCHES: Show = showIn(
  { units: 'inch', tape: 16, millimetreStep: 1 },
  { units: 'inch', tape: 32, millimetreStep: 0.5 },
)
export const METRIC: Show = showIn(
  { units: 'metric', tape: 16, millimetreStep: 1 },
  { units: 'metric', tape: 32, millimetreStep: 0.5 },
)

/** The plan of a spec that can be built. */
export function planOf(spec: Spec): Plan {
  const plan = planSurround(spec)
  if (plan.status === 'impossible') throw new Error(plan.obstacle.kind)
  return plan
}

/** A box that most pictures are tried on. */
export const USUAL: Spec = {
  object: { shape: 'rectangle', length: inches(24), width: inches(17) },
  height: inches(15),
  clearance: inches(1, 2),
  sheet: inches(15, 32),
  strip: inches(1, 2),
  width: inches(3, 2),
  corner: 'captured',
  braces: 'all',
  grooves: 5,
  fit: inches(1, 32),
  kerf: inches(1, 8),
}

/** As small, as long, as thin and as crowded as boxes get. */
export const EXTREMES: readonly Spec[] = [
  { ...USUAL, object: { shape: 'rectangle', length: inches(6), width: inches(6) }, height: inches(6) },
  {
    ...USUAL,
    object: { shape: 'rectangle', length: inches(6), width: inches(6) },
    height: inches(6),
    strip: millimetres(3),
    braces: 'none',
    grooves: 0,
  },
  {
    ...USUAL,
    object: { shape: 'rectangle', length: inches(96), width: inches(6) },
    height: inches(12),
    strip: millimetres(3),
    grooves: 20,
    kerf: millimetres(2),
  },
  {
    ...USUAL,
    object: { shape: 'rectangle', length: inches(96), width: inches(48) },
    height: inches(6),
    corner: 'cleated',
    clearance: inches(6),
  },
  { ...USUAL, object: { shape: 'round', diameter: inches(12) }, height: inches(96), corner: 'butted' },
  {
    ...USUAL,
    corner: 'halved',
    braces: 'none',
    front: { height: inches(9), grooves: 4 },
    cord: { face: 'end', width: inches(2), height: inches(1) },
  },
  { ...USUAL, lid: { kind: 'inset', handle: 'strip' }, bottom: { on: 'cleats' } },
  {
    ...USUAL,
    corner: 'cleated',
    lid: { kind: 'overlapping', handle: 'strip' },
    bottom: { on: 'feet', drain: { diameter: inches(1, 2), spacing: inches(6) } },
  },
  {
    ...USUAL,
    corner: 'bracketed',
    lid: { kind: 'inset', handle: 'notch' },
    bottom: { on: 'cleats', drain: { diameter: inches(3, 4), spacing: inches(9) } },
  },
  { ...USUAL, corner: 'bracketed', object: { shape: 'rectangle', length: inches(6), width: inches(6) } },
  { ...USUAL, corner: 'cleated', strip: inches(3, 4), braces: 'none' },
  {
    ...USUAL,
    object: { shape: 'rectangle', length: inches(96), width: inches(6) },
    lid: { kind: 'inset', handle: 'notch' },
    bottom: { on: 'feet', drain: { diameter: inches(1), spacing: inches(3) } },
  },
  {
    ...USUAL,
    object: { shape: 'rectangle', length: inches(6), width: inches(60) },
    lid: { kind: 'overlapping', handle: 'strip' },
    bottom: { on: 'cleats', drain: { diameter: millimetres(4), spacing: inches(1) } },
  },
]

const reference = readConfig(CONFIG)

/** The screws of its corners, as the shipped tables have them. */
export const screwOf = (plan: Plan) => cornerScrew(plan, { reference, settled: { region: 'US' } })

/** Every picture that is drawn from a plan. */
export function planPictures(plan: Plan, show: Show): readonly Picture[] {
  const { kerf, sheet, width, strip } = plan.spec
  return [
    boxPicture(plan, show, kerf),
    ...plan.faces.flatMap((face) => (face ? [facePicture(plan, face.name, show, kerf)] : [])),
    cornerPicture(plan, show, screwOf(plan)),
    ...plan.faces.flatMap((face) =>
      face?.brace ? [bracePicture({ name: face.name, ...face.opening }, width, face.brace, show)] : [],
    ),
    ...panelGrooves(plan, { kerf }).flatMap(({ face, laid }) => {
      const length = plan.faces.find((each) => each?.name === face)?.panel
      return laid.status === 'laid' && length
        ? [groovesPicture({ name: face, length, thickness: sheet }, kerf, laid, show)]
        : []
    }),
    ...ripsOf({ board: inches(11, 2), thickness: width, strip, kerf }, show),
    ...flatPictures(plan, show),
  ]
}

interface Ripped {
  readonly board: Length
  readonly thickness: Length
  readonly strip: Length
  readonly kerf: Length
}

/** The picture of a board's rips. */
export const ripsOf = ({ board, thickness, strip, kerf }: Ripped, show: Show): readonly Picture[] =>
  ripsPicture(
    { width: board, thickness },
    { strip, kerf, rips: ripSettings({ board, strip, kerf, safe: inches(2) }) },
    show,
  )

/** The picture of a frame as measured. */
export function squareOf(measured: Measured, show: Show): Picture {
  const found = checkSquare(measured)
  if (found.status === 'impossible') throw new Error('no such frame')
  return squarePicture(measured, found, show)
}

/** Pictures of single cuts at the edges of what can be asked. */
export function cutPictures(show: Show): readonly Picture[] {
  const brace = (width: Length, height: Length, strip: Length, ends: 'pointed' | 'rails' | 'stiles') => {
    const laid = diagonal({ width, height, strip, ends })
    if (laid.status === 'impossible') throw new Error(laid.kind)
    return bracePicture({ width, height }, strip, laid, show)
  }
  const spacing = (span: Length, piece: Length, count: number, ends: 'gaps' | 'flush') => {
    const spaced = spaceEvenly({ span, piece, count, ends })
    if (spaced.status === 'impossible') throw new Error(spaced.kind)
    return spacingPicture(span, piece, spaced, show)
  }
  const square = (length: number, width: number, rising: number, falling: number) =>
    squareOf(
      {
        length: inches(length),
        width: inches(width),
        rising: inches(rising, 100),
        falling: inches(falling, 100),
      },
      show,
    )
  return [
    brace(inches(46), inches(29), inches(7, 2), 'stiles'),
    brace(inches(46), inches(29), inches(7, 2), 'pointed'),
    brace(inches(8), inches(90), inches(3, 2), 'rails'),
    brace(inches(90), inches(4), millimetres(3), 'pointed'),
    brace(inches(10), inches(10), inches(6), 'rails'),
    ...ripsOf(
      { board: millimetres(184), thickness: millimetres(38), strip: millimetres(3), kerf: millimetres(1) },
      show,
    ),
    ...ripsOf(
      { board: inches(7, 2), thickness: inches(3, 2), strip: inches(1, 2), kerf: inches(1, 8) },
      show,
    ),
    ...ripsOf({ board: inches(45, 4), thickness: inches(3, 4), strip: inches(9), kerf: inches(1, 8) }, show),
    spacing(inches(36), inches(7, 2), 6, 'gaps'),
    spacing(inches(96), millimetres(3), 500, 'flush'),
    spacing(inches(2), inches(1), 1, 'gaps'),
    spacing(inches(9), inches(3), 3, 'flush'),
    square(24, 18, 3000, 3012),
    square(24, 18, 3012, 3000),
    square(24, 18, 3000, 3000),
    square(96, 6, 9630, 9610),
    square(6, 96, 9610, 9630),
    square(10, 10, 1900, 600),
    gapPicture({ loosest: '0.031 in', tightest: '0.008 in', binds: false, label: 'F' }),
    gapPicture({ loosest: '0.4 mm', tightest: '-0.21 mm', binds: true }),
  ]
}
