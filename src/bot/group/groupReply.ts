import { kitLabel, type MergedPart } from '../../core/group/mergeParts.ts'
import type { Context } from '../context.ts'
import type { Caution, Figure } from '../reply.ts'
import type { Group, Need } from './group.ts'
import type { WorkedKit } from './kits.ts'

/** How much of it nobody brings yet. */
export const missing = ({ count, claims }: Need): number =>
  Math.max(0, count - claims.reduce((sum, claim) => sum + claim.count, 0))

/** What every answer about a group tells scripts: who, how many, and how far it has come. */
export function groupFigures(
  group: Group,
  worked: readonly WorkedKit[],
  merged: readonly MergedPart[],
): Readonly<Record<string, Figure>> {
  return {
    members: group.members.length,
    waiting: group.members.filter(({ waiting }) => waiting).length,
    kits: worked.filter((kit) => kit.worked).length,
    parts: merged.reduce((sum, { count, spare }) => sum + count + spare, 0),
    unclaimed: group.needs.filter((need) => missing(need) > 0).map(({ name }) => name),
    version: group.posted?.version ?? 0,
  }
}

/** Every caution once, the gravest first, as they stand in the config. */
export function onceEach(cautions: readonly Caution[], { reference }: Context): readonly Caution[] {
  const place = ({ id, text }: Caution) =>
    reference.cautions.findIndex((rule) => rule.id === id && rule.text === text)
  const once = new Map(cautions.map((caution) => [caution.text, caution]))
  return [...once.values()].sort((a, b) => place(a) - place(b))
}

/** Every caution that one of the kits calls for. */
export const kitCautions = (worked: readonly WorkedKit[], context: Context): readonly Caution[] =>
  onceEach(
    worked.flatMap(({ cautions }) => cautions),
    context,
  )

/** What each person is called, by their id. */
export async function namesOf(
  users: readonly string[],
  context: Context,
): Promise<ReadonlyMap<string, string>> {
  const unique = [...new Set(users)]
  return new Map(
    await Promise.all(
      unique.map(async (user) => [user, user ? await context.nameOf(user) : 'somebody'] as const),
    ),
  )
}

/** `K01, K02 and K05`, or how many there are where they are many. */
export const kitNames = (kits: readonly number[]): string => {
  const labels = kits.map(kitLabel)
  return labels.length > 8
    ? `${labels.length} kits (${labels.slice(0, 6).join(', ')} ...)`
    : labels.join(', ')
}
