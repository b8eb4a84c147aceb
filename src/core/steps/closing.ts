import { layJoints } from '../plan/joints.ts'
import type { Plan } from '../plan.ts'
import { fitChecks } from './fitChecks.ts'
import type { Step } from './step.ts'

/** Whether the corners are glued for good: some part of one panel is glued to another panel or its frame. */
export function isGluedUp(plan: Plan): boolean {
  const carriers = new Map<string, string>(plan.parts.map(({ name, carriedBy }) => [name, carriedBy]))
  return layJoints(plan).some(
    ({ part, onto, fixing }) =>
      fixing === 'glued' && carriers.has(part) && carriers.get(part) !== carriers.get(onto),
  )
}

/**
 * From the dry fit to the end. A box that comes apart is finished panel by panel, put together and stored flat; one that is
 * glued up is put together first, for glue wants bare wood.
 */
export function closingSteps(plan: Plan): readonly Step[] {
  const glued = isGluedUp(plan)
  const pieces = plan.parts.reduce((sum, { count }) => sum + count, 0)
  const panels = plan.parts
    .filter(({ material }) => material === 'sheet')
    .reduce((sum, { count }) => sum + count, 0)
  const common = { parts: plan.parts, cuts: [], facts: {} }
  const dryFit: Step = {
    ...common,
    id: 'dry fit',
    stage: 'dry fit',
    settings: fitChecks(plan),
    work: panels,
    how: 'put it together without glue and measure all of these before anything is final',
  }
  const mark: Step = {
    ...common,
    id: 'mark',
    stage: 'mark',
    settings: [],
    work: panels,
    how: 'number both sides of every corner where it will not show, so that it goes together the same way again',
  }
  const finish: Step = {
    ...common,
    id: 'finish',
    stage: 'finish',
    settings: [],
    work: panels,
    how: glued
      ? 'sand and coat the whole box once the glue is hard'
      : 'sand and coat every panel on both faces; let it dry before it goes together',
    // Which finish it is nobody has said: the cautions are for the one that does most harm.
    facts: { dust: true, finishKind: 'oil' },
  }
  const assemble: Step = {
    ...common,
    id: 'assemble',
    stage: 'assemble',
    settings: [
      { what: 'inside length', length: plan.inside.length },
      { what: 'inside width', length: plan.inside.width },
    ],
    work: panels + plan.hardware.reduce((sum, { count }) => sum + count, 0),
    how: assembleWords(plan, glued),
    facts: glued ? { glue: true, brads: true } : {},
  }
  const store: Step = {
    ...common,
    id: 'store flat',
    stage: 'store flat',
    settings: [{ what: 'stack, so high', length: plan.flatStack }],
    work: pieces > 0 ? panels : 0,
    how: 'take it apart and stack the panels flat, finished faces parted',
  }
  return glued ? [dryFit, mark, assemble, finish] : [dryFit, mark, finish, assemble, store]
}

const WORDS: Partial<Readonly<Record<Plan['spec']['corner'], string>>> = {
  captured: 'stand the sides, then push each end straight on until its stiles lie between the rails',
  cleated: 'stand the sides, set the ends against the blocks and drive the screws from inside',
  halved: 'stand the ends, then lower the sides over them, slot in slot',
  bracketed: 'stand the panels up and screw the brackets into the corners',
}

const assembleWords = ({ spec, bottom, lid }: Plan, glued: boolean): string =>
  [
    glued
      ? 'glue and nail the sides between the ends; inside sizes and diagonals before the glue sets'
      : (WORDS[spec.corner] ?? 'put the panels together'),
    ...(bottom ? ['then the bottom'] : []),
    ...(lid ? ['then the lid'] : []),
  ].join('; ')
