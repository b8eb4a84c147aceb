import type { FastifyReply } from 'fastify'
import type { EntryView } from './entry.ts'
import { limits } from './limits.ts'
import type { Live, Page } from './live.ts'
import type { Posted } from './posted.ts'
import type { Visitor } from './visitor.ts'

/** Proxies and phones drop a connection on which nothing comes for long. */
const BREATH = 25_000

/**
 * Keeps a page's connection open: first what was said, then every entry as it comes. What comes while the history is read
 * is sent behind it, so nothing is missed; the page tells entries apart by their id.
 */
export async function openStream(
  reply: FastifyReply,
  visitor: Visitor,
  live: Live,
  history: () => Promise<{ readonly entries: readonly EntryView[]; readonly posted: readonly Posted[] }>,
): Promise<void> {
  const early: string[] = []
  let isReady = false
  const { raw } = reply
  const write = (text: string) => {
    if (!isReady) return void early.push(text)
    if (raw.writableLength > limits.bytesWaiting) raw.destroy()
    else raw.write(text)
  }
  const page: Page = {
    visitor,
    send: (event, body) => write(`event: ${event}\ndata: ${JSON.stringify(body)}\n\n`),
    close: () => void raw.end(),
  }
  const leave = live.join(page)
  const breath = setInterval(() => write(': still here\n\n'), BREATH)
  breath.unref()
  raw.once('close', () => {
    clearInterval(breath)
    leave()
  })
  const said = await history().catch((error: unknown) => {
    clearInterval(breath)
    leave()
    throw error
  })
  reply.hijack()
  raw.writeHead(200, {
    ...(reply.getHeaders() as Record<string, string>),
    'content-type': 'text/event-stream; charset=utf-8',
    'cache-control': 'no-store',
    'x-accel-buffering': 'no',
  })
  isReady = true
  page.send('history', { you: visitor.name, channel: visitor.channel, ...said })
  for (const text of early.splice(0)) write(text)
}
