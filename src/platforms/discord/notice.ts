import { DiscordAPIError, type SendableChannels } from 'discord.js'
import type { Notice, Reply } from '../../bot/reply.ts'
import type { Response } from '../../bot/request.ts'
import { inOneMessage } from '../oneMessage.ts'
import type { Spot } from '../notices.ts'
import type { Asker } from './asker.ts'
import { postable, sendable, sorry } from './deliver.ts'
import type { Desk } from './desk.ts'
import { type Packed, withoutAnyFile } from './pack.ts'
import { limits } from './limits.ts'
import { pagesOf } from './pages.ts'
import { render } from './render.ts'
import { fits } from './size.ts'
import { loggable, troubleOf } from './trouble.ts'

const UNSEEN =
  'This could not be put up for everybody: I do not see this channel. Who manages the server can add me to it, or allow "View Channel" here.'
const FORBIDDEN =
  'This could not be put up for everybody: I may not write in this channel. Who manages it can allow "View Channel" and "Send Messages".'
const FAILED = 'This could not be put up for everybody just now; the next change puts it up.'
const UNPINNED = 'It is up for everybody, but not pinned: who manages the channel can allow "Pin Messages".'
const FULL = 'It is up for everybody, but not pinned: this channel has as many pins as there can be.'
const NO_FILES =
  'The files are left out: I may not attach files here. Who manages it can allow "Attach Files".'

/** Discord's number for a channel that has as many pins as it can (Opcodes and Status Codes, JSON). */
const MOST_PINS = 30_003

/**
 * Puts up the notice of an answer where there is one: a message of the bot's own in the channel, pinned, and edited from then
 * on. Gives a sentence for whoever acted where that did not go as it should. Never rejects.
 */
export async function putUpNotice(
  response: Response,
  { place }: Pick<Asker, 'place'>,
  channelId: string | null,
  desk: Desk,
): Promise<Packed | undefined> {
  if (!response.ok || !response.reply.notice) return undefined
  const { notice } = response.reply
  try {
    const channel = await channelFor([place.channel, channelId], desk)
    if (!channel) return sorry(UNSEEN)
    const page = await pageOf(notice, response, desk)
    const told: string[] = []
    const spot = spotIn(channel, page, desk, (words) => told.push(words))
    await desk.notices(`notice:${place.workspace}:${channel.id}:${notice.name}`, notice, spot)
    return told.length > 0 ? sorry(told.join(' ')) : undefined
  } catch (error) {
    desk.parts.log.warn({ ...loggable(error), notice: notice.name }, 'a notice could not be put up')
    return sorry(troubleOf(error) === 'forbidden' ? FORBIDDEN : FAILED)
  }
}

/** The first of these channels that can be written in: a thread of a forum hangs from one that cannot. */
async function channelFor(
  ids: readonly (string | null)[],
  { client }: Desk,
): Promise<SendableChannels | undefined> {
  for (const id of ids) {
    const channel = id === null ? null : await client.channels.fetch(id).catch(() => null)
    if (channel?.isSendable()) return channel
  }
  return undefined
}

async function pageOf(
  { reply }: Notice,
  response: Extract<Response, { ok: true }>,
  desk: Desk,
): Promise<Packed> {
  const terms = { isPrivate: false, fileBytes: limits.fileBytes, user: '' }
  const isOne = (each: Reply) => {
    const messages = render({ ...response, reply: each }, PUBLIC)
    return messages.length === 1 && messages.every(fits)
  }
  const short = inOneMessage(reply, isOne)
  const [page] = await pagesOf({ ...response, reply: short }, terms, desk)
  return page ?? sorry(short.answer)
}

const PUBLIC = {
  isPrivate: false,
  fileBytes: limits.fileBytes,
  idOf: () => '',
  lacks: () => false,
}

/** How the message is posted and pinned, and edited; `tell` is given what whoever acted should know. */
function spotIn(channel: SendableChannels, page: Packed, desk: Desk, tell: (words: string) => void): Spot {
  const pin = async (message: string) => {
    try {
      await channel.messages.pin(message)
    } catch (error) {
      desk.parts.log.info(loggable(error), 'a notice could not be pinned')
      tell(error instanceof DiscordAPIError && error.code === MOST_PINS ? FULL : UNPINNED)
    }
  }
  return {
    post: async () => {
      const { id } = await withOrWithoutFiles(page, (each) => channel.send(postable(each)))
      await pin(id)
      return id
    },
    change: async (message) => {
      try {
        await withOrWithoutFiles(page, (each) => channel.messages.edit(message, sendable(each)))
        return message
      } catch (error) {
        if (troubleOf(error) === 'gone') return undefined
        throw error
      }
    },
  }
}

/** Where files may not be attached, the message goes without and says so. */
async function withOrWithoutFiles(
  page: Packed,
  send: (page: Packed) => Promise<{ readonly id: string }>,
): Promise<{ readonly id: string }> {
  try {
    return await send(page)
  } catch (error) {
    if (page.files.length === 0 || troubleOf(error) !== 'forbidden') throw error
    return send(withoutAnyFile(page, NO_FILES))
  }
}
