import type { Spec } from '../core/plan.ts'
import { type Conditional, idleLines } from './idle.ts'
import type { PlanChoices } from './planChoices.ts'

/** Choices that only some plans have use for. */
const CONDITIONAL: readonly Conditional<PlanChoices, Spec>[] = [
  {
    option: 'fit',
    what: 'captured or halved corners',
    how: 'corner=',
    isUsed: ({ corner }) => corner === 'captured' || corner === 'halved',
  },
  {
    option: 'gap',
    what: 'a lid or a bottom',
    how: 'lid= or bottom=',
    isUsed: ({ lid, bottom }) => lid !== undefined || bottom !== undefined,
  },
  { option: 'handle', what: 'a lid', how: 'lid=', isUsed: ({ lid }) => lid !== undefined },
  { option: 'drain', what: 'a bottom', how: 'bottom=', isUsed: ({ bottom }) => bottom !== undefined },
  {
    option: 'spacing',
    what: 'drain holes in a bottom',
    how: 'bottom= and drain=',
    isUsed: ({ bottom }) => bottom?.drain !== undefined,
  },
  { option: 'cord', what: 'a cord notch', how: 'cordin=', isUsed: ({ cord }) => cord !== undefined },
]

/** Choices that go for nothing in a plan, one line each. */
export const idleChoices = (choices: PlanChoices, spec: Spec): readonly string[] =>
  idleLines(choices, spec, CONDITIONAL)
