import type { PlatformParts } from '../bot/platform.ts'

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

/** What became of a notice; `overtaken` where a newer one of the same name came while it waited for its turn. */
export type PutUp = 'posted' | 'changed' | 'overtaken'

/** Puts a notice up by a name, once for all processes. */
export type Notices = (name: string, spot: Spot) => Promise<PutUp>

/** What is remembered of a notice: where it stands, and until when (ms) a process is busy with it. */
interface Standing {
  readonly message?: string
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
  return async (name, spot) => {
    const before = turns.get(name) ?? Promise.resolve()
    const mine: Promise<PutUp> = before
      .catch(() => undefined)
      .then(() => (turns.get(name) === mine ? putUp(name, spot, parts) : 'overtaken'))
    turns.set(name, mine)
    try {
      return await mine
    } finally {
      if (turns.get(name) === mine) turns.delete(name)
    }
  }
}

async function putUp(name: string, { post, change }: Spot, parts: NoticeParts): Promise<PutUp> {
  const { revision, message: before } = await claim(name, parts)
  let message = before
  try {
    const changed = before === undefined ? undefined : await change(before)
    message = changed ?? (await post())
    return changed === undefined ? 'posted' : 'changed'
  } finally {
    const standing: Standing = message === undefined ? {} : { message }
    await parts.keeping.remember(name, JSON.stringify(standing), revision)
  }
}

/** Waits until no other process is busy with the notice, and says to all that this one is. */
async function claim(name: string, parts: NoticeParts): Promise<{ revision: number; message?: string }> {
  const { keeping, now, pause } = parts
  const { revision, text } = await keeping.recall(name)
  const { message, until = 0 } = (text === undefined ? {} : JSON.parse(text)) as Standing
  const at = now().getTime()
  const standing: Standing = { ...(message !== undefined && { message }), until: at + LONGEST }
  if (until < at && (await keeping.remember(name, JSON.stringify(standing), revision)))
    return { revision: revision + 1, ...(message !== undefined && { message }) }
  await pause(WAIT)
  return claim(name, parts)
}
