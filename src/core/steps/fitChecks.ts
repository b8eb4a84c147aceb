import { type Length, ZERO } from '../measure/length.ts'
import type { Plan } from '../plan.ts'
import { diagonalsOf } from './frames.ts'
import type { Setting } from './step.ts'

/** What to measure when the box stands without glue, in the order in which it is checked. */
export function fitChecks(plan: Plan): readonly Setting[] {
  const { inside, spec, faces, lip, fit, lid, bottom, halving } = plan
  const there = (what: string, length: Length | undefined): readonly Setting[] =>
    length !== undefined && length > ZERO ? [{ what, length }] : []
  return [
    { what: 'inside length', length: inside.length },
    { what: 'inside width', length: inside.width },
    ...faces.map(diagonalsOf),
    { what: 'panel thickness', length: spec.sheet },
    { what: 'strip thickness', length: spec.strip },
    ...there('lip', lip),
    ...there('gap at each end of a corner stile', fit),
    ...there('slot width', halving?.slot),
    ...faces.flatMap(({ name, brace }) =>
      brace ? [{ what: `${name} brace, saw angle`, degrees: brace.saw }] : [],
    ),
    ...there('room round the lid', lid?.gap),
    ...there('room round the bottom', bottom?.gap),
  ]
}
