import type { Blank, Saw } from './blank.ts'
import { settle, spanOf } from './blank.ts'
import type { CutKind, Narrow } from './cutOrder.ts'
import type { Work } from './work.ts'

/** A cut that can be made now, and the setting it needs. */
export interface Move {
  /** Cuts with one key are made one after another without touching the fence. */
  readonly key: string
  readonly of: 'sheet' | 'board'
  readonly kind: CutKind
  readonly across: 'x' | 'y'
  readonly setting: number
  /** The size that stays between fence and blade. */
  readonly held: number
  readonly atFence: Work
  readonly free: Work
  readonly narrow?: Narrow | undefined
  /** Whether the strip would come free without this cut, were the others cut first. */
  readonly mayBeLast: boolean
}

type Run = Extract<Work, { kind: 'run' }>
type Trim = Extract<Work, { kind: 'trim' }>

const without = (run: Run, index: number): Run => ({
  ...run,
  strips: run.strips.filter((_, at) => at !== index),
})

/** Only a rip runs along the fence; a crosscut has a stop, and any length may lie at it. */
const isNarrow = (saw: Saw, of: string, across: 'x' | 'y', size: number): boolean =>
  of === 'sheet' && across === 'y' && size < saw.safeWidth

/** What the whole run leaves beside its strips; minus one kerf when they fill it. */
const spareOf = (saw: Saw, blank: Blank, run: Run): number =>
  run.strips.reduce((span, strip) => span - strip.size - saw.kerf, spanOf(blank, run.across))

/** A wide strip stays until the narrow ones are off, where nothing else would be wide enough to hold them by. */
function mustWait(saw: Saw, blank: Blank, run: Run, index: number, spare: number): boolean {
  const others = run.strips.filter((_, at) => at !== index)
  const narrow = others.filter((strip) => isNarrow(saw, blank.of, run.across, strip.size)).length
  if (narrow === 0 || narrow < others.length) return false
  const isLast = narrow === 1 && spare === -saw.kerf
  return !isLast && spare < saw.safeWidth
}

function moveStrip(saw: Saw, blank: Blank, run: Run, index: number, spare: number): Move | undefined {
  const { size, work } = run.strips[index]!
  const { across } = run
  const kind = across === 'x' ? ('crosscut' as const) : ('rip' as const)
  const rest = without(run, index)
  const move = (held: number, atFence: Work, free: Work, narrow?: Narrow): Move => ({
    key: `${blank.of} ${kind} ${held}`,
    of: blank.of,
    kind,
    across,
    setting: held,
    held,
    atFence,
    free,
    narrow,
    mayBeLast: spare === -saw.kerf && run.strips.length > 1,
  })
  if (!isNarrow(saw, blank.of, across, size))
    return mustWait(saw, blank, run, index, spare) ? undefined : move(size, work, rest)
  const other = spanOf(blank, across) - size - saw.kerf
  return other < saw.safeWidth ? move(size, work, rest, 'both sides') : move(other, rest, work, 'free side')
}

function moveTrim(blank: Blank, { across, off, next }: Trim): Move {
  const held = spanOf(blank, across) - off
  const setting = blank.of === 'board' ? off : held
  return {
    key: `${blank.of} trim ${across} ${setting}`,
    of: blank.of,
    kind: 'trim',
    across,
    setting,
    held,
    atFence: next,
    free: { kind: 'rest' },
    mayBeLast: false,
  }
}

/** The cuts that a blank is ready for, one for each size of strip. */
export function movesOf(saw: Saw, blank: Blank): Move[] {
  const { work } = blank
  if (work.kind === 'trim') return [moveTrim(blank, work)]
  if (work.kind !== 'run') return []
  const spare = spareOf(saw, blank, work)
  const seen = new Set<number>()
  return work.strips.flatMap(({ size }, index) => {
    if (seen.has(size)) return []
    seen.add(size)
    return moveStrip(saw, blank, work, index, spare) ?? []
  })
}

/** The settings of all the wide strips of a run, also of one that must wait. */
export const wideKeys = (saw: Saw, { of, work }: Blank): string[] =>
  work.kind !== 'run'
    ? []
    : work.strips
        .filter(({ size }) => !isNarrow(saw, of, work.across, size))
        .map(({ size }) => `${of} ${work.across === 'x' ? 'crosscut' : 'rip'} ${size}`)

const sizeTo = (blank: Blank, across: 'x' | 'y', span: number, work: Work): Blank =>
  settle(across === 'x' ? { ...blank, work, length: span } : { ...blank, work, width: span })

/** What a cut makes of a blank: the piece at the fence, and what the blade leaves on the free side, if anything. */
export function cutBlank(saw: Saw, blank: Blank, { across, held, atFence, free }: Move): Blank[] {
  const left = spanOf(blank, across) - held - saw.kerf
  return [sizeTo(blank, across, held, atFence), ...(left > 0 ? [sizeTo(blank, across, left, free)] : [])]
}

/** The blanks that one level of cuts sets free in the end. */
export function blanksWithin(blank: Blank): Blank[] {
  const { work } = blank
  if (work.kind === 'trim')
    return [sizeTo(blank, work.across, spanOf(blank, work.across) - work.off, work.next)]
  if (work.kind !== 'run') return []
  return work.strips.map((strip) => sizeTo(blank, work.across, strip.size, strip.work))
}
