import type { Keeping, PlatformParts } from '../bot/platform.ts'
import type { Reply } from '../bot/reply.ts'
import type { Answer, Request, Response } from '../bot/request.ts'
import type { Show } from '../bot/show.ts'
import { isOlder, type Version } from './notices.ts'

/** A notice that is up for everybody, with what its numbers are printed by. */
export interface Standing extends Version {
  readonly notice: string
  /** When it was put up, in ISO 8601. */
  readonly at: string
  readonly reply: Reply
  readonly show: Show['settings']
}

/** What all processes over one store know of a channel of the room on this machine. */
export interface Board {
  /** What stands there for everybody, one of each name, the longest unchanged first. */
  readonly standing: readonly Standing[]
  /** In ISO 8601: what was asked in the channel before then is deleted. */
  readonly forgotten?: string
}

/** Notices of a channel; of more the longest unchanged are taken down. */
const MOST = 20

const NOT_UP = 'This could not be put up for everybody just now; the next change puts it up.'
const NOT_DELETED = 'What was said here before could not be deleted just now; send the line again.'

const nameOf = (channel: string): string => `board:${channel}`

/** The board of a channel and the revision that it is at; an empty one at revision 0 where nothing was ever put up. */
export async function recallBoard(
  keeping: Pick<Keeping, 'recall'>,
  channel: string,
): Promise<{ readonly revision: number; readonly board: Board }> {
  const { revision, text } = await keeping.recall(nameOf(channel))
  if (text === undefined) return { revision, board: { standing: [] } }
  const { standing, ...board } = JSON.parse(text) as Board
  return { revision, board: { ...board, standing: standing.map(unpacked) } }
}

/**
 * The same answers; what one puts up or deletes for its whole channel is kept on the channel's board. What is older than what
 * stands there is passed over. Where the store fails, the answer says so.
 */
export function keepBoard(answer: Answer, parts: Pick<PlatformParts, 'keeping' | 'log'>): Answer {
  return async (request) => {
    const response = await answer(request)
    if (!response.ok || !isForBoard(response.reply)) return response
    try {
      await note(request, response, parts.keeping)
      return response
    } catch (err) {
      parts.log.error({ err }, 'what a channel was told could not be kept')
      const { reply } = response
      const notes = [...(reply.notes ?? []), reply.notice ? NOT_UP : NOT_DELETED]
      return { ...response, reply: { ...reply, notes } }
    }
  }
}

/** Whether a reply changes what the channel's board holds. */
export const isForBoard = ({ notice, forgets }: Reply): boolean =>
  notice !== undefined || forgets === 'channel'

async function note(request: Request, response: Answered, keeping: Keeping): Promise<void> {
  const name = nameOf(request.place.channel)
  for (;;) {
    const { revision, text } = await keeping.recall(name)
    const board: Board = text === undefined ? { standing: [] } : (JSON.parse(text) as Board)
    const next = changed(board, request.at.toISOString(), response)
    if (next === board || (await keeping.remember(name, JSON.stringify(next), revision))) return
  }
}

type Answered = Extract<Response, { ok: true }>

/** The board after an answer of `at`; the same one where nothing of it changes. */
function changed(board: Board, at: string, { reply, show }: Answered): Board {
  const { forgotten = '' } = board
  const after = reply.forgets === 'channel' && at > forgotten ? { ...board, forgotten: at } : board
  const { notice } = reply
  const before = notice && board.standing.find((each) => each.notice === notice.name)
  if (!notice || isOlder(notice, before)) return after
  const { name, revision, since } = notice
  const put = { notice: name, at, revision, since, reply: packed(notice.reply), show: show.settings }
  return { ...after, standing: [...board.standing.filter((each) => each !== before), put].slice(-MOST) }
}

/** As it is kept: files go through JSON as base64, and the figures are for whoever asked. */
const packed = (reply: Reply): Reply => ({
  ...reply,
  figures: {},
  files: (reply.files ?? []).map(({ content, ...file }) => {
    const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : Buffer.from(content)
    return { ...file, content: bytes.toString('base64') }
  }),
})

const unpacked = (standing: Standing): Standing => ({
  ...standing,
  reply: {
    ...standing.reply,
    files: (standing.reply.files ?? []).map((file) => ({
      ...file,
      content: Buffer.from(String(file.content), 'base64'),
    })),
  },
})
