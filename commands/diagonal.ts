import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { choice, first, length, size } from '../src/bot/option.ts'
import { bracePicture } from '../src/bot/picturesOfCuts.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import { type Length, toMillimetres } from '../src/core/measure/length.ts'
import type { SizeRead } from '../src/core/measure/readSize.ts'
import { chooseEnds } from '../src/core/panelling/brace.ts'
import { type Diagonal, type DiagonalObstacle, diagonal, type Ends } from '../src/core/panelling/diagonal.ts'
import type { Face } from '../src/core/panelling/face.ts'

export default defineCommand({
  name: 'diagonal',
  summary: 'A brace across a frame: saw setting, length, and an X where two cross',
  examples: [
    'diagonal 46in x 29in strip=3 1/2in',
    'diagonal 46in x 29in strip=3 1/2in ends=pointed',
    'diagonal 900mm x 600mm strip=38mm cross=halving thickness=12mm',
  ],
  options: z.strictObject({
    opening: first(size('the clear opening, width x height', '46in x 29in')).optional(),
    strip: length('real width of the strip across it', '3 1/2in').optional(),
    ends: choice('two cuts into the corner, or one cut on the rails or on the stiles', [
      'pointed',
      'rails',
      'stiles',
    ]).optional(),
    cross: choice('an X: one strip cut in two, or both halved', ['cut', 'halving']).optional(),
    thickness: length('strip thickness, for the depth of a halving', '1/2in').optional(),
    face: choice('of the channel’s plan: which frame it crosses', ['end', 'side']).optional(),
  }),
  run: (input, context) => {
    const { show, settings } = context
    const { width, height, strip, thickness, from } = theOpening(input, context)
    const ends =
      input.ends ?? (input.cross ? 'pointed' : bestEnds(width, height, strip, settings.mitreMax, context))
    const laid = diagonal({ width, height, strip, ends, cross: input.cross, thickness })
    if (laid.status === 'impossible') throw new Refusal('invalid', obstacle(laid, context))
    const steepest = Math.max(laid.saw, laid.secondSaw ?? 0, laid.innerSaw ?? 0)
    return {
      answer: `Set the saw ${sawWords(laid, context)}; blank ${show.length(laid.length, 'cover')} tip to tip`,
      cautions: context.cautions({ crosscut: true, mitre: steepest }),
      tables: crossTable(laid, context),
      pictures: [bracePicture({ width, height }, strip, laid, show)],
      notes: [
        `${ENDS[ends]}; the brace lies at ${show.angle(laid.slope)} from level`,
        ...(steepest > settings.mitreMax ? [jigLine(laid, steepest, context)] : []),
        ...(from ? [from] : []),
        ...crossLines(laid, input.cross),
        'before you cut, lay the strip on the frame and mark it there; the frame is right where they differ',
      ],
      figures: figuresOf(laid),
    }
  },
})

const ENDS: Readonly<Record<Ends, string>> = {
  pointed: 'two cuts meet in each corner',
  rails: 'one cut at each end, flush with the rails',
  stiles: 'one cut at each end, flush with the stiles',
}

interface Opening {
  readonly width: Length
  readonly height: Length
  readonly strip: Length
  readonly thickness: Length | undefined
  readonly from: string | undefined
}

interface Asked {
  readonly opening?: SizeRead | undefined
  readonly strip?: Length | undefined
  readonly thickness?: Length | undefined
  readonly face?: Face['name'] | undefined
}

/** The opening that was typed, else that of a panel of the channel's plan. */
function theOpening(asked: Asked, context: Context): Opening {
  const { opening, strip, thickness, face: name = 'end' } = asked
  const kept = context.project?.choices
  const lacking = [opening, strip, thickness].includes(undefined)
  const plan = kept && lacking ? planned(kept, context).plan : undefined
  const crossed = opening ? typedOpening(opening) : plan?.faces[name === 'end' ? 0 : 1].opening
  if (!crossed) {
    throw new Refusal(
      'invalid',
      'which opening does it cross? Write its clear width x height first, such as 46in x 29in',
    )
  }
  const wide = strip ?? plan?.spec.width
  if (wide === undefined) throw new Refusal('invalid', 'how wide is the strip really? Add strip=3 1/2in')
  // A strip of another width is not one of the plan's, and may have any thickness.
  const likePlan = plan?.spec.width === wide ? plan.spec.strip : undefined
  return {
    ...crossed,
    strip: wide,
    thickness: thickness ?? likePlan,
    from: fromWords(asked, wide, context),
  }
}

