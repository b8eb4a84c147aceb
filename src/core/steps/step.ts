import type { Facts } from '../checks/cautionFacts.ts'
import type { Length } from '../measure/length.ts'
import type { Part } from '../plan.ts'

/** What is done in a step, in the order in which a box is built. */
export const STAGES = [
  'break down',
  'cut panel',
  'rip',
  'crosscut',
  'groove',
  'cut out',
  'frame',
  'fit',
  'brace',
  'dry fit',
  'mark',
  'finish',
  'assemble',
  'store flat',
] as const
export type Stage = (typeof STAGES)[number]

/** One number to set or to measure; fences and stops are to the nearest tooth, angles are the saw's scale, from square. */
export interface Setting {
  readonly what: string
  readonly length?: Length
  readonly degrees?: number
  /** How far off it may be, a length. */
  readonly within?: Length
  /** What is cut at it, where that is not plain from the step: the label of a board. */
  readonly of?: string
  /** Less lies between blade and fence than a hand may be near: a push block. */
  readonly narrow?: boolean
}

/** A step of a build. */
export interface Step {
  /** Its name, which stays the same whatever the plan's sizes become: `crosscut side rail`. */
  readonly id: string
  readonly stage: Stage
  /** The parts that it has in hand. */
  readonly parts: readonly Part[]
  /** Labels of the parts that are cut to size in it. */
  readonly cuts: readonly string[]
  /** In the order in which they are set or measured. */
  readonly settings: readonly Setting[]
  /** Pieces or strokes that take time, by which its minutes are reckoned. */
  readonly work: number
  /** One line that says how. */
  readonly how: string
  /** What its cautions are picked by. */
  readonly facts: Facts
}

/** Stages that make no difference between parts of one length and another. */
const WIDTHS_ALONE: ReadonlySet<Stage> = new Set(['break down', 'rip'])

/** The numbers of a step as one text: another text means that something to cut, set or measure has changed. */
export const printOf = ({ stage, parts, settings }: Step): string =>
  JSON.stringify([
    settings.map(({ what, length, degrees, within }) => [what, length, degrees, within]),
    parts.map(({ name, count, length, width, thickness }) =>
      WIDTHS_ALONE.has(stage) ? [count, width, thickness] : [name, count, length, width, thickness],
    ),
  ])
