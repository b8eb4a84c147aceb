import { type Length, nanometres, toMillimetres } from '../measure/length.ts'
import { ripSettings } from '../panelling/rips.ts'
import type { Part, Plan } from '../plan.ts'
import type { SheetSetting } from './sheetSteps.ts'
import type { Setting, Step } from './step.ts'

/** Boards of one kind that strips are ripped from. */
export interface RippedBoards {
  readonly label: string
  /** Every fence setting, widest first. */
  readonly fences: readonly Length[]
}

/** The saw, and the boards that the strips come out of. */
export interface SawTerms {
  /** The sheets as their layout is cut; without it every panel is ripped to its width, then cut to length. */
  readonly sheets?: readonly SheetSetting[] | undefined
  /** As a layout takes them; they go before `board`. */
  readonly boards?: readonly RippedBoards[] | undefined
  /** Dressed width of the board; undefined where nobody has said which. */
  readonly board?: Length | undefined
  /** Narrowest piece that may lie between blade and fence. */
  readonly safe: Length
}

/** Cut to fit on the day: braces to their opening, and captured stiles, which hang on another panel than the one they frame. */
export const isFitted = ({ name, carriedBy }: Part): boolean =>
  name.endsWith('brace') || (name.endsWith('stile') && name !== 'end stile' && carriedBy === 'end')

const stripParts = ({ parts }: Plan): readonly Part[] => parts.filter(({ material }) => material === 'strip')

/** All the strips ripped, then each kind of part cut to length, longest first, so that one stop may serve two kinds. */
export function stripSteps(plan: Plan, saw: SawTerms): readonly Step[] {
  const parts = stripParts(plan)
  const ahead = parts.filter((part) => !isFitted(part)).toSorted((a, b) => b.length - a.length)
  return [ripStep(plan, parts, saw), ...ahead.map((part, at) => crosscutStep(part, ahead[at - 1]))]
}

function ripStep({ spec }: Plan, parts: readonly Part[], saw: SawTerms): Step {
  const { strip } = spec
  const settings = ripFences(spec, saw)
  const fences = settings.length > 0 ? settings : [{ what: 'rip fence', length: strip }]
  return {
    id: 'rip strips',
    stage: 'rip',
    parts,
    cuts: [],
    settings: fences,
    work: parts.reduce((sum, { count }) => sum + count, 0),
    how:
      settings.length > 0
        ? 'the strip falls on the free side; run every board at a fence setting before the next'
        : 'the strips are this thick; let each fall on the free side of the blade',
    facts: {
      ripWidth: toMillimetres(strip),
      pieceAtFence: toMillimetres(nanometres(Math.min(...fences.map(({ length = strip }) => length)))),
      dust: true,
    },
  }
}

/** Every fence setting of every kind of board; none where nobody has said which board it is. */
function ripFences({ strip, kerf }: Plan['spec'], { boards, board, safe }: SawTerms): readonly Setting[] {
  const fence = (length: Length, of: string): Setting => ({
    what: 'rip fence',
    length,
    of,
    ...(length < safe ? { narrow: true } : {}),
  })
  if (boards) return boards.flatMap(({ label, fences }) => fences.map((length) => fence(length, label)))
  if (board === undefined) return []
  return ripSettings({ board, strip, kerf, safe }).settings.map((length) => ({ what: 'rip fence', length }))
}

const crosscutStep = (part: Part, before: Part | undefined): Step => ({
  id: `crosscut ${part.name}`,
  stage: 'crosscut',
  parts: [part],
  cuts: [part.label],
  settings: [{ what: 'stop', length: part.length }],
  work: part.count,
  how:
    before?.length === part.length
      ? `the stop stays where it was for the ${before.name}s`
      : 'square one end, then every one against the same stop',
  facts: { crosscut: true, pieceLength: toMillimetres(part.length) },
})
