import { createHash, randomUUID } from 'node:crypto'
import type { PlatformParts } from '../../bot/platform.ts'
import type { Reply } from '../../bot/reply.ts'
import type { Request, Response } from '../../bot/request.ts'
import { isForBoard, keepBoard } from '../board.ts'
import { type Boards, createBoards } from './boards.ts'
import type { Card } from './card.ts'
import { type Entry, type EntryView, readEntry, sees, viewFor } from './entry.ts'
import { limits } from './limits.ts'
import type { Live } from './live.ts'
import { render } from './render.ts'
import type { Transcript } from './transcript.ts'
import type { Visitor } from './visitor.ts'

/** What people can do in a channel, whichever way they come in. */
export interface Conversation {
  /** What stands for everybody in the channels. */
  readonly boards: Boards
  /** Answers a line, keeps it, and shows it to whoever may see it. */
  readonly ask: (visitor: Visitor, line: string) => Promise<EntryView>
  /** Shows an entry of the visitor's own to the whole channel; undefined when there is no such entry. */
  readonly share: (visitor: Visitor, id: string) => Promise<EntryView | undefined>
  /** Deletes what the visitor asked in the channel; says how many entries that were. */
  readonly forget: (visitor: Visitor) => Promise<number>
  /** What the visitor may see of what was said, oldest first. */
  readonly history: (visitor: Visitor) => Promise<readonly EntryView[]>
  /** The channel's project, in the visitor's units; never kept. */
  readonly project: (visitor: Visitor) => Promise<Card>
  /** Resolves once everything that was asked so far has been answered. */
  readonly settled: () => Promise<void>
}

/** The request of a visitor without what they ask. The terminal room has the same place, so both share what is kept. */
export const requestOf = ({ channel, name, locale }: Visitor, at: Date): Omit<Request, 'invocation'> => ({
  place: { platform: 'room', workspace: 'local', channel },
  user: name,
  name,
  at,
  ...(locale !== undefined && { locale }),
})

/** Conversations in every channel, over the bot and a transcript. */
export function createConversation(parts: PlatformParts, transcript: Transcript, live: Live): Conversation {
  const underWay = new Set<Promise<unknown>>()
  const whole = <Value>(work: Promise<Value>): Promise<Value> => {
    underWay.add(work)
    return work.finally(() => underWay.delete(work))
  }
  const answered = keepBoard(parts.answer, parts)
  const answer = (visitor: Visitor, line: string, at = parts.now()): Promise<Response> =>
    answered({ ...requestOf(visitor, at), invocation: { line } })
  const own = (visitor: Visitor) => (kept: unknown) => readEntry(kept)?.owner === visitor.owner
  const tell = createTeller(answer, live)

  const ask = async (visitor: Visitor, line: string): Promise<EntryView> => {
    const now = parts.now()
    const response = await answer(visitor, line, now)
    if (response.ok) await follow(visitor, response.reply)
    const at = now.toISOString()
    const isForAll = response.ok && response.reply.audience === 'channel'
    const card = await render(response, { ...parts, transcript })
    const entry: Entry = {
      id: randomUUID(),
      at,
      owner: visitor.owner,
      name: visitor.name,
      line,
      card,
      ...(isForAll && { shared: at }),
    }
    await transcript.append(visitor.channel, entry)
    live.publish(visitor.channel, entry)
    if (response.ok) await tell(visitor)
    return viewFor(visitor, entry)
  }
  const share = async (visitor: Visitor, id: string): Promise<EntryView | undefined> => {
    const isIt = (kept: unknown) => (kept as { id?: unknown }).id === id && own(visitor)(kept)
    const entry = readEntry((await transcript.recent(visitor.channel, 1, isIt))[0])
    if (!entry) return undefined
    const shared: Entry = { ...entry, shared: entry.shared ?? parts.now().toISOString() }
    if (entry.shared === undefined) await transcript.append(visitor.channel, shared)
    live.publish(visitor.channel, shared)
    return viewFor(visitor, shared)
  }
  /** Deletes the entries of a channel that are `wanted`. */
  const forgetIn = async (channel: string, wanted: (entry: Entry) => boolean): Promise<number> => {
    const gone: string[] = []
    const count = await transcript.forget(channel, (kept) => {
      const entry = readEntry(kept)
      if (!entry || !wanted(entry)) return false
      gone.push(entry.id)
      return true
    })
    live.publishForgotten(channel, gone)
    return count
  }
  const forget = (visitor: Visitor): Promise<number> => forgetIn(visitor.channel, own(visitor))
  const boards = createBoards({
    ...parts,
    live,
    channels: transcript.channels,
    forget: (channel, before) => forgetIn(channel, ({ at }) => at < before),
  })
  /** What the bot has put up is shown, and what it has deleted is deleted from what was said as well. */
  const follow = async (visitor: Visitor, reply: Reply): Promise<void> => {
    if (isForBoard(reply))
      await boards.look(visitor.channel).catch((err: unknown) => {
        parts.log.warn({ err }, 'what stands in a channel cannot be read')
      })
    if (reply.forgets !== 'person') return
    for (const channel of await transcript.channels()) await forgetIn(channel, own(visitor))
  }
  return {
    boards,
    ask: (visitor, line) => whole(ask(visitor, line)),
    share: (visitor, id) => whole(share(visitor, id)),
    forget: (visitor) => whole(forget(visitor)),
    history: async (visitor) => {
      const isSeen = (kept: unknown) => {
        const entry = readEntry(kept)
        return entry !== undefined && sees(visitor, entry)
      }
      const kept = await transcript.recent(visitor.channel, limits.entriesShown, isSeen)
      return kept
        .flatMap((each) => readEntry(each) ?? [])
        .map((entry) => viewFor(visitor, entry))
        .toSorted((one, other) => one.at.localeCompare(other.at))
    },
    project: async (visitor) => render(await answer(visitor, PROJECT), { ...parts, transcript }),
    settled: async () => void (await Promise.allSettled(underWay)),
  }
}

const PROJECT = 'project'

/** Tells a channel that its project changed, by what the bot says of it after a line and said after the line before. */
function createTeller(answer: (visitor: Visitor, line: string) => Promise<Response>, live: Live) {
  const said = new Map<string, string>()
  return async (visitor: Visitor): Promise<void> => {
    const response = await answer(visitor, PROJECT)
    const figures = JSON.stringify(response.ok ? response.reply.figures : response.error)
    // There may be many channels, so what was said is only told from what is said.
    const now = createHash('sha256').update(figures).digest('base64')
    if (said.get(visitor.channel) === now) return
    said.set(visitor.channel, now)
    live.publishChange(visitor.channel)
  }
}
