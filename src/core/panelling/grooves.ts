import { type Length, nanometres } from '../measure/length.ts'

/**
 * Grooves across a panel, `count` of them or one every `pitch` (or both). They are spaced over the whole panel, or over
 * what shows between stiles that cover `stile` of it at each end.
 */
export interface GroovesAsked {
  readonly panel: Length
  readonly count?: number | undefined
  readonly pitch?: Length | undefined
  readonly kerf: Length
  readonly thickness: Length
  readonly equalOver: 'panel' | 'between stiles'
  readonly stile?: Length | undefined
}

/** One fence setting and the grooves (counted from 1) that it cuts; two where the panel is turned end for end. */
export interface GrooveSetting {
  readonly fence: Length
  readonly grooves: readonly number[]
}

/** Where to saw a panel's grooves, and how deep. */
export interface Grooves {
  readonly status: 'laid'
  readonly count: number
  /** From one end of the panel to the middle of each groove. */
  readonly centres: readonly Length[]
  /** Fence to nearest tooth for each: half a kerf less. */
  readonly fences: readonly Length[]
  /** The settings that do for all of them when the panel may be turned end for end. */
  readonly settings: readonly GrooveSetting[]
  /** From groove middle to groove middle: the board that the grooves draw. */
  readonly boardWidth: Length
  /** From the edge of what is divided to the first groove's middle; as wide as a board unless a pitch was asked for. */
  readonly margin: Length
  /** A third of the thickness, and the half that must never be passed. */
  readonly depth: Length
  readonly deepest: Length
  /** With a pitch: the margins differ from it by more than an eighth. */
  readonly unevenMargins: boolean
}

/**
 * Grooves that cannot be laid. `meet`: they would run into one another or off what shows; `most` is how many would go, evenly
 * spaced. `pitchTooWide`: not even one groove goes with margins near the pitch.
 */
export type GrooveObstacle =
  | { readonly status: 'impossible'; readonly kind: 'notPositive' | 'pitchTooWide' }
  | { readonly status: 'impossible'; readonly kind: 'meet'; readonly most: number }

interface Division {
  readonly start: number
  readonly shows: number
  readonly count: number
  readonly margin: number
  readonly step: number
}

/**
 * Lays grooves: n of them make n + 1 equal boards, measured middle to middle and edge to middle, so groove i of an even
 * division is at i / (n + 1). With a pitch they are centred, the count being the one whose margins come nearest the pitch.
 * Each place is rounded alone to a nanometre, and mirrored ones are exact mirrors.
 */
export function layGrooves(asked: GroovesAsked): Grooves | GrooveObstacle {
  const { panel, kerf, thickness, pitch } = asked
  const start = asked.equalOver === 'panel' ? 0 : (asked.stile ?? 0)
  const shows = panel - 2 * start
  if (!(shows > 0 && start >= 0 && kerf > 0 && thickness > 0))
    return { status: 'impossible', kind: 'notPositive' }
  const count = countOf(asked, shows)
  if (count === undefined) return { status: 'impossible', kind: 'notPositive' }
  if (count < 1) return { status: 'impossible', kind: 'pitchTooWide' }
  const step = pitch ?? shows / (count + 1)
  const margin = (shows - (count - 1) * step) / 2
  const most = Math.max(0, Math.ceil(shows / kerf) - 2)
  const apart = margin > kerf / 2 && (count === 1 || step > kerf)
  return apart
    ? place(asked, { start, shows, count, margin, step })
    : { status: 'impossible', kind: 'meet', most }
}

function countOf({ count, pitch }: GroovesAsked, shows: number): number | undefined {
  if (count !== undefined) return Number.isInteger(count) && count > 0 && (pitch ?? 1) > 0 ? count : undefined
  if (pitch === undefined || !(pitch > 0)) return undefined
  // A tie goes to fewer grooves and wider margins, which look the better of the two.
  return Math.ceil(shows / pitch - 0.5) - 1
}

function place({ panel, kerf, thickness, pitch }: GroovesAsked, division: Division): Grooves {
  const { start, count, margin, step } = division
  const near = (index: number): Length => nanometres(start + margin + index * step)
  const centres = Array.from({ length: count }, (_, index) =>
    index * 2 < count ? near(index) : ((panel - near(count - 1 - index)) as Length),
  )
  const fences = centres.map((centre) => nanometres(centre - kerf / 2))
  const deepest = Math.floor(thickness / 2) as Length
  return {
    status: 'laid',
    count,
    centres,
    fences,
    settings: pairUp(fences),
    boardWidth: nanometres(step),
    margin: nanometres(margin),
    depth: nanometres(thickness / 3),
    deepest,
    unevenMargins: pitch !== undefined && Math.abs(margin - pitch) > pitch / 8,
  }
}

function pairUp(fences: readonly Length[]): readonly GrooveSetting[] {
  const half = Math.ceil(fences.length / 2)
  return fences.slice(0, half).map((fence, index) => {
    const mirrored = fences.length - index
    return { fence, grooves: mirrored === index + 1 ? [mirrored] : [index + 1, mirrored] }
  })
}
