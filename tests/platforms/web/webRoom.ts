import { mkdtemp } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { crc32, deflateSync } from 'node:zlib'
import { describe as describeCommands } from '../../../src/bot/catalogue.ts'
import { createComplete } from '../../../src/bot/complete.ts'
import type { Logger } from '../../../src/bot/log.ts'
import type { Paint } from '../../../src/bot/platform.ts'
import type { Reply } from '../../../src/bot/reply.ts'
import type { Answer } from '../../../src/bot/request.ts'
import { createWebRoom, type WebRoom } from '../../../src/platforms/web/client.ts'
import { createKeeping } from '../../../src/store/keeping.ts'
import { openSqlite } from '../../../src/store/sqlite.ts'
import { openTranscript } from '../../../src/store/transcript.ts'
import { catalogue, config, type Logged, openRoom, ROOT } from '../../room.ts'

/** A room in the browser with the real bot behind it. */
export interface OpenWebRoom {
  readonly url: string
  readonly port: number
  readonly web: WebRoom
  /** Where it keeps things; a room opened there again finds them. */
  readonly folder: string
  readonly logged: readonly Logged[]
  readonly close: () => Promise<void>
}

export interface WebRoomChoices {
  readonly folder?: string
  readonly port?: number
  readonly tries?: number
  readonly host?: string
  readonly names?: readonly string[]
  readonly paint?: Paint
  /** Slots that are put into the reply to a line, over what the bot says. */
  readonly slots?: (line: string) => Partial<Reply> | undefined
  /** What the answer to a line waits for. */
  readonly held?: (line: string) => Promise<void>
}

/** The page as it lies in the sources. */
export const PAGE = `${ROOT}src/platforms/web/page`

/** Opens a room at any free port of this machine, unless told otherwise. */
export async function openWebRoom(choices: WebRoomChoices = {}): Promise<OpenWebRoom> {
  const folder = choices.folder ?? (await mkdtemp(join(tmpdir(), 'web-room-')))
  const store = await openSqlite(join(folder, 'battenbot.sqlite'))
  const bot = await openRoom({ store })
  const logged: Logged[] = []
  const note = (facts: object, message: string) => void logged.push({ facts, message })
  const log: Logger = { error: note, warn: note, info: note }
  const commands = describeCommands(catalogue)
  const complete = createComplete({ store, commands, reference: config, settings: config.bot })
  const answer: Answer = async (request) => {
    const response = await bot.answer(request)
    const line = 'line' in request.invocation ? request.invocation.line : ''
    const slots = choices.slots?.(line)
    await choices.held?.(line)
    return response.ok && slots ? { ...response, reply: { ...response.reply, ...slots } } : response
  }
  const now = () => new Date()
  const keeping = createKeeping(store, 'room', now)
  const web = createWebRoom(
    { answer, commands, complete, paint: choices.paint ?? paintGrey, keeping, log, now },
    {
      host: choices.host ?? '127.0.0.1',
      port: choices.port ?? 0,
      ...(choices.tries !== undefined && { tries: choices.tries }),
      ...(choices.names && { names: choices.names }),
      page: PAGE,
      transcript: await openTranscript(join(folder, 'room')),
    },
  )
  try {
    await web.start()
  } catch (error) {
    await bot.close()
    throw error
  }
  return {
    url: web.url(),
    port: Number(new URL(web.url()).port),
    web,
    folder,
    logged,
    close: async () => {
      await web.stop()
      await bot.close()
    },
  }
}

/** A real PNG of one grey pixel: what a page has to load, without a painter. */
const paintGrey: Paint = async () => {
  const chunk = (name: string, body: Uint8Array): Buffer => {
    const framed = Buffer.alloc(12 + body.length)
    framed.writeUInt32BE(body.length, 0)
    framed.write(name, 4, 'latin1')
    framed.set(body, 8)
    framed.writeUInt32BE(crc32(framed.subarray(4, 8 + body.length)), 8 + body.length)
    return framed
  }
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', Buffer.from([0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0])),
    chunk('IDAT', deflateSync(Buffer.from([0, 128]))),
    chunk('IEND', Buffer.alloc(0)),
  ])
}
