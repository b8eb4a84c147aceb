import type { Plan } from '../plan.ts'
import { closingSteps } from './closing.ts'
import { braceSteps, fitSteps, frameSteps } from './frames.ts'
import { cutoutSteps, grooveSteps, panelSteps } from './panels.ts'
import type { Step } from './step.ts'
import { type SawTerms, stripSteps } from './strips.ts'

/**
 * The steps of building a plan in their order, taken from its parts and joints alone: whatever a plan comes to have is cut
 * once, fixed where it is carried, and in hand when the box is put together.
 */
export const buildSteps = (plan: Plan, saw: SawTerms): readonly Step[] => [
  ...panelSteps(plan, saw),
  ...stripSteps(plan, saw),
  ...grooveSteps(plan),
  ...cutoutSteps(plan),
  ...frameSteps(plan),
  ...fitSteps(plan),
  ...braceSteps(plan),
  ...closingSteps(plan),
]
