import { createHmac } from 'node:crypto'
import type { Keeping, PlatformParts, Remembered } from '../../../src/bot/platform.ts'
import { describe as describeCommands } from '../../../src/bot/catalogue.ts'
import type { Answer, Platform } from '../../../src/bot/request.ts'
import { createSlack } from '../../../src/platforms/slack/client.ts'
import type { Vault } from '../../../src/platforms/slack/installations.ts'
import type { HttpOptions, SlackOptions } from '../../../src/platforms/slack/options.ts'
import { catalogue, type Logged, openRoom, type Room } from '../../room.ts'
import { Loopback, type Team, team } from './loopback.ts'
import { type Payload, payload } from './payloads.ts'

export const SIGNING_SECRET = '8f742231b10e8888abcd99yyyzzz85a5'

/** The smallest PNG there is: one dot. */
export const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
)

export const KEY = Buffer.alloc(32, 7)

/** What is kept, in memory. */
export function memoryKeeping(): Keeping & { readonly lines: ReadonlyMap<string, string> } {
  const seen = new Set<string>()
  const lines = new Map<string, string>()
  const remembered = new Map<string, Remembered>()
  return {
    lines,
    once: async (event) => {
      const isFirst = !seen.has(event)
      seen.add(event)
      return isFirst
    },
    keepLine: async (line) => {
      const name = [...lines].find(([, kept]) => kept === line)?.[0] ?? `L${lines.size + 1}`
      lines.set(name, line)
      return name
    },
    recallLine: async (name) => lines.get(name),
    recall: async (name) => remembered.get(name) ?? { revision: 0, text: undefined },
    remember: async (name, text, revision) => {
      if ((remembered.get(name)?.revision ?? 0) !== revision) return false
      remembered.set(name, { revision: revision + 1, text })
      return true
    },
  }
}

/** What is kept, in memory, to be looked at. */
export function memoryVault(): Vault & { readonly values: Map<string, string> } {
  const values = new Map<string, string>()
  return {
    values,
    read: async (id) => values.get(id),
    write: async (id, value) => void values.set(id, value),
    forget: async (id) => void values.delete(id),
  }
}

export interface BotParts {
  /** Stays open when the bot is closed. */
  readonly slack?: Loopback
  readonly mode?: 'socket' | 'http'
  readonly workspaces?: HttpOptions['workspaces']
  readonly teams?: readonly Team[]
  readonly answer?: Answer
  readonly keeping?: Keeping
  readonly botToken?: string
  readonly paint?: PlatformParts['paint']
  readonly now?: () => Date
  readonly pause?: SlackOptions['pause']
  readonly lookEvery?: number
}

/** The real platform and the real commands, before a Slack of our own. */
export interface Bot {
  readonly slack: Loopback
  readonly platform: Platform
  readonly room: Room
  readonly logged: Logged[]
  /** Where the bot hears Slack by HTTP. */
  readonly address: () => string
  /** Posts a form or JSON as Slack does, signed. */
  readonly post: (
    body: string,
    type: string,
    headers?: Record<string, string>,
  ) => Promise<globalThis.Response>
  readonly command: (text: string, changes?: Payload) => Promise<globalThis.Response>
  readonly interact: (body: Payload) => Promise<globalThis.Response>
  readonly event: (body: Payload, headers?: Record<string, string>) => Promise<globalThis.Response>
  readonly close: () => Promise<void>
}

export const FORM = 'application/x-www-form-urlencoded'
export const JSON_TYPE = 'application/json'

/** Slack's signature of a body (docs.slack.dev/authentication/verifying-requests-from-slack). */
export function signed(
  body: string,
  secret = SIGNING_SECRET,
  at = Math.floor(Date.now() / 1000),
): Record<string, string> {
  const hash = createHmac('sha256', secret).update(`v0:${at}:${body}`).digest('hex')
  return { 'x-slack-request-timestamp': String(at), 'x-slack-signature': `v0=${hash}` }
}

