import { INCH, type Length, MILLIMETRE, minus, nanometres, ZERO } from '../core/measure/length.ts'
import type { Part, Plan } from '../core/plan.ts'
import { joinPanel, type PanelJoin, type SheetSize } from '../core/panelling/panelJoin.ts'
import { largerSheet } from './misfit.ts'
import type { Show } from './show.ts'

/** What the parts of a plan come out of. */
export interface Sold {
  readonly sheets: readonly (SheetSize & { readonly label: string })[]
  readonly longestBoard: Length
}

/** A part of a plan, or a piece of one, by a name of its own. */
export type CutPart = Omit<Part, 'name'> & { readonly name: string }

/** A plan with the panels joined that no sheet gives in one piece. */
export interface Joined {
  /** The parts to cut: of such a panel its two pieces, in its place. */
  readonly parts: readonly CutPart[]
  /** Parts that are joined, and where, one line each. */
  readonly lines: readonly string[]
}

/** Finds the parts that no sheet or board gives in one piece, and what to do about each. */
export function joinParts(plan: Plan, { sheets, longestBoard }: Sold, show: Show): Joined {
  const joined = plan.parts.map((part): Joined => {
    const { label, name, material, length } = part
    const whole = { parts: [part], lines: [] }
    if (material === 'strip') return length <= longestBoard ? whole : joinStrip(part, longestBoard, show)
    const join = joinPanel({ ...part, ...coverOf(part, plan) }, sheets)
    if (join.status === 'whole') return whole
    const names = [...new Set(sheets.map((sheet) => sheet.label))].join(', ')
    const large = `${label} is larger than any sheet there is (${names})`
    const larger = largerSheet(part, part.thickness, show)
    const instead = larger === undefined ? '' : `; or have a larger one ordered: ${larger}`
    return join.status !== 'joined'
      ? {
          ...whole,
          lines: [
            `${large}, and than two of them: join each ${name} from more pieces, every joint on a batten${instead}`,
          ],
        }
      : {
          parts: piecesOf(part, join),
          lines: [
            `${large}: join each ${name} from two pieces, ${label}a and ${label}b, ${placeWords(join, show)}${instead}`,
          ],
        }
  })
  return { parts: joined.flatMap(({ parts }) => parts), lines: joined.flatMap(({ lines }) => lines) }
}

/** A strip longer than any board, in two where two will do; one with slanted ends is for the builder to divide. */
function joinStrip(part: Part, longest: Length, show: Show): Joined {
  const { label, name, length } = part
  const long = `${label} is longer than any board sold here (${show.length(longest, 'mark')})`
  if (length > 2 * longest || name.endsWith('brace'))
    return {
      parts: [part],
      lines: [`${long}: join each ${name} from shorter ones, every joint on a batten behind it`],
    }
  // Off the middle, where a long panel is joined as a rule, and at a whole mark.
  const step = show.units === 'inch' ? INCH : 10 * MILLIMETRE
  const at = nanometres(Math.min(longest, Math.floor((length * 2) / 3 / step) * step))
  return {
    parts: piecesOf(part, { way: 'upright', at }),
    lines: [
      `${long}: join each ${name} from two pieces, ${label}a and ${label}b, ${show.length(at, 'mark')} from one end, on a batten behind it and clear of any join of the panel`,
    ],
  }
}

/** The two pieces of a part that is joined; together they are the part, and neither has what is cut out of it later. */
function piecesOf(part: Part, { way, at }: Pick<PanelJoin, 'way' | 'at'>): readonly CutPart[] {
  const { cutouts: _cutouts, ...plain } = part
  const piece = (letter: string, size: Length): CutPart => ({
    ...plain,
    label: `${part.label}${letter}`,
    name: `piece of ${part.name}`,
    ...(way === 'level' ? { width: size } : { length: size }),
  })
  return [piece('a', at), piece('b', minus(way === 'level' ? part.width : part.length, at))]
}

/** What the frame covers of a panel; lid and bottom have none. */
function coverOf({ name }: Part, { faces, spec }: Plan): { readonly stile: Length; readonly rail: Length } {
  const face = faces.find((each) => name === `${each.name} panel`)
  if (!face) return { stile: ZERO, rail: ZERO }
  // Past the slots of halved corners no strip lies over the join.
  const stile = spec.corner === 'halved' ? ZERO : (Math.min(face.covered, spec.width) as Length)
  return { stile, rail: spec.width }
}

function placeWords({ way, at, behind }: PanelJoin, show: Show): string {
  const where = way === 'level' ? `${show.length(at, 'mark')} up` : `${show.length(at, 'mark')} from one end`
  if (behind === 'rail') return `${where}, behind the middle of the top rail`
  if (behind === 'stile') return `${where}, behind the middle of a stile`
  return `${where}, on a batten added behind it, for no rail or stile is there`
}
