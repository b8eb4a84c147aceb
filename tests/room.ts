import { fileURLToPath } from 'node:url'
import { type Catalogue, loadCatalogue } from '../src/bot/catalogue.ts'
import type { Print } from '../src/bot/handout/handout.ts'
import type { Reply } from '../src/bot/reply.ts'
import type { Answer, Invocation, Place, Request, Response } from '../src/bot/request.ts'
import { createRouter } from '../src/bot/router.ts'
import type { Search } from '../src/bot/search.ts'
import type { BotSettings } from '../src/bot/settings.ts'
import type { DocumentKey, Store } from '../src/bot/state.ts'
import { type Config, readConfig } from '../src/config.ts'
import { createSearch } from '../src/search/pool.ts'
import { openSqlite } from '../src/store/sqlite.ts'

/** The project's folder. */
export const ROOT = fileURLToPath(new URL('..', import.meta.url))

export const config: Config = readConfig(`${ROOT}config`)

export const catalogue: Catalogue = await loadCatalogue(`${ROOT}commands`)

/** Who says it, and where. */
export interface Who extends Pick<Request, 'name' | 'locale' | 'managesChannel'> {
  readonly user?: string
  readonly channel?: string
}

/** One line of the log: what was noted, and the message. */
export interface Logged {
  readonly facts: object
  readonly message: string
}

/** What a test may choose of a room; the rest is what the bot is started with. */
export interface RoomParts {
  readonly store?: Store
  /** Stays open when the room is closed. */
  readonly search?: Search
  /** Prints in this very thread where it is left out. */
  readonly print?: Print
  readonly catalogue?: Catalogue
  readonly settings?: Partial<BotSettings>
  /** Evenings gone by since the first. */
  readonly evening?: number
}

/** A place to ask in: the real config, commands, router and store, with everything in memory. */
export interface Room {
  readonly store: Store
  readonly logged: readonly Logged[]
  readonly answer: Answer
  readonly ask: (line: string, who?: Who) => Promise<Response>
  readonly invoke: (invocation: Invocation, who?: Who) => Promise<Response>
  /** The reply; throws with the error where there is none. */
  readonly reply: (line: string, who?: Who) => Promise<Reply>
  /** The sentence and its kind, as `kind: sentence`; throws where the line was answered. */
  readonly refusal: (line: string, who?: Who) => Promise<string>
  /** Where a document of the bench channel, or of `me`, is kept. */
  readonly key: (kind: string, id?: string) => DocumentKey
  readonly close: () => Promise<void>
}

const placeOf = (channel: string): Place => ({ platform: 'room', workspace: 'local', channel })

/** Prints in this very thread; read in only where something is printed. */
const printHere: Print = async (handout) =>
  (await import('../src/printing/printHandout.ts')).printHandout(handout)

/** Opens a fresh room. Its clock starts on an evening in March and goes on by a minute a line. */
export async function openRoom(parts: RoomParts = {}): Promise<Room> {
  const store = parts.store ?? (await openSqlite(':memory:'))
  const search = parts.search ?? createSearch({ threads: 1, queue: config.bot.search.queue })
  const logged: Logged[] = []
  const log = (facts: object, message: string) => void logged.push({ facts, message })
  let minutes = 0
  let faults = 0
  const answer = createRouter({
    store,
    search,
    print: parts.print ?? printHere,
    catalogue: parts.catalogue ?? catalogue,
    log: { error: log, warn: log, info: log },
    settings: { ...config.bot, ...parts.settings },
    reference: config,
    faultNumber: () => {
      faults += 1
      return `fault-${faults}`
    },
  })
  const invoke = (invocation: Invocation, { user = 'me', channel = 'bench', ...known }: Who = {}) => {
    minutes += 1
    const at = new Date(Date.UTC(2026, 2, 6 + (parts.evening ?? 0), 18, minutes))
    return answer({ ...known, place: placeOf(channel), user, invocation, at })
  }
  const ask = (line: string, who?: Who) => invoke({ line }, who)
  return {
    store,
    logged,
    answer,
    ask,
    invoke,
    reply: async (line, who) => {
      const response = await ask(line, who)
      if (!response.ok) throw new Error(`${line}: ${response.kind}: ${response.error}`)
      return response.reply
    },
    refusal: async (line, who) => {
      const response = await ask(line, who)
      if (response.ok) throw new Error(`${line}: answered with ${response.reply.answer}`)
      return `${response.kind}: ${response.error}`
    },
    key: (kind, id = kind === 'person' ? 'me' : 'bench') => ({
      kind,
      platform: 'room',
      workspace: 'local',
      id,
    }),
    close: async () => {
      if (!parts.search) await search.close()
      await store.close()
    },
  }
}

/** Every example of every command, with the name of its command. */
export const examples: readonly (readonly [name: string, line: string])[] = [...catalogue.values()].flatMap(
  (command) => command.examples.map((line): [string, string] => [command.name, line]),
)
