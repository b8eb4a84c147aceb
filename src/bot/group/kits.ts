import { type Kit, type KitPart, kitLabel, type MergedPart, mergeParts } from '../../core/group/mergeParts.ts'
import type { Context } from '../context.ts'
import { type Listed, partsOfPlan } from '../cutList.ts'
import { overlay, type PlanChoices } from '../planChoices.ts'
import { type Planned, planned } from '../plannedSurround.ts'
import { planFacts } from '../planReply.ts'
import { Refusal } from '../refusal.ts'
import type { Caution } from '../reply.ts'
import type { BotSettings } from '../settings.ts'
import type { Group, Member } from './group.ts'

/** A set of choices worked out, or why it cannot be built. */
interface Working {
  readonly worked: Planned | undefined
  readonly cautions: readonly Caution[]
  readonly refusal: Refusal | undefined
}

/** What one member builds, worked out; or why it cannot be built as it stands. */
export interface WorkedKit extends Working {
  readonly member: Member
  readonly choices: PlanChoices
  /** A sentence; undefined where the kit can be built. */
  readonly problem: string | undefined
}

/** The shared plan with what is the member's own laid over it. */
export const choicesOf = ({ plans }: Group, { plan, changes }: Member): PlanChoices =>
  overlay(plans[plan] ?? {}, changes)

export function workKit(group: Group, member: Member, context: Context): WorkedKit {
  const choices = choicesOf(group, member)
  const working = workChoices(choices, context)
  return { ...working, member, choices, problem: working.refusal?.message }
}

/** Kits that are remembered: several groups of the largest size. */
const MOST_REMEMBERED = 500

/** What was worked out before: a list of sixty kits differs by one from the list before. */
const remembered = new WeakMap<BotSettings, Map<string, Working>>()

/** Works out choices, or recalls them where they were asked for in the same words, units and stock before. */
export function workChoices(choices: PlanChoices, context: Context): Working {
  const { settings, settled, show, stock } = context
  const known = remembered.get(settings) ?? new Map<string, Working>()
  remembered.set(settings, known)
  const key = JSON.stringify([choices, settled, show.units, stock])
  const working = known.get(key) ?? workOut(choices, context)
  // Told again last, so that what nobody asks for any more goes first.
  known.delete(key)
  known.set(key, working)
  const [oldest] = known.keys()
  if (known.size > MOST_REMEMBERED && oldest !== undefined) known.delete(oldest)
  return working
}

function workOut(choices: PlanChoices, context: Context): Working {
  try {
    const worked = planned(choices, context)
    return { worked, cautions: context.cautions(planFacts(worked.plan, choices)), refusal: undefined }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return { worked: undefined, cautions: [], refusal: error }
  }
}

/** Everybody who has a place, in the order of their kits. */
export const workKits = (group: Group, context: Context): readonly WorkedKit[] =>
  group.members.filter(({ waiting }) => !waiting).map((member) => workKit(group, member, context))

const kitPart = (part: Listed): KitPart | undefined =>
  part.width === undefined || part.thickness === undefined
    ? undefined
    : {
        label: part.label,
        name: part.name ?? part.label,
        from: part.from,
        count: part.count,
        length: part.length,
        width: part.width,
        thickness: part.thickness,
        material: part.material,
        later: part.later,
      }

/** Kits that can be built, as parts. */
export const kitsOf = (worked: readonly WorkedKit[]): readonly Kit[] =>
  worked.flatMap(({ member, worked: kit }) =>
    kit
      ? [
          {
            number: member.kit,
            parts: partsOfPlan({ parts: kit.cut }).flatMap((part) => kitPart(part) ?? []),
          },
        ]
      : [],
  )

/** One list of all kits that can be built, with spares by the group's rule. */
export const mergedList = (group: Group, worked: readonly WorkedKit[]): readonly MergedPart[] =>
  mergeParts(kitsOf(worked), group.spare)

/** A merged list as rows of a cut list, for the cutting engine. */
export const asCutList = (merged: readonly MergedPart[]): readonly Listed[] =>
  merged.map(({ label, names, from, length, width, thickness, material, later, count, spare }) => ({
    label,
    count: count + spare,
    from,
    length,
    width,
    thickness,
    ...(material !== undefined && { material }),
    grain: false,
    later,
    name: names.join(', ').slice(0, 60),
  }))

/** `K07 needs looking at: ...`, one line a kit that cannot be built as it stands. */
export const problemLines = (worked: readonly WorkedKit[]): readonly string[] =>
  worked.flatMap(({ member, problem }) =>
    problem ? [`${kitLabel(member.kit)} is left out: ${problem}`] : [],
  )