function fromWords({ opening, strip, face }: Asked, wide: Length, { show }: Context): string | undefined {
  const project = "this channel's project"
  if (!opening)
    return `the opening of ${face === 'side' ? 'a side' : 'an end'} panel of ${project} (face=), strip ${show.length(wide)} wide`
  return strip ? undefined : `strip ${show.length(wide)} wide, from ${project}`
}

/** By its labels where it has any (`29in high x 46in wide`), else width first. */
function typedOpening({ lengths, round, roles }: SizeRead): { width: Length; height: Length } {
  const upright = roles?.indexOf('height') === 0 ? 0 : 1
  const [width, height] = [lengths[1 - upright], lengths[upright]]
  if (width === undefined || height === undefined || lengths.length > 2 || round) {
    throw new Refusal('invalid', 'an opening has a width and a height; write 46in x 29in')
  }
  return { width, height }
}

function bestEnds(width: Length, height: Length, strip: Length, limit: number, context: Context): Ends {
  const choice = chooseEnds(width, height, strip, limit)
  if (choice.status === 'impossible') throw new Refusal('invalid', obstacle(choice, context))
  return choice.diagonal.ends
}

/** The saw scale first, then the angle to the edge. */
function sawWords({ saw, secondSaw }: Diagonal, { show }: Context): string {
  const one = (degrees: number) =>
    `${show.angle(degrees)} from square (${show.angle(90 - degrees)} to the edge)`
  if (secondSaw === undefined) return `to ${one(saw)}`
  return show.angle(saw) === show.angle(secondSaw)
    ? `to ${one(saw)} for both cuts of a point`
    : `to ${one(saw)} and ${one(secondSaw)}`
}

/** How many strips an X takes, and what is not known of it. */
function crossLines({ notchDepth }: Diagonal, cross: 'cut' | 'halving' | undefined): readonly string[] {
  if (cross === undefined) return []
  if (cross === 'cut') return ['one strip runs through; the other is cut into two halves']
  return [
    'both strips are notched in the middle, on opposite faces',
    ...(notchDepth === undefined ? ['half the thickness deep; add thickness= for the number'] : []),
  ]
}

const jigLine = ({ secondSaw }: Diagonal, steepest: number, { show, settings }: Context): string =>
  `${show.angle(steepest)} is past the ${show.angle(settings.mitreMax)} that most saws reach: stand the strip in a square jig and set ${show.angle(90 - steepest)}${secondSaw === undefined ? ', or put the ends on the other members (ends=)' : ''}`

const obstacle = ({ kind, below }: DiagonalObstacle, { show }: Context): string =>
  kind === 'crossing'
    ? `two strips that wide do not cross inside the opening; narrower than ${show.length(below, 'into')} would do`
    : `the strip is too wide for the opening; narrower than ${show.length(below, 'into')} would do`

function crossTable({ crossing, halfLength, innerSaw, notchWidth, notchDepth }: Diagonal, { show }: Context) {
  if (crossing === undefined) return []
  const rows = [
    ['crossing', show.angle(crossing)],
    ...(halfLength === undefined ? [] : [['each half', show.length(halfLength)]]),
    ...(innerSaw === undefined ? [] : [['inner cut, saw', show.angle(innerSaw)]]),
    ...(notchWidth === undefined ? [] : [['notch wide', show.length(notchWidth, 'mark', true)]]),
    ...(notchDepth === undefined ? [] : [['notch deep', show.length(notchDepth, 'mark', true)]]),
  ]
  return [{ title: 'Where they cross, in the middle', columns: ['What', 'Size'], rows }]
}

const figuresOf = (laid: Diagonal) => ({
  slope: laid.slope,
  saw: laid.saw,
  secondSaw: laid.secondSaw ?? null,
  length: toMillimetres(laid.length),
  crossing: laid.crossing ?? null,
  halfLength: laid.halfLength === undefined ? null : toMillimetres(laid.halfLength),
  innerSaw: laid.innerSaw ?? null,
  notchWidth: laid.notchWidth === undefined ? null : toMillimetres(laid.notchWidth),
  notchDepth: laid.notchDepth === undefined ? null : toMillimetres(laid.notchDepth),
})
