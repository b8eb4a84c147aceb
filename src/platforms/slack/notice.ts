import type { WebClient } from '@slack/web-api'
import type { Notice } from '../../bot/reply.ts'
import type { Response } from '../../bot/request.ts'
import type { Spot } from '../notices.ts'
import { inOneMessage } from '../oneMessage.ts'
import { shareAttachments } from './attachments.ts'
import type { Desk } from './desk.ts'
import { type Destination, tell } from './destination.ts'
import { shortLines } from './keptLines.ts'
import { plainMessage, type SlackMessage } from './message.ts'
import type { Whereabouts } from './people.ts'
import { fits, render } from './render.ts'
import { slackError } from './slackError.ts'

const INVITE =
  'I am not in this channel, so this could not be put up for everybody. Invite me: type /invite and my name here; the next change puts it up.'
const FAILED = 'This could not be put up for everybody just now; the next change puts it up.'
const UNPINNED = 'It is up for everybody, but not pinned just now; pin my message by hand.'
const UNFILED = 'It is up for everybody, but its files could not be put under it.'

const NOT_POSTED: Readonly<Record<string, string>> = {
  not_in_channel: INVITE,
  channel_not_found: INVITE,
  is_archived: 'This channel is archived, so nothing can be put up in it.',
  restricted_action: 'This channel lets only some people write, so this could not be put up for everybody.',
}

const NOT_PINNED: Readonly<Record<string, string>> = {
  missing_scope:
    'It is up for everybody, but not pinned. Whoever installed me can allow it: pins:write in the settings of the app, then install it again; or pin my message by hand.',
}

/** What Slack says of a message that cannot be changed any more. */
const GONE = ['message_not_found', 'cant_update_message', 'edit_window_closed']

/** What is remembered of a notice: its message, and the files under it with a name for what they hold. */
interface Standing {
  readonly at: string
  readonly files: readonly string[]
  readonly holds?: string | undefined
}

/**
 * Puts up the notice of an answer where there is one: a message of the bot's own in the channel, pinned, and updated from then
 * on, with its drawings and files in a thread under it. Whoever acted is told what did not go as it should. Never rejects.
 */
export async function putUpNotice(desk: Desk, to: Destination, response: Response): Promise<void> {
  if (!response.ok || !response.reply.notice) return
  const { notice } = response.reply
  const told: string[] = []
  try {
    const message = await messageOf(desk, notice, response)
    const name = `notice:${to.team}:${to.channel}:${notice.name}`
    await desk.notices(
      name,
      notice,
      spotIn(desk, to, message, (words) => told.push(words)),
    )
  } catch (error) {
    const why = slackError(error)
    desk.parts.log.warn({ why, notice: notice.name }, 'a notice could not be put up in Slack')
    told.push(NOT_POSTED[why] ?? FAILED)
  }
  if (told.length === 0) return
  const failures = await tell(to, plainMessage(told.join(' ')))
  if (failures.length > 0) desk.parts.log.error({ failures }, 'nobody could be told about a notice in Slack')
}

async function messageOf(
  { parts }: Desk,
  { reply }: Notice,
  { show }: Extract<Response, { ok: true }>,
): Promise<SlackMessage> {
  const one = inOneMessage(reply, (each) => fits(render({ ok: true, reply: each, show })))
  return render(await shortLines({ ok: true, reply: one, show }, parts, ''))
}

function spotIn(
  desk: Desk,
  { client, channel }: Whereabouts,
  message: SlackMessage,
  tell: (words: string) => void,
): Spot {
  const content = { channel, text: message.text, blocks: [...message.blocks] }
  const standing = async (before: Standing): Promise<string> => {
    const holds = desk.recent.keep(message)
    if (holds === before.holds) return JSON.stringify(before)
    const files = await attach(desk, { client, channel, thread: before.at }, message, tell)
    await removeFiles(client, before.files)
    return JSON.stringify({ at: before.at, files, holds })
  }
  return {
    post: async () => {
      const { ts } = await client.chat.postMessage({ ...content, unfurl_links: false, unfurl_media: false })
      const at = ts ?? ''
      await client.pins.add({ channel, timestamp: at }).catch((error: unknown) => {
        const why = slackError(error)
        desk.parts.log.info({ why }, 'a notice could not be pinned in Slack')
        tell(NOT_PINNED[why] ?? UNPINNED)
      })
      return standing({ at, files: [] })
    },
    change: async (kept) => {
      const before = JSON.parse(kept) as Standing
      try {
        await client.chat.update({ ...content, ts: before.at })
      } catch (error) {
        if (GONE.includes(slackError(error))) return undefined
        throw error
      }
      return standing(before)
    },
  }
}

/** Shares drawings and files in the thread; gives the ids they have. */
async function attach(
  { parts }: Desk,
  where: { readonly client: WebClient; readonly channel: string; readonly thread: string },
  message: SlackMessage,
  tell: (words: string) => void,
): Promise<readonly string[]> {
  if (message.pictures.length + message.files.length === 0) return []
  try {
    return await shareAttachments(message, { ...where, paint: parts.paint })
  } catch (error) {
    parts.log.warn({ why: slackError(error) }, 'files could not be put under a notice in Slack')
    tell(UNFILED)
    return []
  }
}

/** Takes away what newer files stand in for; one that is gone already does not matter. */
async function removeFiles(client: WebClient, files: readonly string[]): Promise<void> {
  for (const file of files) await client.files.delete({ file }).catch(() => undefined)
}
