import { type Length, toMillimetres } from '../measure/length.ts'
import { ripSettings } from '../panelling/rips.ts'
import type { Part, Plan } from '../plan.ts'
import type { Setting, Step } from './step.ts'

/** The saw, and the board that the strips come out of. */
export interface SawTerms {
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

function ripStep({ spec }: Plan, parts: readonly Part[], { board, safe }: SawTerms): Step {
  const { strip, kerf } = spec
  const settings = board === undefined ? [] : ripSettings({ board, strip, kerf, safe }).settings
  const fences = settings.length > 0 ? settings : [strip]
  return {
    id: 'rip strips',
    stage: 'rip',
    parts,
    cuts: [],
    settings: fences.map((length): Setting => ({ what: 'rip fence', length })),
    work: parts.reduce((sum, { count }) => sum + count, 0),
    how:
      settings.length > 0
        ? 'the strip falls on the free side; run every board at a fence setting before the next'
        : 'the strips are this thick; let each fall on the free side of the blade',
    facts: {
      ripWidth: toMillimetres(strip),
      pieceAtFence: toMillimetres(fences.at(-1) ?? strip),
      dust: true,
    },
  }
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
