import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { type WebSocket, WebSocketServer } from 'ws'
import { createGate } from '../../gate.ts'
import { checkMessage, checkView } from './checkMessage.ts'

/** One thing that the bot asked of Slack. */
export interface Call {
  /** A method of the Web API, or `respond` (to a response_url) or `upload`. */
  readonly name: string
  readonly token: string | undefined
  readonly body: Readonly<Record<string, unknown>>
  /** Of an upload. */
  readonly bytes: Buffer
  /** The last part of the address of a `respond` or an `upload`. */
  readonly id: string
  /** What Slack answered: undefined for ok. */
  error?: string | undefined
}

/** What Slack does in place of what was asked, once. */
export type Trouble =
  | { readonly error: string }
  | { readonly status: number; readonly headers?: Readonly<Record<string, string>>; readonly body?: string }

/** A workspace that the app may be installed in. */
export interface Team {
  readonly id: string
  readonly token: string
  readonly scopes: readonly string[]
  /** Channels that the bot is in, beside direct ones. */
  readonly channels: ReadonlySet<string>
  readonly admins: ReadonlySet<string>
  /** Who made each channel. */
  readonly creators: Readonly<Record<string, string>>
  readonly locale: string
}

export const team = (id: string, parts: Partial<Team> = {}): Team => ({
  id,
  token: `xoxb-${id}-token`,
  scopes: ['commands', 'chat:write', 'files:write', 'app_mentions:read', 'im:history'],
  channels: new Set(['C1']),
  admins: new Set(),
  creators: {},
  locale: 'en-GB',
  ...parts,
})

const SCOPE_OF: Readonly<Record<string, string>> = {
  'users.info': 'users:read',
  'conversations.info': 'channels:read',
  'files.getUploadURLExternal': 'files:write',
  'files.completeUploadExternal': 'files:write',
  'chat.postMessage': 'chat:write',
  'chat.postEphemeral': 'chat:write',
  'chat.update': 'chat:write',
  'pins.add': 'pins:write',
  'files.delete': 'files:write',
}

interface Upload {
  readonly filename: string
  readonly length: number
  readonly alt: string | undefined
  bytes?: Buffer
  isComplete?: boolean
}

/**
 * A Slack of our own on a free port, as strict as the real one: tokens, scopes, membership, limits, response_urls that
 * work five times, triggers that work once and for three seconds, files that have to arrive whole. What Slack would
 * refuse it refuses with Slack's own words, and `faults` keeps why.
 */
export class Loopback {
  readonly teams = new Map<string, Team>()
  readonly calls: Call[] = []
  /** What would have gone wrong in the real Slack, for `expect(...).toEqual([])`. */
  readonly faults: string[] = []
  readonly sockets: WebSocket[] = []
  /** OAuth codes, and the team that each installs the app in. */
  readonly codes = new Map<string, Team>()
  readonly uploads = new Map<string, Upload>()
  /** What the bot has posted for all, as it stands now, by channel and ts. */
  readonly standing = new Map<string, Record<string, unknown> & { isPinned?: boolean }>()
  readonly #responses = new Map<string, { uses: number; readonly until: number }>()
  readonly #triggers = new Map<string, { isUsed: boolean; readonly until: number }>()
  readonly #troubles = new Map<string, Trouble[]>()
  readonly #held = new Map<string, Promise<void>>()
  readonly #seen = new Map<string, number>()
  readonly #waiting = new Set<() => void>()
  readonly #acks = new Map<string, unknown[]>()
  readonly #server: Server
  readonly #sockets: WebSocketServer
  #number = 0
  #lastSocket = 0

