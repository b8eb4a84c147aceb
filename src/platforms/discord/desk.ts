import type { Client } from 'discord.js'
import type { PlatformParts } from '../../bot/platform.ts'
import type { Notices } from '../notices.ts'
import type { FormLines } from './formLines.ts'

/** What whoever handles an event has at hand. */
export interface Desk {
  readonly parts: PlatformParts
  readonly client: Client
  /** The channel that the event's thread hangs from; undefined where it did not come from a thread. */
  readonly parentOf: (eventId: string) => string | undefined
  readonly notices: Notices
  readonly forms: FormLines
}

/** True the first time this event is seen. A store that cannot say so must not keep anybody without an answer. */
export async function isFirst(event: string, { parts }: Desk): Promise<boolean> {
  try {
    return await parts.keeping.once(event)
  } catch {
    parts.log.warn({ event }, 'whether an event came before could not be looked up')
    return true
  }
}
