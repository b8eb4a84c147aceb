import { describe as described } from '../../../src/bot/catalogue.ts'
import { createComplete } from '../../../src/bot/complete.ts'
import type { Keeping, PlatformParts } from '../../../src/bot/platform.ts'
import type { Platform } from '../../../src/bot/request.ts'
import type { Search } from '../../../src/bot/search.ts'
import { createDiscord, type DiscordOptions } from '../../../src/platforms/discord/client.ts'
import { createKeeping } from '../../../src/store/keeping.ts'
import { catalogue, config, type Logged, openRoom, type Room } from '../../room.ts'
import { type Loopback, type LoopbackTerms, openLoopback, TOKEN } from './loopback.ts'
import type { Call, Json } from './wire.ts'

export const commands = described(catalogue)

/** A PNG of one pixel, in place of a painted one. */
export const PIXEL = new Uint8Array(
  Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  ),
)

export interface BotTerms extends LoopbackTerms {
  readonly loopback?: Loopback
  readonly keeping?: Keeping
  readonly search?: Search
  readonly room?: Room
  readonly parts?: Partial<PlatformParts>
  readonly options?: Partial<DiscordOptions>
  readonly isStarted?: boolean
}

/** The real bot in the real client, connected to a Discord on loopback. */
export interface Bot {
  readonly discord: Platform
  readonly loopback: Loopback
  readonly room: Room
  readonly logged: readonly Logged[]
  readonly close: () => Promise<void>
}

export async function openBot(terms: BotTerms = {}): Promise<Bot> {
  const loopback = terms.loopback ?? (await openLoopback(terms))
  const room = terms.room ?? (await openRoom(terms.search ? { search: terms.search } : {}))
  const logged: Logged[] = []
  const note = (facts: object, message: string) => void logged.push({ facts, message })
  const discord = createDiscord(
    {
      answer: room.answer,
      commands,
      complete: createComplete({ store: room.store, commands, reference: config, settings: config.bot }),
      paint: async () => PIXEL,
      keeping: terms.keeping ?? createKeeping(room.store, 'discord', () => new Date()),
      log: { error: note, warn: note, info: note },
      now: () => new Date(),
      ...terms.parts,
    },
    { token: TOKEN, api: loopback.api, ...terms.options },
  )
  if (terms.isStarted ?? true) await discord.start()
  return {
    discord,
    loopback,
    room,
    logged,
    close: async () => {
      await discord.stop()
      if (!terms.room) await room.close()
      if (!terms.loopback) await loopback.close()
    },
  }
}

/** All that is read of a message. */
export const wordsOf = (call: Call): string => readWords((call.body as Json | undefined)?.components)

const readWords = (components: unknown): string =>
  (Array.isArray(components) ? (components as Json[]) : [])
    .map((part) => [part.content, part.label, readWords(part.components)].filter(Boolean).join('\n'))
    .join('\n')
