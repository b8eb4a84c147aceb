import { ZERO } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'
import { type Drive, drives } from '../core/plan/drive.ts'
import { type Joint, layJoints } from '../core/plan/joints.ts'
import { type Fastening, fastenJoint, type NoFastening } from '../core/quantities/fastener.ts'
import { GRIPS } from '../core/quantities/fastenerBite.ts'
import type { FastenerKind } from '../core/quantities/fastenerSize.ts'
import type { Species } from '../core/moisture/species.ts'
import type { Region } from '../core/stock/stock.ts'
import type { Reference } from './reference.ts'

/** What the joints of a plan are fastened with. */
export interface PlanFastening {
  readonly kind: FastenerKind | undefined
  readonly wood: Species
  readonly region: Region
}

/** A joint of a plan with the better way to drive it, or with what stands against every way. */
export type FastenedJoint = { readonly joint: Joint; readonly kind: FastenerKind } & (
  | { readonly drive: Drive; readonly fastening: Fastening }
  | { readonly obstacle: NoFastening }
)

/** Every joint of a plan: brads where glue holds for good, screws where it has to come apart, unless a kind is asked for. */
export const fastenPlan = (
  plan: Plan,
  terms: PlanFastening,
  reference: Reference,
): readonly FastenedJoint[] =>
  layJoints(plan).map((joint) => {
    const kind = terms.kind ?? (joint.fixing === 'screwed' ? 'screw' : 'brad')
    const tried = drives(joint, plan).map((drive) => ({
      drive,
      found: tryDrive(joint, drive, kind, terms, reference, plan),
    }))
    const ways = tried.flatMap(({ drive, found }) =>
      found.status === 'fastened' ? [{ drive, fastening: found }] : [],
    )
    const [best] = ways.toSorted((a, b) => GRIPS.indexOf(a.fastening.grip) - GRIPS.indexOf(b.fastening.grip))
    if (best) return { joint, kind, ...best, fastening: throughHoles(joint, best.fastening) }
    const [first] = tried.flatMap(({ found }) => (found.status === 'impossible' ? [found] : []))
    if (!first) throw new RangeError(`no way to drive ${joint.part} on ${joint.onto}`)
    return { joint, kind, obstacle: first }
  })

/** A bracket says how many screws it takes, and has the holes for them. */
const throughHoles = ({ holes }: Joint, fastening: Fastening): Fastening =>
  holes === undefined
    ? fastening
    : {
        ...fastening,
        row: { ...fastening.row, count: holes, spacing: ZERO },
        holes: fastening.holes && { ...fastening.holes, clear: undefined },
      }

function tryDrive(
  { length, fixing, holes }: Joint,
  { held, receiver, into, width, receives }: Drive,
  kind: FastenerKind,
  { wood, region }: PlanFastening,
  { fasteners }: Reference,
  { panelHeight }: Plan,
): Fastening | NoFastening {
  return fastenJoint(
    {
      kind,
      region,
      held,
      receiver,
      into,
      width,
      glued: fixing === 'glued',
      // Steel does not split: only the panel that it lies on counts.
      jointLength: holes === undefined ? length : panelHeight,
      // Of a sheet no source says what it bears.
      wood: receives === 'sheet' ? undefined : wood,
    },
    fasteners,
  )
}
