import { setTimeout as pause } from 'node:timers/promises'
import {
  Client,
  type ClientOptions,
  Events,
  GatewayIntentBits,
  type Interaction,
  type Message,
  Options,
  Partials,
  RESTEvents,
} from 'discord.js'
import type { PlatformParts } from '../../bot/platform.ts'
import type { Health, Platform } from '../../bot/request.ts'
import { createNotices } from '../notices.ts'
import { callsUntil, connect, progressing } from './connect.ts'
import type { Desk } from './desk.ts'
import { createFormLines } from './formLines.ts'
import { createHealth } from './health.ts'
import { hearButton } from './hearButton.ts'
import { hearCommand } from './hearCommand.ts'
import { hearForm } from './hearForm.ts'
import { hearMessage } from './hearMessage.ts'
import { hearTyping } from './hearTyping.ts'
import { limits } from './limits.ts'
import { createParents } from './parents.ts'
import { closedWhy, loggable, troubleOf } from './trouble.ts'

export interface DiscordOptions {
  readonly token: string
  /** Which shards this process runs, of how many there are in all; as many as Discord recommends, all of them here, when undefined. */
  readonly shards?: { readonly ids: readonly number[]; readonly count: number } | undefined
  /** Another address for Discord's interface, for tests. */
  readonly api?: string | undefined
  /** Milliseconds that a start may be without any progress; a minute when undefined. */
  readonly patience?: number | undefined
}

/**
 * Calls a second. The client would hold back after 50, which is Discord's limit for bots, but answers to interactions do not
 * count (developer documentation, Rate Limits); where Discord does ask to wait, the client waits.
 */
const MOST_CALLS = 1000

/** Milliseconds. The client keeps a queue for the calls of every interaction; by itself it would drop those it is done with once an hour. */
const SWEEP = 60_000

/** People and messages are not kept: every event brings what is needed of them. */
const settings = ({ shards, api }: DiscordOptions, signal: AbortSignal): ClientOptions => ({
  intents: [GatewayIntentBits.Guilds, GatewayIntentBits.GuildMessages, GatewayIntentBits.DirectMessages],
  // Without it nothing is heard of a direct message in a channel not seen before.
  partials: [Partials.Channel],
  allowedMentions: { parse: [], repliedUser: false },
  failIfNotExists: false,
  makeCache: Options.cacheWithLimits({
    ...Options.DefaultMakeCacheSettings,
    MessageManager: 0,
    ReactionManager: 0,
    PresenceManager: 0,
    VoiceStateManager: 0,
    GuildMemberManager: { maxSize: 100, keepOverLimit: ({ id, client }) => id === client.user.id },
    UserManager: { maxSize: 100, keepOverLimit: ({ id, client }) => id === client.user.id },
  }),
  ...(shards ? { shards: [...shards.ids], shardCount: shards.count } : { shards: 'auto' }),
  rest: {
    globalRequestsPerSecond: MOST_CALLS,
    handlerSweepInterval: SWEEP,
    makeRequest: callsUntil(signal),
    ...(api !== undefined && { api }),
  },
})

/** A client from its first attempt to connect to its end: one that was closed does not close a second time. */
interface Session {
  readonly client: Client
  readonly connected: Promise<void>
  readonly health: () => Health
  /** Aborted when it is closed. */
  readonly over: AbortController
}

const CLOSED = 'Discord is closed'

/** Milliseconds without one more connection that hears: each takes about five seconds. */
const PATIENCE = 60_000

/** Milliseconds for connections to close: one that was being opened never says that it has. */
const CLOSING = 2000

