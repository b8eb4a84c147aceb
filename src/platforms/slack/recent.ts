import { createHash } from 'node:crypto'
import type { File, Picture } from '../../bot/reply.ts'

/** What goes with an answer as files. */
export interface Attachments {
  readonly pictures: readonly Picture[]
  readonly files: readonly File[]
}

/** The drawings and files of the last private answers, for whoever asks for them by a button. */
export interface Recent {
  /** The name they are found by; undefined when there is nothing to keep. */
  readonly keep: (attachments: Attachments) => string | undefined
  /** Undefined when they are gone: asking again makes them again. */
  readonly find: (name: string) => Attachments | undefined
}

/** Keeps the last `most` in memory: an answer is asked for again in seconds, and can be made again at any time. */
export function createRecent(most = 200): Recent {
  const kept = new Map<string, Attachments>()
  return {
    keep: (attachments) => {
      if (attachments.pictures.length + attachments.files.length === 0) return undefined
      const name = nameOf(attachments)
      kept.delete(name)
      kept.set(name, { pictures: attachments.pictures, files: attachments.files })
      for (const [oldest] of kept) if (kept.size > most) kept.delete(oldest)
      return name
    },
    find: (name) => kept.get(name),
  }
}

/** The same attachments have the same name. */
function nameOf({ pictures, files }: Attachments): string {
  const hash = createHash('sha256').update(JSON.stringify(pictures))
  for (const { name, content } of files) hash.update(`\0${name}\0`).update(content)
  return hash.digest('hex').slice(0, 24)
}
