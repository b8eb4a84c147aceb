import { type Length, minus, nanometres, plus, ZERO } from '../measure/length.ts'
import type { Region } from '../stock/stock.ts'
import type { FastenerKind, FastenerRules, FastenerSize } from './fastenerSize.ts'

/** Into the broad face, into the edge of a sheet, or into the end grain of a board. */
export const INTO = ['face', 'edge', 'end'] as const
export type Into = (typeof INTO)[number]

/** What is driven through what into what. */
export interface Driven {
  readonly kind: FastenerKind
  readonly region: Region
  readonly held: Length
  /** How deep the receiver is in the direction of driving. */
  readonly receiver: Length
  readonly into: Into
  /** Glue carries the joint and the fastener only clamps it: a shorter bite will do. */
  readonly glued: boolean
  /** The narrower of the two pieces across the fastener, where it matters. */
  readonly width?: Length | undefined
}

/** Long enough by the rule of thumb; shorter but with a good bite; or so short that only glue makes it hold. */
export const GRIPS = ['full', 'short', 'with glue'] as const
export type Grip = (typeof GRIPS)[number]

/** A size that bites enough and stays inside. */
export interface Graded {
  readonly size: FastenerSize
  readonly grip: Grip
  /** How far it goes into the receiver. */
  readonly bite: Length
}

/** The size with its grip; undefined where it comes through or bites too little. */
export function gradeSize(size: FastenerSize, driven: Driven, rules: FastenerRules): Graded | undefined {
  const bite = minus(size.length, driven.held)
  if (plus(bite, rules.tipShort) > driven.receiver || bite < leastBite(driven, rules)) return undefined
  return { size, bite, grip: gripOf(size, bite, driven, rules) }
}

function gripOf({ length }: FastenerSize, bite: Length, driven: Driven, rules: FastenerRules): Grip {
  if (bite < leastBite({ ...driven, glued: false }, rules)) return 'with glue'
  const wanted = plus(nanometres(driven.held * rules.times[driven.kind]), more(driven, rules))
  return length >= wanted ? 'full' : 'short'
}

/** The least that has to go into the receiver. */
export function leastBite(driven: Driven, rules: FastenerRules): Length {
  const { kind, into, glued } = driven
  if (kind === 'screw' && into === 'edge') return glued ? rules.leastBite : rules.edgeBite
  return plus(glued ? rules.leastBiteGlued : rules.leastBite, more(driven, rules))
}

const more = ({ into }: Driven, rules: FastenerRules): Length => (into === 'end' ? rules.endGrainMore : ZERO)
