import type { Length } from '../core/measure/length.ts'
import type { Cutout } from '../core/plan/part.ts'

/** Where things stand along one side of a panel, from one end of it, the nearest first; each place once. */
export type Places = readonly Length[]

/** The columns and the rows of a cutout's places. */
export const linesOf = ({ at }: Pick<Cutout, 'at'>): { readonly along: Places; readonly across: Places } => ({
  along: once(at.map(({ along }) => along)),
  across: once(at.map(({ across }) => across)),
})

const once = (places: Places): Places => [...new Set(places)].sort((a, b) => a - b)

/** Longer than this a list of places is not read, and is told by its steps. */
const MOST = 8

/** Halves of an odd nanometre may go either way. */
const HAIR = 2

/** The steps from one place to the next, each kind once; over a foot it is longer than between two. */
export function stepsOf(places: Places): readonly (readonly [from: Length, to: Length])[] {
  const steps = places.slice(1).map((to, index) => [places[index] as Length, to] as const)
  return steps.filter(
    ([from, to], index) =>
      steps.findIndex(([start, end]) => Math.abs(end - start - (to - from)) <= HAIR) === index,
  )
}

/** `3, 9 and 15`; of many `3, then every 6 (over a foot 7 1/2), the last 93`. */
export function placesWords(places: Places, say: (length: Length) => string): string {
  const said = places.map(say)
  if (said.length <= MOST)
    return said.length === 1 ? said.join() : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`
  const [step, longer] = stepsOf(places).map(([from, to]) => say((to - from) as Length))
  const over = longer === undefined ? '' : ` (over a foot ${longer})`
  return `${said[0]}, then every ${step}${over}, the last ${said.at(-1)}`
}
