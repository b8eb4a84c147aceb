import { BRACKET, placeBrackets } from '../core/plan/hardware.ts'
import type { Plan } from '../core/plan.ts'
import type { Carried, Place, Solid } from './solids.ts'

type Block = Pick<Solid, 'low' | 'high'>

/**
 * The two legs of every corner bracket as blocks, against the sides that they are drawn with: near each rail at both ends.
 * None for corners that have no brackets.
 */
export const bracketBlocks = (plan: Plan, pulled: readonly Carried[]): readonly Block[] =>
  plan.hardware.some(({ name }) => name === 'corner bracket')
    ? pulled.flatMap(({ name, solids: [panel] }) =>
        panel && (name === 'front' || name === 'back') ? onSide(plan, panel, name === 'front') : [],
      )
    : []

function onSide({ spec, inside }: Plan, panel: Solid, isFront: boolean): readonly Block[] {
  const { leg, feet } = placeBrackets(spec, panel.part.width)
  const start = (panel.low[0] + panel.high[0] - inside.length) / 2
  const wall = isFront ? panel.high[1] : panel.low[1]
  /** A block by how far it begins and ends from the corner along the side, and in from it. */
  const block = (end: number, foot: number, along: Span, inward: Span): Block => {
    const x = along.map((value) => (end === 0 ? start + value : start + inside.length - value))
    const y = inward.map((value) => (isFront ? wall + value : wall - value))
    const corner = (pick: (...of: readonly number[]) => number, z: number): Place => [
      pick(...x),
      pick(...y),
      panel.low[2] + foot + z,
    ]
    return { low: corner(Math.min, 0), high: corner(Math.max, leg) }
  }
  return [0, 1].flatMap((end) =>
    feet.flatMap((foot) => [
      block(end, foot, [0, leg], [0, BRACKET]),
      block(end, foot, [0, BRACKET], [BRACKET, leg]),
    ]),
  )
}

type Span = readonly [from: number, to: number]
