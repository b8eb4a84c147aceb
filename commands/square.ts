import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { choice, first, length, size } from '../src/bot/option.ts'
import { squarePicture } from '../src/bot/picturesOfCuts.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Cell, Reply } from '../src/bot/reply.ts'
import type { Show } from '../src/bot/show.ts'
import { inches, type Length, millimetres, nanometres, toMillimetres } from '../src/core/measure/length.ts'
import { showCaliper } from '../src/core/measure/showCaliper.ts'
import { cornerAngle } from '../src/core/panelling/cornerAngle.ts'
import { checkSquare, type Measured, type SquareCheck } from '../src/core/panelling/squareCheck.ts'
import type { Plan } from '../src/core/plan.ts'

const options = z.strictObject({
  size: first(size('length and height of the frame, from the front', '24in x 18in')).optional(),
  rising: length('the diagonal from bottom left to top right', '30in').optional(),
  falling: length('the diagonal from top left to bottom right', '30 1/8in').optional(),
  panel: choice('which panel of the project', ['side', 'end', 'front', 'top']).optional(),
})
type Asked = z.output<typeof options>

export default defineCommand({
  name: 'square',
  summary: 'How far out of square a frame is, which corners to pull, and what that is good enough for',
  examples: [
    'square 24in x 18in rising=30in falling=30 1/8in',
    'square 3ft x 4ft rising=5ft',
    'square 600mm x 400mm rising=721mm falling=722mm',
  ],
  options,
  idle: [
    {
      option: 'panel',
      what: 'the panels of a project',
      how: 'leave the size out',
      isUsed: ({ input }) => input.size === undefined,
    },
    {
      option: 'panel',
      what: 'a front that differs from the back',
      how: 'project change front=10in',
      isUsed: ({ input, context }) =>
        input.panel !== 'front' || input.size !== undefined || frameOf(input, context).name === 'front',
    },
  ],
  run: (input, context) => {
    const frame = frameOf(input, context)
    const { rising, falling } = input
    if (rising === undefined && falling === undefined) return targets(input, frame, context)
    return checked(
      { ...frame, ...bothDiagonals(frame, rising, falling) },
      rising === undefined || falling === undefined,
      context,
    )
  },
})

type Frame = Pick<Measured, 'length' | 'width'>

/** Which panel of a project it is. */
interface Named {
  readonly name: string
}

/** The frames of a plan as they are measured, edge to edge. */
const framesOf = ({ faces, outside }: Plan): ReadonlyMap<string, Frame> => {
  const [end, ...sides] = faces
  return new Map([
    ...[...sides, end].map(({ name, shows, height }) => [name, { length: shows, width: height }] as const),
    ['top', { length: outside.length, width: outside.width }],
  ])
}

function frameOf({ size: typed, panel = 'side' }: Asked, context: Context): Frame & Partial<Named> {
  if (typed) {
    const [long, wide, third] = typed.lengths
    if (typed.round || long === undefined || wide === undefined || third !== undefined)
      throw new Refusal('invalid', 'a frame has a length and a height; write 24in x 18in')
    return { length: long, width: wide }
  }
  if (context.project) {
    const frames = framesOf(planned(context.project.choices, context).plan)
    // A front that does not differ is a side.
    const name = frames.has(panel) ? panel : 'side'
    const frame = frames.get(name)
    if (frame) return { ...frame, name }
  }
  throw new Refusal(
    'invalid',
    'how large is the frame? Write its sides first, such as 24in x 18in, then rising= and falling=',
  )
}

/** A frame of three known sides leans as a parallelogram does: d1 2 + d2 2 = 2 (a2 + b2). */
function bothDiagonals(
  { length: a, width: b }: Frame,
  rising: Length | undefined,
  falling: Length | undefined,
) {
  const other = (known: Length): Length =>
    nanometres(Math.sqrt(Math.max(0, 2 * (a * a + b * b) - known * known)))
  const [up, down] = [rising ?? (falling && other(falling)), falling ?? (rising && other(rising))]
  if (up === undefined || down === undefined) throw new RangeError('no diagonal to check')
  return { rising: up, falling: down }
}

const diagonalOf = ({ length: a, width: b }: Frame): Length => nanometres(Math.hypot(a, b))

/** What both diagonals have to come to, before anything is measured. */
function targets(input: Asked, frame: Frame & Partial<Named>, { show, project, ...context }: Context): Reply {
  const diagonal = diagonalOf(frame)
  const answer = `Both diagonals ${show.length(diagonal, 'mark', true)} when it is square`
  const figures = { diagonal: toMillimetres(diagonal) }
  if (input.size || !project) return { answer, notes: ['measured? add rising= and falling='], figures }
  const frames = framesOf(planned(project.choices, { show, project, ...context }).plan)
  const rows = [...frames].map(([name, each]): Cell[] => [
    name,
    { length: diagonalOf(each), fine: true },
    `${show.mark(each.length)} x ${show.mark(each.width)}`,
  ])
  return {
    answer: `${answer}: ${frame.name === 'top' ? 'the top' : `${frame.name} panels`} of this channel's project`,
    tables: [{ title: `Diagonals, edge to edge (${show.unit})`, columns: ['', 'Diag', 'Of'], rows }],
    notes: [`measured? add rising= and falling= (panel=${[...frames.keys()].join(', ')})`],
    figures,
  }
}

