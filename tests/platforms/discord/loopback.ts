import { EventEmitter, once } from 'node:events'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { checkCommands } from './checkCommands.ts'
import { checkMessage, flattened } from './checkMessage.ts'
import { type Gateway, openGateway } from './gateway.ts'
import { createInteractions, type Interactions } from './interactions.ts'
import { payload } from './payload.ts'
import {
  type Answered,
  bytesOf,
  type Call,
  type Json,
  readBody,
  refusal,
  send,
  snowflake,
  type WireFile,
} from './wire.ts'

export const TOKEN = 'MTEwMDAw.bot-token.of-the-loopback'

/** What an interaction is called by, once it was sent out. */
export interface Sent {
  readonly id: string
  readonly token: string
  readonly event: Json
}

/** Answers a matching call otherwise than it would be, so many times. */
export interface Otherwise {
  readonly method?: string
  readonly path: RegExp
  readonly answer: Answered
  readonly times?: number
  /** Does what was asked all the same, as a service may whose word got lost on the way. */
  readonly hasEffect?: boolean
}

/** Discord on its own computer: as strict as the real one, as far as its documentation says what it is strict about. */
export interface Loopback {
  readonly api: string
  readonly calls: readonly Call[]
  readonly gateway: Gateway
  readonly interactions: Interactions
  /** Everything that a call was refused for. */
  readonly faults: readonly string[]
  /** Sends an interaction out, with an id and a token of its own unless `change` says otherwise. */
  readonly interact: (event: Json, change?: Json) => Sent
  readonly otherwise: (change: Otherwise) => void
  /** The first call, made already or still to come, that `matches`. */
  readonly call: (matches: (call: Call) => boolean) => Promise<Call>
  /** The call that gives an interaction its answer: the reply, the edit, the form. */
  readonly answerTo: (sent: Sent) => Promise<Call>
  readonly registered: readonly Json[]
  /** The message given back last, as an event that is about it brings it along. */
  readonly published: Json
  /** What the bot has posted into channels, and how it stands there now. */
  readonly standing: readonly Standing[]
  /** Somebody deletes a message of the bot's. */
  readonly remove: (id: string) => void
  readonly close: () => Promise<void>
}

/** A message of the bot's own in a channel, as it stands now. */
export interface Standing {
  readonly id: string
  readonly channel: string
  readonly body: Json
  readonly files: readonly WireFile[]
  readonly isPinned: boolean
}

export interface LoopbackTerms {
  readonly shards?: number
  /** Where the bot may not write; or may not attach files, with `files`; or may not pin, with `pins`. */
  readonly forbidden?: Readonly<Record<string, 'all' | 'files' | 'pins'>>
  /** Hears every call; without it they are kept, to be looked at. */
  readonly hear?: (call: Call) => void
}

/** Discord waits three seconds; a test on a busy machine waits longer, and sends what is late with an old id. */
const DEADLINE = 3000
const PATIENCE = 25_000

const BOT = '1100000000000000001'