  private constructor(server: Server) {
    this.#server = server
    server.on('request', (request, response) => void this.#hear(request, response))
    this.#sockets = new WebSocketServer({ server, path: '/socket' })
    this.#sockets.on('connection', (socket) => this.#connect(socket))
  }

  static async open(...teams: readonly Team[]): Promise<Loopback> {
    const server = createServer()
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
    const loopback = new Loopback(server)
    for (const each of teams) loopback.teams.set(each.token, each)
    return loopback
  }

  get origin(): string {
    return `http://127.0.0.1:${(this.#server.address() as AddressInfo).port}`
  }

  get api(): string {
    return `${this.origin}/api/`
  }

  async close(): Promise<void> {
    for (const socket of this.#sockets.clients) socket.terminate()
    this.#sockets.close()
    this.#server.closeAllConnections()
    await new Promise((resolve) => this.#server.close(resolve))
  }

  /** A name that nothing had before. */
  fresh(prefix: string): string {
    this.#number += 1
    return `${prefix}${this.#number}`
  }

  responseUrl(minutes = 30): string {
    const id = this.fresh('R')
    this.#responses.set(id, { uses: 0, until: Date.now() + minutes * 60_000 })
    return `${this.origin}/respond/${id}`
  }

  trigger(seconds = 3): string {
    const id = this.fresh('13345224609.738474920.')
    this.#triggers.set(id, { isUsed: false, until: Date.now() + seconds * 1000 })
    return id
  }

  /** The next calls of this name meet these troubles, one each. */
  trouble(name: string, ...troubles: readonly Trouble[]): void {
    this.#troubles.set(name, [...(this.#troubles.get(name) ?? []), ...troubles])
  }

  /** Calls of this name are answered when what this gives is called. */
  hold(name: string): () => void {
    const { promise, release } = createGate()
    this.#held.set(name, promise)
    return () => {
      this.#held.delete(name)
      release()
    }
  }

  all(name: string): readonly Call[] {
    return this.calls.filter((call) => call.name === name)
  }

  /** The first call of this name that was not handed out yet, as soon as it is there. */
  async next(name: string): Promise<Call> {
    const index = this.#seen.get(name) ?? 0
    this.#seen.set(name, index + 1)
    return this.until(() => this.all(name)[index])
  }

  /** What `find` finds, as soon as something that the bot does lets it. */
  async until<Found>(find: () => Found | undefined | false): Promise<Found> {
    for (;;) {
      const found = find()
      if (found !== undefined && found !== false) return found
      await new Promise<void>((resolve) => {
        const wake = () => {
          this.#waiting.delete(wake)
          resolve()
        }
        this.#waiting.add(wake)
      })
    }
  }

  /** The next socket that the bot opens. */
  async socket(): Promise<WebSocket> {
    const index = this.#lastSocket
    this.#lastSocket += 1
    return this.until(() => this.sockets[index])
  }

  /** Sends an envelope by a socket, and hands back what it was acknowledged with. */
  async envelope(socket: WebSocket, type: string, payload: object, extra: object = {}): Promise<unknown> {
    const id = this.fresh('envelope-')
    socket.send(
      JSON.stringify({
        envelope_id: id,
        type,
        accepts_response_payload: type !== 'events_api',
        payload,
        ...extra,
      }),
    )
    return this.until(() => this.#acks.get(id)?.[0] ?? undefined)
  }

  #wake(): void {
    for (const wake of [...this.#waiting]) wake()
  }

  #connect(socket: WebSocket): void {
    socket.on('message', (text) => {
      const { envelope_id: id, payload } = JSON.parse(String(text)) as {
        envelope_id: string
        payload?: object
      }
      const acks = this.#acks.get(id) ?? []
      this.#acks.set(id, [...acks, payload ?? {}])
      if (acks.length > 0) this.faults.push(`${id} acknowledged twice`)
      this.#wake()
    })
    socket.send(JSON.stringify({ type: 'hello', num_connections: 1, connection_info: { app_id: 'A1' } }))
    this.sockets.push(socket)
    this.#wake()
  }

  async #hear(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const chunks: Buffer[] = []
    for await (const chunk of request) chunks.push(chunk as Buffer)
    const bytes = Buffer.concat(chunks)
    const [, kind = '', id = ''] = /^\/(\w+)\/([^?]*)/u.exec(request.url ?? '') ?? []
    const name = kind === 'api' ? id : kind
    const body = kind === 'upload' ? {} : readBody(bytes, request.headers['content-type'] ?? '')
    const bearer = /^Bearer (.+)$/u.exec(request.headers.authorization ?? '')?.[1]
    const call: Call = { name, body, bytes, id, token: bearer ?? (body.token as string | undefined) }
    const trouble = this.#troubles.get(name)?.shift()
    this.calls.push(call)
    this.#wake()
    await this.#held.get(name)
    if (trouble && 'status' in trouble) {
      call.error = String(trouble.status)
      response.writeHead(trouble.status, trouble.headers).end(trouble.body ?? '')
    } else if (kind === 'api') this.#answerApi(call, response, trouble?.error)
    else this.#answerAddress(call, kind, response, trouble?.error)
    this.#wake()
  }

  #answerApi(call: Call, response: ServerResponse, trouble?: string): void {
    const answer = trouble === undefined ? this.#method(call) : { error: trouble }
    if ('error' in answer) call.error = String(answer.error)
    response
      .writeHead(200, { 'content-type': 'application/json' })
      .end(JSON.stringify({ ok: !('error' in answer), ...answer }))
  }

  /** A refused response_url is a 404 with the reason in its body; an upload says 200 and OK. */
  #answerAddress(call: Call, kind: string, response: ServerResponse, trouble?: string): void {
    const error = trouble ?? (kind === 'respond' ? this.#respond(call) : this.#upload(call))
    if (error !== undefined) call.error = error
    if (error === undefined) response.writeHead(200, { 'content-type': 'text/plain' }).end('ok')
    else
      response
        .writeHead(404, { 'content-type': 'application/json' })
        .end(JSON.stringify({ ok: false, error }))
  }

  #respond({ id, body }: Call): string | undefined {
    const address = this.#responses.get(id)
    if (!address) return 'no_such_url'
    address.uses += 1
    if (address.uses > 5) this.faults.push(`${id} used more than five times`)
    if (address.uses > 5) return 'used_url'
    if (Date.now() > address.until) return 'expired_url'
    if (body.delete_original === true) return undefined
    return this.#checked(checkMessage(body as { text: string }), 'invalid_blocks')
  }

  #upload({ id, bytes }: Call): string | undefined {
    const upload = this.uploads.get(id)
    if (!upload) return 'no_such_file'
    upload.bytes = bytes
    return bytes.length === upload.length ? undefined : 'wrong_length'
  }