/** The bot in Discord: slash commands, buttons, forms, and messages that name it. */
export function createDiscord(parts: PlatformParts, options: DiscordOptions): Platform {
  const notices = createNotices({ ...parts, pause })
  const forms = createFormLines(parts.keeping)
  const underWay = new Set<Promise<void>>()
  let session: Session | undefined
  let trouble = CLOSED

  const handle = (client: Client, what: string, work: () => Promise<void>) => {
    if (session?.client !== client) return
    const done = Promise.resolve()
      .then(work)
      .catch((error: unknown) => {
        // Somebody else answered: nothing is wrong.
        if (troubleOf(error) !== 'taken')
          parts.log.error({ ...loggable(error), what }, 'an event was not answered')
      })
      .finally(() => underWay.delete(done))
    underWay.add(done)
  }
  const newSession = (): Session => {
    const over = new AbortController()
    const client = new Client(settings(options, over.signal))
    const desk: Desk = { parts, client, parentOf: createParents(client), notices, forms }
    client.on(Events.InteractionCreate, (interaction) =>
      handle(client, 'interaction', () => hear(interaction, desk)),
    )
    client.on(Events.MessageCreate, (message: Message) =>
      handle(client, 'message', () => hearMessage(message, desk)),
    )
    watch(client, parts)
    const connected = connect(client, options.token)
    const health = createHealth(client)
    const opened = { client, connected, health, over }
    connected.catch((error: Error) => {
      if (session !== opened) return
      session = undefined
      trouble = error.message
      void close(opened)
    })
    return opened
  }
  const close = async ({ client, over }: Session) => {
    over.abort()
    const waited = new AbortController()
    const late = pause(CLOSING, undefined, { signal: waited.signal }).catch(() => undefined)
    await Promise.race([client.destroy(), late])
    waited.abort()
    // The connection is closed, but answers that are under way still go out.
    client.rest.setToken(options.token)
  }

  return {
    name: 'discord',
    limits,
    start: async () => {
      const opened = session ?? newSession()
      session = opened
      const { client, connected, over } = opened
      await progressing(client, connected, { patience: options.patience ?? PATIENCE, signal: over.signal })
      parts.log.info({ shards: opened.client.ws.shards.size }, 'Discord is connected')
    },
    stop: async () => {
      const closing = session
      session = undefined
      trouble = CLOSED
      if (closing) await close(closing)
      await Promise.all(underWay)
    },
    health: () => session?.health() ?? { well: false, says: trouble },
  }
}

async function hear(interaction: Interaction, desk: Desk): Promise<void> {
  if (interaction.isAutocomplete()) return hearTyping(interaction, desk)
  if (interaction.isChatInputCommand()) return hearCommand(interaction, desk)
  if (interaction.isButton()) return hearButton(interaction, desk)
  if (interaction.isModalSubmit()) return hearForm(interaction, desk)
}

/** Notes what becomes of the connections. */
function watch(client: Client, { log }: PlatformParts): void {
  client.on(Events.Error, (error) => log.error(loggable(error), 'the Discord client failed'))
  client.on(Events.ShardError, (error, shard) =>
    log.warn({ ...loggable(error), shard }, 'a connection failed'),
  )
  client.on(Events.ShardDisconnect, ({ code }, shard) => log.error({ shard, code }, closedWhy(code)))
  client.on(Events.ShardReconnecting, (shard) => log.warn({ shard }, 'a connection is opened again'))
  client.on(Events.ShardReady, (shard) => log.info({ shard }, 'a connection hears'))
  client.on(Events.ShardResume, (shard, replayed) => log.info({ shard, replayed }, 'a connection is back'))
  client.rest.on(RESTEvents.Response, ({ method }, { status }) => {
    if (status === 429) log.warn({ method }, 'Discord asks to wait')
  })
  client.rest.on(RESTEvents.RateLimited, ({ method, timeToReset, scope }) =>
    log.warn({ method, timeToReset, scope }, 'a call waits, so as not to be too many'),
  )
  client.rest.on(RESTEvents.InvalidRequestWarning, ({ count, remainingTime }) =>
    log.warn(
      { count, remainingTime },
      'Discord refuses many calls; at 10 000 in ten minutes it closes the door',
    ),
  )
}
