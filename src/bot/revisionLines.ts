import type { Revision } from './state.ts'

/**
 * One line for each of the newest `most` revisions, and one for how many more there are. `revisions` is newest first, as
 * the store gives them; an undo or redo names the edit it is about where all since the first are there.
 */
export async function revisionLines(
  revisions: readonly Revision[],
  most: number,
  nameOf: (user: string) => Promise<string>,
): Promise<readonly string[]> {
  const about = editsMoved(revisions)
  const more = revisions.length - most
  const shown = revisions.slice(0, most)
  const users = [...new Set(shown.map(({ user }) => user))]
  const names = new Map(
    await Promise.all(users.map(async (user) => [user, user && (await nameOf(user))] as const)),
  )
  return [
    ...shown.map((revision) =>
      revisionLine({ ...revision, user: names.get(revision.user) ?? '' }, about.get(revision.revision)),
    ),
    ...(more > 0 ? [`${more} more before these`] : []),
  ]
}

function revisionLine({ revision, at, user, command, way }: Revision, edit: Revision | undefined): string {
  const when = at.toISOString().slice(0, 16).replace('T', ' ')
  const did = way === 'undo' ? 'took back' : 'brought back'
  const said = edit ? ` (${did} ${edit.revision}: ${edit.command})` : ''
  return `${revision}, ${when} UTC, ${user || 'somebody'}: ${command}${said}`
}

/** The edit that each undo or redo is about, by the number of the undo; none where the first revisions are gone. */
function editsMoved(revisions: readonly Revision[]): ReadonlyMap<number, Revision> {
  const about = new Map<number, Revision>()
  if (revisions.at(-1)?.revision !== 1) return about
  const done: Revision[] = []
  const undone: Revision[] = []
  for (const revision of [...revisions].reverse()) {
    if (revision.way === 'edit') {
      done.push(revision)
      undone.length = 0
      continue
    }
    const [from, to] = revision.way === 'undo' ? [done, undone] : [undone, done]
    const edit = from.pop()
    if (!edit) continue
    to.push(edit)
    about.set(revision.revision, edit)
  }
  return about
}