/** Opens a room, a Slack and the bot between them; started unless told otherwise. */
export async function openBot(parts: BotParts = {}, isStarted = true): Promise<Bot> {
  const slack = parts.slack ?? (await Loopback.open(...(parts.teams ?? [team('T1')])))
  const room = await openRoom({ settings: { units: 'inch' } })
  const logged: Logged[] = []
  const log = (facts: object, message: string) => void logged.push({ facts, message })
  let port = 0
  const botToken = parts.botToken ?? 'xoxb-T1-token'
  const platform = createSlack(
    {
      answer: parts.answer ?? room.answer,
      commands: describeCommands(catalogue),
      complete: async () => [],
      paint: parts.paint ?? (async () => PNG),
      keeping: parts.keeping ?? memoryKeeping(),
      log: { error: log, warn: log, info: log },
      now: parts.now ?? (() => new Date()),
    },
    {
      command: '/batten',
      apiUrl: slack.api,
      pause: parts.pause,
      lookEvery: parts.lookEvery,
      listening: (heard) => {
        port = heard
      },
      connection:
        parts.mode === 'socket'
          ? { mode: 'socket', appToken: 'xapp-1-test', botToken }
          : {
              mode: 'http',
              signingSecret: SIGNING_SECRET,
              port: 0,
              host: '127.0.0.1',
              workspaces: parts.workspaces ?? { botToken },
            },
    },
  )
  if (isStarted) await platform.start()
  const address = () => `http://127.0.0.1:${port}`
  const post: Bot['post'] = (body, type, headers = signed(body)) =>
    fetch(`${address()}/slack/events`, {
      method: 'POST',
      headers: { 'content-type': type, ...headers },
      body,
    })
  return {
    slack,
    platform,
    room,
    logged,
    address,
    post,
    command: (text, changes = {}) => post(form({ ...slashCommand(slack, text), ...changes }), FORM),
    interact: (body) => post(form({ payload: JSON.stringify(body) }), FORM),
    event: (body, headers = {}) => {
      const text = JSON.stringify(body)
      return post(text, JSON_TYPE, { ...signed(text), ...headers })
    },
    close: async () => {
      await platform.stop()
      if (!parts.slack) await slack.close()
      await room.close()
    },
  }
}

export const form = (fields: Payload): string =>
  new URLSearchParams(
    Object.entries(fields).map(([name, value]): [string, string] => [name, String(value)]),
  ).toString()

/** A typed command with a trigger and a response_url that work. */
export const slashCommand = (slack: Loopback, text: string): Payload =>
  payload('slashCommand', { text, trigger_id: slack.trigger(), response_url: slack.responseUrl() })

/** A press of a button that the bot posted. */
export const pressOf = (
  slack: Loopback,
  button: object,
  name = 'pressPrivate',
  changes: Payload = {},
): Payload =>
  payload(name, {
    trigger_id: slack.trigger(),
    ...(name === 'pressHome' ? {} : { response_url: slack.responseUrl() }),
    actions: [{ ...button, block_id: 'b1', action_ts: '1548426417.840180' }],
    ...changes,
  })

/** The buttons and lists of a posted message or view, by the start of their action. */
export function elementsOf(body: object, action: string): readonly (Payload & { readonly value: string })[] {
  const { blocks = [] } = body as {
    blocks?: readonly { elements?: readonly Payload[]; accessory?: Payload }[]
  }
  return blocks
    .flatMap(({ elements = [], accessory }) => [...elements, ...(accessory ? [accessory] : [])])
    .filter(({ action_id: id }) => String(id).split(':')[0] === action) as (Payload & { value: string })[]
}

/** All that a message says. */
export const textOf = (body: object): string => {
  const { blocks = [] } = body as {
    blocks?: readonly { text?: { text: string }; elements?: readonly { text?: unknown }[] }[]
  }
  return blocks
    .flatMap(({ text, elements = [] }) => [
      text?.text ?? '',
      ...elements.map(({ text }) => (typeof text === 'string' ? text : '')),
    ])
    .filter((text) => text !== '')
    .join('\n')
}