  #checked(faults: readonly string[], error: string): string | undefined {
    this.faults.push(...faults)
    return faults.length > 0 ? error : undefined
  }

  #method(call: Call): Readonly<Record<string, unknown>> {
    if (call.name === 'oauth.v2.access') return this.#install(call)
    if (call.name === 'apps.connections.open')
      return call.token === 'xapp-1-test'
        ? { url: `${this.origin.replace('http', 'ws')}/socket` }
        : { error: 'invalid_auth' }
    const known = this.teams.get(call.token ?? '')
    if (!known) return { error: 'invalid_auth' }
    const scope = SCOPE_OF[call.name]
    if (scope !== undefined && !known.scopes.includes(scope)) return { error: 'missing_scope', needed: scope }
    const channel = String(call.body.channel ?? call.body.channel_id ?? '')
    switch (call.name) {
      case 'auth.test':
        return {
          user_id: `U-bot-${known.id}`,
          bot_id: `B-${known.id}`,
          team_id: known.id,
          team: known.id,
          url: 'https://x.slack.com/',
        }
      case 'chat.postMessage':
      case 'chat.postEphemeral':
        return this.#post(call, known, channel)
      case 'chat.update':
        return this.#update(call, channel)
      case 'pins.add': {
        const pinned = this.standing.get(`${channel} ${call.body.timestamp}`)
        if (!pinned) return { error: 'message_not_found' }
        pinned.isPinned = true
        return {}
      }
      case 'files.delete':
        return this.uploads.delete(String(call.body.file)) ? {} : { error: 'file_not_found' }
      case 'users.info': {
        const isAdmin = known.admins.has(String(call.body.user))
        return { user: { id: call.body.user, is_admin: isAdmin, is_owner: false, locale: known.locale } }
      }
      case 'conversations.info':
        return { channel: { id: channel, creator: known.creators[channel] } }
      case 'views.open':
        return this.#open(call)
      case 'views.update':
      case 'views.publish':
        return this.#view(call)
      case 'files.getUploadURLExternal':
        return this.#beginUpload(call)
      case 'files.completeUploadExternal':
        return this.#completeUpload(call, known, channel)
      default:
        this.faults.push(`unknown_method ${call.name}`)
        return { error: 'unknown_method' }
    }
  }

  #post({ body, name }: Call, known: Team, channel: string): Readonly<Record<string, unknown>> {
    if (/^[CG]/u.test(channel) && !known.channels.has(channel)) return { error: 'not_in_channel' }
    const error = this.#checked(checkMessage(body as { text: string }), 'invalid_blocks')
    if (error !== undefined) return { error }
    const to = channel.startsWith('U') ? channel.replace('U', 'D') : channel
    if (name === 'chat.postEphemeral') return { message_ts: '1.1' }
    const ts = `1.${this.fresh('')}`
    this.standing.set(`${to} ${ts}`, { ...body })
    return { channel: to, ts }
  }

  #update({ body }: Call, channel: string): Readonly<Record<string, unknown>> {
    const key = `${channel} ${body.ts}`
    const before = this.standing.get(key)
    if (!before) return { error: 'message_not_found' }
    const error = this.#checked(checkMessage(body as { text: string }), 'invalid_blocks')
    if (error !== undefined) return { error }
    this.standing.set(key, { ...before, ...body })
    return { channel, ts: body.ts }
  }

  #open(call: Call): Readonly<Record<string, unknown>> {
    const trigger = this.#triggers.get(String(call.body.trigger_id))
    if (!trigger) return { error: 'invalid_trigger_id' }
    if (trigger.isUsed) return { error: 'exchanged_trigger_id' }
    if (Date.now() > trigger.until) return { error: 'expired_trigger_id' }
    trigger.isUsed = true
    return this.#view(call)
  }

  #view({ body }: Call): Readonly<Record<string, unknown>> {
    const error = this.#checked(checkView(body.view as object), 'invalid_arguments')
    return error === undefined ? { view: { id: this.fresh('V'), ...(body.view as object) } } : { error }
  }

  #beginUpload({ body }: Call): Readonly<Record<string, unknown>> {
    const length = Number(body.length)
    if (!body.filename || !(length > 0)) return { error: 'invalid_arguments' }
    const alt = body.alt_txt as string | undefined
    if ((alt?.length ?? 0) > 1000) this.faults.push('alt_txt over 1000 characters')
    if (body.alt_text !== undefined) this.faults.push('alt_text is no parameter: it is called alt_txt')
    const id = this.fresh('F')
    this.uploads.set(id, { filename: String(body.filename), length, alt })
    return { upload_url: `${this.origin}/upload/${id}`, file_id: id }
  }

  #completeUpload({ body }: Call, known: Team, channel: string): Readonly<Record<string, unknown>> {
    const files = body.files as readonly { readonly id: string }[]
    const uploads = files.map(({ id }) => this.uploads.get(id))
    if (uploads.some((upload) => upload?.bytes === undefined)) return { error: 'file_not_found' }
    if (/^[CG]/u.test(channel) && !known.channels.has(channel)) return { error: 'not_in_channel' }
    if (/^U/u.test(channel)) return { error: 'channel_not_found' }
    for (const upload of uploads) {
      if (upload?.alt !== undefined && !isImage(upload.bytes)) return { error: 'alt text of no image' }
      if (upload) upload.isComplete = true
    }
    return { files }
  }

  #install({ body }: Call): Readonly<Record<string, unknown>> {
    const installed = this.codes.get(String(body.code))
    this.codes.delete(String(body.code))
    if (!installed) return { error: 'invalid_code' }
    if (body.client_secret !== 'client-secret') return { error: 'bad_client_secret' }
    this.teams.set(installed.token, installed)
    return {
      access_token: installed.token,
      token_type: 'bot',
      scope: installed.scopes.join(','),
      bot_user_id: `U-bot-${installed.id}`,
      app_id: 'A1',
      team: { id: installed.id, name: installed.id },
      enterprise: null,
      is_enterprise_install: false,
      authed_user: { id: 'U1' },
    }
  }
}

const isImage = (bytes: Buffer | undefined): boolean => bytes?.subarray(1, 4).toString() === 'PNG'

/** Slack takes JSON, and forms whose structured values are JSON. */
function readBody(bytes: Buffer, type: string): Record<string, unknown> {
  const text = bytes.toString('utf8')
  if (text === '') return {}
  if (type.startsWith('application/json')) return JSON.parse(text) as Record<string, unknown>
  return Object.fromEntries(
    [...new URLSearchParams(text)].map(([name, value]) => [
      name,
      /^[[{]/u.test(value) ? (JSON.parse(value) as unknown) : value,
    ]),
  )
}