/** Opens a gateway and an HTTP interface on loopback. */
export async function openLoopback({
  shards = 1,
  forbidden = {},
  hear,
}: LoopbackTerms = {}): Promise<Loopback> {
  const calls: Call[] = []
  const faults: string[] = []
  const heard = new EventEmitter().setMaxListeners(0)
  const changes: { readonly change: Otherwise; left: number }[] = []
  const files = new Map<string, Uint8Array>()
  const nonces = new Map<string, Json>()
  const posted = new Map<string, Standing>()
  let registered: Json[] = []
  let published: Json = {}

  const server = createServer((request, response) => void serve(request, response))
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const address = `127.0.0.1:${(server.address() as AddressInfo).port}`
  const gateway = openGateway(server, {
    token: TOKEN,
    opening: (session, shard, url) => {
      const ready = payload('ready')
      const guilds = shard[0] === 0 ? ready.guilds : []
      const opened = { ...ready, guilds, session_id: session, resume_gateway_url: url, shard }
      return [
        ['READY', opened],
        ...(shard[0] === 0 ? [['GUILD_CREATE', payload('guildCreate')] as const] : []),
      ]
    },
  })
  /** The message as it is given back: its parts numbered, its files at an address. */
  const publish = (body: Json, sent: readonly WireFile[], flags: number, channel: unknown): Json => {
    const id = snowflake()
    const urls = new Map(
      sent.map(({ name }) => [`attachment://${name}`, `http://${address}/files/${id}/${name}`]),
    )
    for (const { name, bytes } of sent) files.set(`/files/${id}/${name}`, bytes)
    const message = payload('button').message as Json
    const components = JSON.parse(JSON.stringify(body.components ?? []), (key, value) =>
      key === 'url' ? (urls.get(value) ?? value) : value,
    ) as Json[]
    for (const [index, part] of flattened(components).entries()) Object.assign(part, { id: index + 1 })
    published = { ...message, id, channel_id: channel, flags, components, content: body.content ?? '' }
    return published
  }
  const interactions = createInteractions(publish, hear ? DEADLINE : PATIENCE)

  const serve = async (request: IncomingMessage, response: ServerResponse) => {
    const bytes = await bytesOf(request)
    const url = new URL(request.url ?? '/', `http://${address}`)
    const path = decodeURIComponent(url.pathname).replace(/^\/api\/v10/u, '')
    const method = request.method ?? ''
    const read = await readBody(request.headers['content-type'] ?? '', bytes)
    const { authorization } = request.headers
    const changed = changes.find(
      ({ change, left }) => left > 0 && change.path.test(path) && (change.method ?? method) === method,
    )
    if (changed) changed.left -= 1
    const asked = { method, path, authorization, body: (read.body ?? {}) as Json, files: read.files }
    if (changed?.change.hasEffect) answerOf(asked)
    const answer = changed?.change.answer ?? answerOf(asked)
    const code = (answer.body as { code?: number } | undefined)?.code
    const call = { ...asked, ...read, query: url.searchParams, at: Date.now(), status: answer.status, code }
    send(response, answer)
    if (hear) return hear(call)
    calls.push(call)
    heard.emit('call', call)
  }

  type Asked = Pick<Call, 'method' | 'path' | 'authorization' | 'files'> & { readonly body: Json }
  const answerOf = (asked: Asked): Answered => {
    const { method, path } = asked
    const stored = files.get(path)
    if (stored) return { status: 200, body: stored }
    const [, , first = '', second = '', third = ''] = /^(\/)([^/]+)\/([^/]+)(?:\/(.*))?$/u.exec(path) ?? []
    if (first === 'interactions')
      return interactions.callback(second, third.split('/')[0] ?? '', asked.body, asked.files)
    if (first === 'webhooks') {
      const token = third.split('/')[0] ?? ''
      return method === 'PATCH'
        ? interactions.edit(token, asked.body, asked.files)
        : interactions.followUp(token, asked.body, asked.files)
    }
    if (asked.authorization !== `Bot ${TOKEN}`) return refusal(401, 0, '401: Unauthorized')
    if (path === '/gateway/bot')
      return { status: 200, body: { ...payload('gatewayBot'), url: `ws://${address}`, shards } }
    if (first === 'applications') return applications(asked, third)
    if (path === '/users/@me/channels') return directChannel(String(asked.body.recipient_id))
    if (first === 'channels') return channels(asked, second, third)
    return refusal(404, 0, '404: Not Found')
  }
  const applications = ({ method, body }: Asked, rest: string): Answered => {
    if (rest === '') return { status: 200, body: { id: BOT, name: 'battenbot', flags: 0 } }
    if (method === 'GET') return { status: 200, body: registered }
    const found = checkCommands(body as unknown as Json[], rest === 'commands')
    faults.push(...found)
    if (found.length > 0) return refusal(400, 50035, `Invalid Form Body: ${found.join('; ')}`)
    registered = (body as unknown as Json[]).map(asHeld)
    return { status: 200, body: registered }
  }
  const directChannel = (user: string): Answered =>
    forbidden[user]
      ? refusal(403, 50007, 'Cannot send messages to this user')
      : {
          status: 200,
          body: {
            id: `${user.slice(0, -1)}5`,
            type: 1,
            last_message_id: null,
            recipients: [{ id: user, username: 'maria', discriminator: '0', avatar: null }],
          },
        }
  const channels = ({ method, body, files: sent }: Asked, channel: string, rest: string): Answered => {
    const ban = forbidden[channel]
    if (ban === 'all' || (ban === 'files' && sent.length > 0))
      return refusal(403, 50013, 'Missing Permissions')
    if (rest === 'typing') return { status: 204 }
    const [, isPin, id = ''] = /^messages\/(pins\/)?(\d+)$/u.exec(rest) ?? []
    const standing = posted.get(id)
    if (id !== '' && standing?.channel !== channel) return refusal(404, 10008, 'Unknown Message')
    if (standing && isPin) {
      if (ban === 'pins') return refusal(403, 50013, 'Missing Permissions')
      posted.set(id, { ...standing, isPinned: true })
      return { status: 204 }
    }
    if (method === 'GET') return refusal(404, 10003, 'Unknown Channel')
    const nonce = body.nonce === undefined ? undefined : String(body.nonce)
    const earlier = nonce === undefined ? undefined : nonces.get(nonce)
    if (earlier && body.enforce_nonce === true) return { status: 200, body: earlier }
    const found = [
      ...checkMessage({
        payload: body,
        files: sent.map(({ name, bytes }) => ({ name, bytes: bytes.length })),
      }),
      ...(nonce !== undefined && nonce.length > 25 ? ['a nonce of up to 25 characters'] : []),
      ...((Number(body.flags ?? 0) & 64) === 0 ? [] : ['a channel message cannot be ephemeral']),
    ]
    faults.push(...found)
    if (found.length > 0) return refusal(400, 50035, `Invalid Form Body: ${found.join('; ')}`)
    if (standing) {
      posted.set(id, { ...standing, body, files: sent })
      return { status: 200, body: { ...publish(body, sent, Number(body.flags ?? 0), channel), id } }
    }
    const message = publish(body, sent, Number(body.flags ?? 0), channel)
    const stands = { id: String(message.id), channel, body, files: sent, isPinned: false }
    posted.set(stands.id, stands)
    if (nonce !== undefined) nonces.set(nonce, message)
    return { status: 200, body: message }
  }

  const call: Loopback['call'] = async (matches) => {
    for (let from = 0; ; ) {
      const found = calls.slice(from).find(matches)
      if (found) return found
      from = calls.length
      await once(heard, 'call')
    }
  }
  return {
    api: `http://${address}/api`,
    calls,
    gateway,
    interactions,
    get faults() {
      return [...faults, ...interactions.faults]
    },
    get published() {
      return published
    },
    get registered() {
      return registered
    },
    get standing() {
      return [...posted.values()]
    },
    remove: (id) => void posted.delete(id),
    interact: (event, change = {}) => {
      const sent = { ...event, id: snowflake(), token: `interaction-secret-${snowflake()}`, ...change }
      interactions.add(sent)
      gateway.dispatch('INTERACTION_CREATE', sent, 0)
      return { id: String(sent.id), token: String(sent.token), event: sent }
    },
    otherwise: (change) => void changes.push({ change, left: change.times ?? 1 }),
    call,
    answerTo: ({ token }) =>
      call(
        ({ method, path, body, status }) =>
          path.includes(token) &&
          status < 300 &&
          (method === 'PATCH' || ![5, 6].includes(Number((body as Json)?.type ?? 5))),
      ),
    close: async () => {
      gateway.close()
      server.closeAllConnections()
      server.close()
      await once(server, 'close')
    },
  }
}

/** A command as Discord gives it back: with an id and a version, and what is usual filled in. */
const asHeld = (command: Json): Json => ({
  id: snowflake(),
  application_id: BOT,
  version: snowflake(),
  default_member_permissions: null,
  nsfw: false,
  name_localizations: null,
  description_localizations: null,
  ...withoutFalse(command),
})

/** It leaves out `required: false` and empty lists of options. */
const withoutFalse = (part: Json): Json =>
  Object.fromEntries(
    Object.entries(part).flatMap(([key, value]) => {
      if (value === false || (Array.isArray(value) && value.length === 0)) return []
      return [[key, key === 'options' ? (value as Json[]).map(withoutFalse) : value]]
    }),
  )