function checked(measured: Measured, isOneMeasured: boolean, context: Context): Reply {
  const { show } = context
  const found = checkSquare(measured)
  if (found.status === 'impossible')
    throw new Refusal(
      'invalid',
      `no frame ${show.length(measured.length)} x ${show.length(measured.width)} has such diagonals; when square both are ${show.length(diagonalOf(measured), 'mark', true)}: measure again`,
    )
  const { angle, difference, squeeze, overLength, overWidth, misread } = found
  const { squeezed, pulled } = difference > READABLE ? found : { squeezed: undefined, pulled: undefined }
  const by = show.length(squeeze, 'mark', true)
  const amiss = Math.abs(misread) as Length
  return {
    answer:
      amiss > BEYOND
        ? `Measure again: sides and diagonals disagree by ${showCaliper(amiss, show.units)}`
        : squeezed
          ? `${show.angle(angle)} out of square: squeeze ${squeezed.join(' and ')} together by ${by}`
          : 'Square: both diagonals agree',
    pictures: [squarePicture(measured, { angle, squeeze, squeezed }, show)],
    notes: [
      ...(amiss > BEYOND ? [] : leanNotes(measured, found, pulled, show)),
      ...(isOneMeasured ? ['the other diagonal was reckoned from the three sides'] : []),
      ...(amiss > MISREAD && amiss <= BEYOND
        ? [`sides and diagonals disagree by ${showCaliper(amiss, show.units)}: measure them again`]
        : []),
      `both diagonals are ${show.length(diagonalOf(measured), 'mark', true)} when it is square`,
    ],
    figures: {
      angle,
      difference: toMillimetres(difference),
      squeeze: toMillimetres(squeeze),
      overLength: toMillimetres(overLength),
      overWidth: toMillimetres(overWidth),
      diagonal: toMillimetres(diagonalOf(measured)),
      misread: toMillimetres(misread),
      squeezed: squeezed ? [...squeezed] : null,
      pulled: pulled ? [...pulled] : null,
      cabinet: found.cabinet,
      asSheet: found.asSheet,
      asFraming: found.asFraming,
    },
  }
}

/** What the lean comes to, and what the frame is good enough for. */
function leanNotes(
  measured: Measured,
  found: SquareCheck,
  pulled: SquareCheck['pulled'] | undefined,
  show: Show,
): readonly string[] {
  const { difference, overLength, overWidth } = found
  const leaning = pulled
    ? [
        `or pull ${pulled.join(' and ')} apart by as much; check again when it springs back`,
        `diagonals ${showCaliper(difference, show.units)} apart; the long side slides ${showCaliper(overLength, show.units)} over its length, the short one ${showCaliper(overWidth, show.units)}`,
      ]
    : []
  return [...leaning, gradeNote(found), ...cornerNotes(measured, show)]
}

/** The corners that face the rising diagonal and the two beside them, by their angle; nothing where they are square. */
function cornerNotes(
  { length: along, width: across, rising, falling }: Measured,
  show: Show,
): readonly string[] {
  // Opposite sides are alike, so what the tape misread is shared out: both corners then lean by the angle of the first line.
  const share = Math.sqrt((2 * (along ** 2 + across ** 2)) / (rising ** 2 + falling ** 2))
  const corners = [
    ['bottom right and top left', nanometres(rising * share)],
    ['bottom left and top right', nanometres(falling * share)],
  ] as const
  const said = corners.flatMap(([name, diagonal]) => {
    const found = cornerAngle({ along, across, diagonal }, READABLE)
    return found.status === 'measured' && found.verdict !== 'square'
      ? [`${name} ${show.angle(found.angle)} (${found.verdict})`]
      : []
  })
  return said.length === 0 ? [] : [`corners: ${said.join(', ')}`]
}

/** Diagonals that differ by less than this agree, as far as any tape goes: 0.1 mm. */
const READABLE = millimetres(0.1)

/** A side or a diagonal read wrong by more than this shows: 1/8 in. */
const MISREAD = inches(1, 8)

/** Past 1/2 in no answer rests on such numbers. */
const BEYOND = inches(1, 2)

const CABINET_WORDS: Readonly<Record<SquareCheck['cabinet'], string>> = {
  good: 'good enough for cabinet work',
  fair: 'fair for cabinet work',
  limit: 'at the limit for cabinet work',
  past: 'not for cabinet work',
}

const gradeNote = ({ cabinet, asSheet, asFraming }: SquareCheck): string =>
  [
    CABINET_WORDS[cabinet],
    asSheet ? 'as square as plywood is sold' : 'less square than plywood is sold',
    asFraming ? 'fine for framing' : 'past what framers accept (1/8 in, 3 mm)',
  ].join(', ')
