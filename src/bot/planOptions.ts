import { OPENINGS } from '../core/checks/cautionFacts.ts'
import type { Length } from '../core/measure/length.ts'
import type { BoardRead } from '../core/measure/readBoard.ts'
import type { SheetRead } from '../core/measure/readSheet.ts'
import type { SizeRead } from '../core/measure/readSize.ts'
import { objectShape } from './objectShape.ts'
import { board, choice, clearance, count, first, length, sheet, size, yes } from './option.ts'
import { BOTTOMS, CORD_PANELS, HANDLES, LIDS, type PlanChoices } from './planChoices.ts'
import { Refusal } from './refusal.ts'
import { BRACES, CORNERS } from './settings.ts'

/** The options that describe a surround, shared by every command that plans one. */
export const planOptions = {
  object: first(size('what it goes round: length x width, or a diameter with "round"')).optional(),
  height: length('finished height of the box').optional(),
  clearance: clearance('room on each side, or add "total" for both sides together').optional(),
  sheet: sheet('the panels: a label such as 1/2 ply, or the thickness you measured').optional(),
  strip: length('thickness of the frame strips, what the rip fence sets', '1/2in').optional(),
  width: length('face width of the strips', '1 1/2in').optional(),
  board: board('the board the strips are ripped from; its thickness is their face width', '2x4').optional(),
  corner: choice(
    'how the panels meet: two come apart by hand, two by screws, one is glued',
    CORNERS,
  ).optional(),
  braces: choice('which panels get a diagonal brace', BRACES).optional(),
  grooves: count('grooves in each panel', 0, 40).optional(),
  fit: length('gap at each end of a corner stile; what a slot is wider than the sheet', '1/32in', {
    zero: true,
  }).optional(),
  open: choice('what stays open round something that gets hot or breathes', OPENINGS).optional(),
  front: length('height of the front side where it is lower than the back', '10in').optional(),
  'front-brace': yes('whether the front has a brace, where it differs').optional(),
  'front-grooves': count('grooves in the front, where they differ', 0, 40).optional(),
  lid: choice('drops in between the walls, or lies over them with a rim', LIDS).optional(),
  handle: choice('of the lid: a strip on top, or a notch for the fingers', HANDLES).optional(),
  bottom: choice('a loose bottom, on cleats along the walls or on feet of its own', BOTTOMS).optional(),
  drain: length('drain holes in the bottom: their diameter', '1/2in', { zero: true }).optional(),
  spacing: length('how far apart drain holes are at the most', '6in').optional(),
  cord: size('a way through for a cord: width x height of the notch', '2in x 1 1/2in').optional(),
  cordin: choice('which panel the cord goes through', CORD_PANELS).optional(),
  gap: length('room on each side of lid and bottom', '1/16in', { zero: true }).optional(),
}

/** The values of planOptions, as a command gets them. */
export interface PlanInput {
  readonly object?: SizeRead | undefined
  readonly height?: Length | undefined
  readonly clearance?: Length | undefined
  readonly sheet?: SheetRead | undefined
  readonly strip?: Length | undefined
  readonly width?: Length | undefined
  readonly board?: BoardRead | undefined
  readonly corner?: PlanChoices['corner']
  readonly braces?: PlanChoices['braces']
  readonly grooves?: number | undefined
  readonly fit?: Length | undefined
  readonly open?: PlanChoices['open']
  readonly front?: Length | undefined
  readonly 'front-brace'?: boolean | undefined
  readonly 'front-grooves'?: number | undefined
  readonly lid?: PlanChoices['lid']
  readonly handle?: PlanChoices['handle']
  readonly bottom?: PlanChoices['bottom']
  readonly drain?: Length | undefined
  readonly spacing?: Length | undefined
  readonly cord?: SizeRead | undefined
  readonly cordin?: PlanChoices['cordIn']
  readonly gap?: Length | undefined
}

/** What was typed, as choices. Throws a Refusal where two options contradict each other. */
export function choicesFrom(input: PlanInput): PlanChoices {
  const { object, height, board: ripped, width, sheet: panel, cord, cordin, ...others } = input
  const { 'front-brace': frontBrace, 'front-grooves': frontGrooves, ...rest } = others
  const read = object && objectShape(object)
  if (read?.height !== undefined && height !== undefined && read.height !== height) {
    throw new Refusal('invalid', 'the height is given twice, in the object and as height=; keep one')
  }
  if (ripped && width !== undefined && ripped.thickness !== width) {
    throw new Refusal('invalid', 'width= and board= both say how wide the strips are, and differ; keep one')
  }
  return {
    ...rest,
    frontBrace,
    frontGrooves,
    cord: cord && notchSize(cord),
    cordIn: cordin,
    ...(object && read ? { object: read.shape, objectWords: [...object.words] } : {}),
    height: height ?? read?.height,
    width: width ?? ripped?.thickness,
    board: boardName(ripped, width),
    sheet: panel && {
      thickness: panel.thickness,
      measured: panel.measured,
      label: panel.label,
      material: panel.material,
    },
  }
}

/** Width, then height, unless they are named. */
function notchSize({ lengths, round, roles }: SizeRead): NonNullable<PlanChoices['cord']> {
  const upright = roles?.indexOf('height') === 0 ? 0 : 1
  const [width, height] = [lengths[1 - upright], lengths[upright]]
  if (width === undefined || height === undefined || lengths.length > 2 || round)
    throw new Refusal('invalid', 'a cord notch has a width and a height; write cord=2in x 1 1/2in')
  return { width, height }
}

/** No name, as `''`, takes the place of the one kept before: the strips do not come out of that board any more. */
function boardName(ripped: BoardRead | undefined, width: Length | undefined): string | undefined {
  if (ripped) return ripped.name ?? ''
  return width === undefined ? undefined : ''
}
