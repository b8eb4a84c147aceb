import { type Length, minus } from '../measure/length.ts'
import type { Driven, Graded, Grip } from './fastenerBite.ts'
import { type Holes, holesFor, type Receiver, threadIn } from './fastenerHoles.ts'
import { chooseFastener, type NoFastener } from './fastenerLength.ts'
import type { FastenerSize, FastenerTables } from './fastenerSize.ts'
import { type FastenerRow, type NoRow, spaceRow } from './fastenerSpacing.ts'
import { nailWithdrawal, screwWithdrawal, type Withdrawal } from './fastenerWithdrawal.ts'

/** One joint to fasten. */
export interface JointRequest extends Driven {
  readonly jointLength: Length
  /** Undefined where the wood is not known: then nothing is said of its strength. */
  readonly wood?: Receiver | undefined
  /** What pulls the joint apart, N in all. */
  readonly load?: number | undefined
}

/** How to fasten a joint. */
export interface Fastening {
  readonly status: 'fastened'
  readonly size: FastenerSize
  readonly grip: Grip
  readonly bite: Length
  /** What is left between the tip and the far face. */
  readonly tipShort: Length
  readonly row: FastenerRow
  readonly holes: Holes | undefined
  /** Of one fastener; undefined into end grain, which design counts for nothing, and where the wood is not known. */
  readonly withdrawal: Withdrawal | undefined
}

export type NoFastening =
  | NoFastener
  | NoRow
  /** The load cannot be answered for: end grain, or a wood without a gravity. */
  | { readonly status: 'impossible'; readonly reason: 'no strength' }

/** Length, holes, strength and spacing for a joint, or what stands against it. Throws as chooseFastener and for a load below 0. */
export function fastenJoint(request: JointRequest, tables: FastenerTables): Fastening | NoFastening {
  const { load = 0, jointLength, into, wood } = request
  if (!(load >= 0 && jointLength > 0))
    throw new RangeError(`load and joint must be above 0: ${load}, ${jointLength}`)
  const chosen = chooseFastener(request, tables)
  if (chosen.status === 'impossible') return chosen
  const withdrawal = withdrawalOf(chosen, request)
  if (load > 0 && !withdrawal) return { status: 'impossible', reason: 'no strength' }
  const atLeast = withdrawal ? Math.ceil(load / withdrawal.allowable) : 1
  const drilled = holesFor(chosen, into, wood, false)?.needed === true
  const row = spaceRow({ size: chosen.size, jointLength, drilled, atLeast }, tables.distances)
  if (row.status === 'impossible') return row
  const { size, grip, bite } = chosen
  const holes = holesFor(chosen, into, wood, row.close)
  return {
    status: 'fastened',
    size,
    grip,
    bite,
    tipShort: minus(request.receiver, bite),
    row,
    holes,
    withdrawal,
  }
}

function withdrawalOf(graded: Graded, { kind, into, wood }: JointRequest): Withdrawal | undefined {
  if (into === 'end' || !wood?.gravity) return undefined
  const { gravity } = wood
  const { diameter } = graded.size
  if (kind === 'screw') return screwWithdrawal({ gravity, diameter, bite: threadIn(graded) })
  return nailWithdrawal({ gravity, diameter, bite: graded.bite })
}
