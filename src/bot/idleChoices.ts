import type { Spec } from '../core/plan.ts'
import type { PlanChoices } from './planChoices.ts'

/** A choice that only some plans have use for. */
interface Conditional {
  readonly choice: keyof PlanChoices
  /** What it is for, and the options that bring that about. */
  readonly what: string
  readonly how: string
  readonly isUsed: (spec: Spec) => boolean
}

const CONDITIONAL: readonly Conditional[] = [
  {
    choice: 'fit',
    what: 'captured or halved corners',
    how: 'corner=',
    isUsed: ({ corner }) => corner === 'captured' || corner === 'halved',
  },
  {
    choice: 'gap',
    what: 'a lid or a bottom',
    how: 'lid= or bottom=',
    isUsed: ({ lid, bottom }) => lid !== undefined || bottom !== undefined,
  },
  { choice: 'handle', what: 'a lid', how: 'lid=', isUsed: ({ lid }) => lid !== undefined },
  { choice: 'drain', what: 'a bottom', how: 'bottom=', isUsed: ({ bottom }) => bottom !== undefined },
  {
    choice: 'spacing',
    what: 'drain holes in a bottom',
    how: 'bottom= and drain=',
    isUsed: ({ bottom }) => bottom?.drain !== undefined,
  },
  { choice: 'cord', what: 'a cord notch', how: 'cordin=', isUsed: ({ cord }) => cord !== undefined },
]

/** Options that were chosen and go for nothing, one line each. To turn off what is not there is no slip. */
export const idleLines = (choices: PlanChoices, spec: Spec): readonly string[] =>
  CONDITIONAL.filter(({ choice, isUsed }) => !isOff(choices[choice]) && !isUsed(spec)).map(
    ({ choice, what, how }) => `${choice}= is for ${what}: there is none here (${how})`,
  )

const isOff = (value: unknown): boolean => value === undefined || value === 'none' || value === 0
