import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import type { PlatformParts } from '../../bot/platform.ts'
import { type Conversation, requestOf } from './conversation.ts'
import { limits } from './limits.ts'
import type { Live } from './live.ts'
import { openStream } from './stream.ts'
import { complete, welcome } from './registration.ts'
import type { Transcript } from './transcript.ts'
import { type Visitor, visitorOf } from './visitor.ts'

/** What the routes lead to. */
export interface RouteParts extends Pick<PlatformParts, 'commands' | 'complete' | 'now' | 'log'> {
  readonly conversation: Conversation
  readonly transcript: Pick<Transcript, 'channels' | 'readContent'>
  readonly live: Live
}

const who = { name: z.string(), channel: z.string() }
const askBody = z.object({ ...who, line: z.string() })
const shareBody = z.object({ ...who, id: z.string() })
const whoOnly = z.object(who)
const completionsQuery = z.object({ ...who, line: z.string() })
const kept = z.object({ content: z.string().regex(/^[0-9a-f]{64}$/u), name: z.string() })

/** Adds what the page asks for to a server. */
export function addRoutes(server: FastifyInstance, parts: RouteParts): void {
  const { conversation, transcript, live } = parts
  const lines = { config: { rateLimit: { max: limits.linesPerMinute, timeWindow: '1 minute' } } }

  server.get('/room/welcome', async () => ({
    channels: await transcript.channels(),
    begin: welcome(parts.commands),
  }))
  server.post('/room/lines', lines, async (request) => {
    const said = bodyOf(askBody, request)
    return conversation.ask(visitorIn(request, said), said.line)
  })
  server.post('/room/shared', lines, async (request) => {
    const said = bodyOf(shareBody, request)
    return (
      (await conversation.share(visitorIn(request, said), said.id)) ??
      refuse(404, 'there is no such answer of yours')
    )
  })
  server.post('/room/forgotten', lines, async (request) => ({
    count: await conversation.forget(visitorIn(request, bodyOf(whoOnly, request))),
  }))
  server.get('/room/project', async (request) =>
    conversation.project(visitorIn(request, partOf(whoOnly, request.query))),
  )
  server.get('/room/completions', async (request) => {
    const said = partOf(completionsQuery, request.query)
    return complete(requestOf(visitorIn(request, said), parts.now()), said.line, parts)
  })
  server.get('/room/live', async (request, reply) => {
    const visitor = visitorIn(request, partOf(whoOnly, request.query))
    if (live.count() >= limits.pages) refuse(503, 'too many pages are open; close one')
    await openStream(reply, visitor, live, async () => {
      // First, since it deletes what is to be deleted.
      const posted = await conversation.boards.look(visitor.channel)
      return { entries: await conversation.history(visitor), posted }
    })
  })
  server.get('/kept/:content/:name', async (request, reply) => {
    const { content, name } = partOf(kept, request.params)
    const bytes = (await transcript.readContent(content)) ?? conversation.boards.content(content)
    return bytes ? sendKept(reply, name, bytes) : refuse(404, 'this is not kept any more')
  })
}

const PNG = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])

/** Pictures are shown; everything else is only ever saved, whatever it calls itself. */
function sendKept(reply: FastifyReply, name: string, bytes: Uint8Array): FastifyReply {
  const isPicture = Buffer.from(bytes.subarray(0, PNG.length)).equals(PNG)
  const disposition = isPicture ? 'inline' : 'attachment'
  return reply
    .type(isPicture ? 'image/png' : 'application/octet-stream')
    .header('content-disposition', `${disposition}; filename*=UTF-8''${encodeURIComponent(name)}`)
    .header('cache-control', 'private, max-age=31536000, immutable')
    .send(Buffer.from(bytes))
}

function visitorIn(request: FastifyRequest, said: { name: string; channel: string }): Visitor {
  const visitor = visitorOf(said, request.browser, request.headers['accept-language'])
  return (
    visitor ??
    refuse(
      400,
      `a name has 1 to ${limits.nameLength} characters; a channel has up to ${limits.channelLength} letters, digits and hyphens`,
    )
  )
}

const bodyOf = <Shape extends z.ZodType>(shape: Shape, { body }: FastifyRequest): z.output<Shape> =>
  partOf(shape, body)

function partOf<Shape extends z.ZodType>(shape: Shape, part: unknown): z.output<Shape> {
  const read = shape.safeParse(part)
  return read.success ? read.data : refuse(400, 'this is not what the page of the room sends')
}

function refuse(statusCode: number, sentence: string): never {
  throw Object.assign(new Error(sentence), { statusCode })
}
