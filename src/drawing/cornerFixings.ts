import type { Length } from '../core/measure/length.ts'
import { BRACKET, placeBrackets } from '../core/plan/hardware.ts'
import type { Plan } from '../core/plan.ts'
import { fineMark, type Numbers } from './numbers.ts'
import type { Entry } from './page.ts'
import type { Point, Polygon } from './scene.ts'

/** What a corner is screwed together with: to its block from outside, or through each leg of a bracket from inside. */
export interface CornerScrew {
  /** Such as `#8`. */
  readonly name: string
  readonly length: Length
  readonly diameter: Length
  /** What the head sits in and how thick that is. */
  readonly through: string
  readonly held: Length
  /** In each block or leg. */
  readonly count: number
}

/** Nanometres from the inner corner, along the box and across it. */
type At = (x: number, y: number) => Point

/** The bracket of a bracketed corner and the screws of any that has some, seen from above. */
export function fixingShapes(
  plan: Plan,
  screw: CornerScrew | undefined,
  reach: number,
  at: At,
): readonly Polygon[] {
  const { corner, strip } = plan.spec
  if (corner === 'bracketed') {
    const leg = Math.min(legOf(plan), reach)
    return [bracketShape(leg, at), ...(screw ? legScrews(screw, leg, at) : [])]
  }
  // Half way across the block's thickness, from outside.
  return corner === 'cleated' && screw ? [screwShape(screw, (out, aside) => at(out, strip / 2 + aside))] : []
}

const legOf = ({ spec }: Plan): Length => placeBrackets(spec, spec.height).leg

const bracketShape = (leg: number, at: At): Polygon => ({
  shape: 'polygon',
  points: [at(0, 0), at(leg, 0), at(leg, BRACKET), at(BRACKET, BRACKET), at(BRACKET, leg), at(0, leg)],
  fill: 'ink',
  stroke: 'thin',
  of: 'corner bracket',
})

/** As many screws in either leg as it has holes, evenly along it. */
const legScrews = (screw: CornerScrew, leg: number, at: At): readonly Polygon[] =>
  Array.from({ length: screw.count }, (_, index) => ((index + 0.5) * leg) / screw.count).flatMap((place) => [
    screwShape(screw, (out, aside) => at(place + aside, -out)),
    screwShape(screw, (out, aside) => at(-out, place + aside)),
  ])

/** A countersunk screw from the top of its head to its tip, `out` counted from the face between the two pieces. */
function screwShape({ length, diameter, held }: CornerScrew, at: At): Polygon {
  const [head, tip, half] = [-held, length - held, diameter / 2]
  return {
    shape: 'polygon',
    points: [
      at(head, -2 * half),
      at(head + half, -half),
      at(tip - 2 * half, -half),
      at(tip, 0),
      at(tip - 2 * half, half),
      at(head + half, half),
      at(head, 2 * half),
    ],
    fill: 'paper',
    stroke: 'thin',
    of: 'screw',
  }
}

/** Whether a corner is held by screws, so that it comes apart. */
export const isScrewed = ({ spec: { corner } }: Plan): boolean =>
  corner === 'cleated' || corner === 'bracketed'

/** What holds a corner, for the foot of its picture; nothing where no screws do. */
export function fixingEntries(
  plan: Plan,
  screw: CornerScrew | undefined,
  numbers: Numbers,
): readonly Entry[] {
  if (!isScrewed(plan)) return []
  const isBracket = plan.spec.corner === 'bracketed'
  const each = isBracket ? 'leg' : 'block'
  return [
    ...(isBracket ? [{ words: 'black: steel bracket, one near each rail' }] : []),
    {
      words: screw
        ? `${screw.count} ${screw.count === 1 ? 'screw' : 'screws'} ${screw.name} x ${fineMark(numbers, screw.length)} in each ${each}, ${isBracket ? 'from inside' : `through the ${screw.through}`}`
        : 'no screw that is sold holds here: "fasteners" has what would',
    },
  ]
}
