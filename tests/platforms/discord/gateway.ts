import { EventEmitter } from 'node:events'
import type { IncomingMessage, Server } from 'node:http'
import { type WebSocket, WebSocketServer } from 'ws'
import type { Json } from './wire.ts'

/** GuildMembers, GuildPresences, MessageContent: have to be asked for and granted. */
const PRIVILEGED = (1 << 1) | (1 << 8) | (1 << 15)
const DISPATCH = 0
const HEARTBEAT = 1
const IDENTIFY = 2
const RESUME = 6
const HELLO = 10
const HEARTBEAT_ACK = 11

export interface GatewayTerms {
  readonly token: string
  /** The events of a session's start, in order. */
  readonly opening: (
    session: string,
    shard: readonly number[],
    url: string,
  ) => readonly (readonly [string, Json])[]
}

/** One session: every event since it began, so that what was missed can be sent again. */
interface Session {
  readonly id: string
  readonly shard: readonly number[]
  readonly events: { readonly t: string; readonly d: Json; readonly s: number }[]
  socket: WebSocket | undefined
}

export interface Gateway {
  readonly identified: readonly Json[]
  readonly resumed: readonly Json[]
  /** To every session, or to the one of a shard; kept for those that are away. */
  readonly dispatch: (type: string, event: Json, shard?: number) => void
  /** Closes every connection, or one shard's. */
  readonly drop: (code: number, shard?: number) => void
  /** Gives the next connection no answer when it says who it is. */
  readonly silence: () => void
  /** Closes the next connection with this code when it says who it is. */
  readonly refuse: (code: number) => void
  /** Lets the next connections not even be opened: each meets one of these. */
  readonly shut: (...ways: readonly ('502' | 'torn')[]) => void
  /** Breaks every connection, also those that were given no answer. */
  readonly hangUp: () => void
  /** How many connections there are. */
  readonly open: () => number
  /** Tells `close` of every connection that ends. */
  readonly closings: EventEmitter
  readonly close: () => void
}

/** The socket of Discord, on its own computer: hello, identify, ready, heartbeats, resume. */
export function openGateway(server: Server, { token, opening }: GatewayTerms): Gateway {
  const sockets = new WebSocketServer({ noServer: true })
  const sessions = new Map<string, Session>()
  const identified: Json[] = []
  const resumed: Json[] = []
  const closings = new EventEmitter()
  const refusals: (number | 'silence')[] = []
  const doors: ('502' | 'torn')[] = []
  server.on('upgrade', (request: IncomingMessage, socket, head) => {
    const door = doors.shift()
    if (door === '502') return void socket.end('HTTP/1.1 502 Bad Gateway\r\nContent-Length: 0\r\n\r\n')
    if (door === 'torn') return void socket.destroy()
    sockets.handleUpgrade(request, socket, head, (opened) => greet(opened))
  })

  const say = (session: Session, t: string, d: Json) => {
    const event = { t, d, s: session.events.length + 1 }
    session.events.push(event)
    if (session.socket?.readyState === 1) session.socket.send(JSON.stringify({ op: DISPATCH, ...event }))
  }
  const greet = (socket: WebSocket) => {
    socket.once('close', () => closings.emit('close'))
    socket.send(JSON.stringify({ op: HELLO, t: null, s: null, d: { heartbeat_interval: 45_000 } }))
    socket.on('message', (text) => {
      const { op, d } = JSON.parse(String(text)) as { op: number; d: Json }
      if (op === HEARTBEAT) socket.send(JSON.stringify({ op: HEARTBEAT_ACK, t: null, s: null, d: null }))
      if (op === IDENTIFY) identify(socket, d)
      if (op === RESUME) resume(socket, d)
    })
  }
  const identify = (socket: WebSocket, d: Json) => {
    identified.push(d)
    const refused = refusals.shift()
    if (refused === 'silence') return
    if (refused !== undefined) return socket.close(refused)
    if (d.token !== token) return socket.close(4004)
    if ((Number(d.intents) & PRIVILEGED) !== 0) return socket.close(4014)
    const shard = (d.shard ?? [0, 1]) as number[]
    const session: Session = { id: `session-${sessions.size + 1}`, shard, events: [], socket }
    sessions.set(session.id, session)
    const { port } = server.address() as { port: number }
    for (const [type, event] of opening(session.id, shard, `ws://127.0.0.1:${port}/resume`))
      say(session, type, event)
  }
  const resume = (socket: WebSocket, d: Json) => {
    resumed.push(d)
    const session = sessions.get(String(d.session_id))
    if (!session || d.token !== token)
      return void socket.send(JSON.stringify({ op: 9, t: null, s: null, d: false }))
    session.socket = socket
    for (const event of session.events.filter(({ s }) => s > Number(d.seq)))
      socket.send(JSON.stringify({ op: DISPATCH, ...event }))
    say(session, 'RESUMED', {})
  }
  const chosen = (shard: number | undefined) =>
    [...sessions.values()].filter((session) => shard === undefined || session.shard[0] === shard)
  return {
    identified,
    resumed,
    dispatch: (type, event, shard) => {
      for (const session of chosen(shard)) say(session, type, event)
    },
    drop: (code, shard) => {
      for (const session of chosen(shard)) session.socket?.close(code)
    },
    silence: () => void refusals.push('silence'),
    refuse: (code) => void refusals.push(code),
    shut: (...ways) => void doors.push(...ways),
    hangUp: () => {
      for (const socket of sockets.clients) socket.close(1001)
    },
    open: () => sockets.clients.size,
    closings,
    close: () => {
      for (const socket of sockets.clients) socket.terminate()
      sockets.close()
    },
  }
}
