import { nanometres } from '../measure/length.ts'
import { toMillimetres } from '../measure/length.ts'
import { squareWithin } from '../panelling/squareCheck.ts'
import type { Face } from '../panelling/face.ts'
import type { Part, Plan } from '../plan.ts'
import type { Carried } from '../plan/spec.ts'
import type { Setting, Step } from './step.ts'
import { isFitted } from './strips.ts'

/** The strips fixed to each panel, whatever they are, once all of them are cut; a step for each kind of panel. */
export function frameSteps(plan: Plan): readonly Step[] {
  const carriers = [...new Set(plan.parts.map(({ carriedBy }) => carriedBy))]
  return carriers.flatMap((carrier): readonly Step[] => {
    const own = plan.parts.filter((part) => part.carriedBy === carrier && !isFitted(part))
    const strips = own.filter(({ material }) => material === 'strip')
    if (strips.length === 0) return []
    const face = plan.faces.find(({ name }) => name === carrier)
    return [
      {
        id: `frame ${carrier}`,
        stage: 'frame',
        parts: own,
        cuts: [],
        settings: face ? [diagonalsOf(face)] : [],
        work: strips.reduce((sum, { count }) => sum + count, 0),
        how: frameWords(carrier),
        facts: { brads: true, glue: true },
      },
    ]
  })
}

const frameWords = (carrier: Carried): string =>
  carrier === 'lid' || carrier === 'bottom'
    ? `glue and nail the strips on the ${carrier}`
    : 'glue and nail the strips on the panel, rails first; both diagonals the same before the glue sets'

/** Both diagonals of a frame, edge to edge. */
export function diagonalsOf({ name, shows, height }: Face): Setting {
  const length = nanometres(Math.hypot(shows, height))
  return { what: `${name} diagonals`, length, within: squareWithin(length) }
}

/** Stiles that are measured on the frames and cut to fit. */
export const fitSteps = (plan: Plan): readonly Step[] =>
  plan.parts
    .filter((part) => isFitted(part) && part.name.endsWith('stile'))
    .map((part) => ({
      id: `fit ${part.name}`,
      stage: 'fit' as const,
      parts: [part],
      cuts: [part.label],
      settings: [
        { what: 'stop', length: part.length },
        { what: 'gap at each end', length: plan.fit },
        { what: 'lip', length: plan.lip },
      ],
      work: part.count,
      how: 'hold it between the rails of the next panel, mark, cut; fix it to the edge of the end panel',
      facts: { crosscut: true, brads: true, glue: true, pieceLength: toMillimetres(part.length) },
    }))

/** Each brace laid on its frame, marked, cut and fixed. */
export const braceSteps = (plan: Plan): readonly Step[] =>
  plan.faces.flatMap(({ name, brace }): readonly Step[] => {
    const part = plan.parts.find((each) => each.name === `${name} brace`)
    return brace && part ? [braceStep(name, part, brace)] : []
  })

const braceStep = (name: Face['name'], part: Part, brace: NonNullable<Face['brace']>): Step => ({
  id: `brace ${name}`,
  stage: 'brace',
  parts: [part],
  cuts: [part.label],
  settings: [
    { what: 'saw angle', degrees: brace.saw },
    { what: 'tip to tip', length: brace.length },
  ],
  work: part.count,
  how: 'lay the strip on the frame and mark it; saw from square, both ends alike',
  facts: { mitre: brace.saw, crosscut: true, brads: true, glue: true },
})
