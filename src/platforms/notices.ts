import type { PlatformParts } from '../bot/platform.ts'
import type { Notice } from '../bot/reply.ts'

/** How one notice is put up and changed where it stands. What either throws comes through. */
export interface Spot {
  /** Puts it up; gives what it is found by later. */
  readonly post: () => Promise<string>
  /** Puts it in the place of what `post` gave, and says what it is found by now; undefined where that is gone. */
  readonly change: (message: string) => Promise<string | undefined>
}

/** What of a platform this needs, and how to wait so many milliseconds. */
export interface NoticeParts extends Pick<PlatformParts, 'keeping' | 'now'> {
  readonly pause: (milliseconds: number) => Promise<unknown>
}

/** What became of a notice; `overtaken` where a newer one stands there already, or waits for its turn. */
export type PutUp = 'posted' | 'changed' | 'overtaken'

/** How far what a notice says had come. */
export type Version = Pick<Notice, 'revision' | 'since'>

/** Puts a notice up by a name, once for all processes; an older version never takes the place of a newer. */
export type Notices = (name: string, version: Version, spot: Spot) => Promise<PutUp>

/** What is remembered of a notice: where it stands, what version that is, and until when (ms) a process is busy with it. */
interface Standing {
  readonly message?: string
  readonly shown?: Version
  readonly until?: number
}

/** A process that has not finished by then is taken to have died, in ms. */
const LONGEST = 30_000
/** Between two looks whether another process has finished, in ms. */
const WAIT = 250

/**
 * Standing notices: of each name one message, posted by whoever is first and changed from then on. Notices of one name take
 * turns, in this process and, by the revision in the store, over all of them.
 */
export function createNotices(parts: NoticeParts): Notices {
  const turns = new Map<string, Promise<unknown>>()
  const newest = new Map<string, Version>()
  return async (name, version, spot) => {
    if (!isOlder(version, newest.get(name))) newest.set(name, version)
    const before = turns.get(name) ?? Promise.resolve()
    const mine: Promise<PutUp> = before
      .catch(() => undefined)
      .then(() => (isOlder(version, newest.get(name)) ? 'overtaken' : putUp(name, version, spot, parts)))
    turns.set(name, mine)
    try {
      return await mine
    } finally {
      if (turns.get(name) === mine) {
        turns.delete(name)
        newest.delete(name)
      }
    }
  }
}

/**
 * Whether a version is older than what stands there, if anything does. The same once more is not: it may be rendered anew, such
 * as without a name that is to be forgotten.
 */
export const isOlder = (one: Version, other: Version | undefined): boolean => {
  if (!other) return false
  const [since = '', otherSince = ''] = [one.since, other.since]
  return since < otherSince || (since === otherSince && one.revision < other.revision)
}

async function putUp(
  name: string,
  { revision, since }: Version,
  { post, change }: Spot,
  parts: NoticeParts,
): Promise<PutUp> {
  const version: Version = { revision, since }
  const claimed = await claim(name, version, parts)
  if (claimed === 'overtaken') return claimed
  let standing = claimed.standing
  try {
    const changed = standing.message === undefined ? undefined : await change(standing.message)
    standing = { message: changed ?? (await post()), shown: version }
    return changed === undefined ? 'posted' : 'changed'
  } finally {
    await parts.keeping.remember(name, JSON.stringify(standing), claimed.revision)
  }
}

/** Waits until no other process is busy with the notice, and says to all that this one is; not where a newer one stands. */
async function claim(
  name: string,
  version: Version,
  parts: NoticeParts,
): Promise<{ readonly revision: number; readonly standing: Standing } | 'overtaken'> {
  const { keeping, now, pause } = parts
  const { revision, text } = await keeping.recall(name)
  const { until = 0, ...standing } = (text === undefined ? {} : JSON.parse(text)) as Standing
  if (isOlder(version, standing.shown)) return 'overtaken'
  const at = now().getTime()
  const busy = JSON.stringify({ ...standing, until: at + LONGEST } satisfies Standing)
  if (until < at && (await keeping.remember(name, busy, revision)))
    return { revision: revision + 1, standing }
  await pause(WAIT)
  return claim(name, version, parts)
}
