import type { Response } from '../../bot/request.ts'
import type { ActionsBlock, KnownBlock } from '@slack/types'
import { shareAttachments } from './attachments.ts'
import type { Desk } from './desk.ts'
import { type Destination, type Failures, show, tell } from './destination.ts'
import { escapeText } from './escape.ts'
import { buttonValue, ifKept } from './keptLines.ts'
import { button, clipped, context, type Post, plainMessage, type SlackMessage } from './message.ts'
import { moreBlocks, shortened } from './moreCautions.ts'
import { putUpNotice } from './notice.ts'
import type { Attachments } from './recent.ts'
import { isTakenBack } from './refusal.ts'
import { sendButtons } from './sendButton.ts'
import { packMessage } from './sharedMessage.ts'
import { slackError } from './slackError.ts'

/** An answer, what it answers, and who is to see it when it does not say so itself. */
export interface Delivery {
  readonly response: Response
  /** As it was or would be typed. */
  readonly line: string
  readonly audience: 'asker' | 'channel'
}

/** Shows an answer where it belongs, and its files where they can go. Never rejects; what cannot be shown is logged. */
export async function deliver(desk: Desk, to: Destination, delivery: Delivery): Promise<void> {
  await showAnswer(desk, to, delivery)
  await putUpNotice(desk, to, delivery.response)
}

async function showAnswer(desk: Desk, to: Destination, delivery: Delivery): Promise<void> {
  const { response, audience } = delivery
  const { message: short, rest } = shortened(response)
  const message = { ...short, blocks: [...short.blocks, ...(await moreBlocks(rest, desk, to.user))] }
  const isPublic = audience === 'channel' || (response.ok && response.reply.audience === 'channel')
  if (!isPublic) return logged(desk, tell(to, await privatePost(desk, to, message, delivery)))
  // A message that was answered stands over its answer; a command or a press does not.
  const asked = to.response ? [askedBlock(desk, delivery)] : []
  await logged(
    desk,
    show(to, {
      text: message.text,
      blocks: [...asked, ...message.blocks, ...(await formBlocks(desk, to, delivery))],
    }),
  )
  await share(desk, to, message)
}

/** Shares drawings and files in the channel; says what to do where that is not possible. True when they are there. */
export async function share(desk: Desk, to: Destination, attachments: Attachments): Promise<boolean> {
  if (attachments.pictures.length + attachments.files.length === 0) return true
  try {
    await shareAttachments(attachments, { ...to, paint: desk.parts.paint })
    return true
  } catch (error) {
    const why = slackError(error)
    if (why in REASONS) desk.parts.log.info({ why }, 'a file could not be put into a Slack channel')
    else desk.parts.log.error({ why, error: (error as Error).message }, 'a file could not be sent to Slack')
    await logged(desk, tell(to, plainMessage(REASONS[why] ?? REFUSED)))
    return false
  }
}

const INVITE =
  'I am not in this channel, so the drawing cannot be put here. Invite me to get the drawing: type /invite and my name here, then ask again.'

const REASONS: Readonly<Record<string, string>> = {
  not_in_channel: INVITE,
  channel_not_found: INVITE,
  missing_scope:
    'I may not send files in this workspace. Whoever installed me can allow it: files:write in the settings of the app, then install it again.',
}

const REFUSED = 'the drawing could not be sent just now; the numbers stand. Ask again in a minute.'

/** What only the asker sees: the answer, and buttons to show it to all, to get its drawing, or to mend the line. */
async function privatePost(
  desk: Desk,
  { user }: Pick<Destination, 'user'>,
  message: SlackMessage,
  delivery: Delivery,
): Promise<Post> {
  const { text, blocks } = message
  if (!delivery.response.ok)
    return { text, blocks: [...blocks, ...(await formBlocks(desk, { user }, delivery))] }
  const attachments = desk.recent.keep(message)
  const asked = askedBlock(desk, delivery)
  const shown = { post: { text, blocks: [asked, ...blocks] }, attachments }
  const value = await ifKept(() => packMessage(shown, desk.parts.keeping, user), desk.parts.log)
  const elements: ActionsBlock['elements'] = [
    ...(value === undefined ? [] : [button('show', 'Show to all', value)]),
    ...sendButtons(message, desk),
  ]
  return { text, blocks: elements.length === 0 ? blocks : [...blocks, { type: 'actions', elements }] }
}

const askedBlock = ({ command }: Desk, { line }: Delivery): KnownBlock =>
  context(escapeText(clipped(`${command} ${line}`, QUESTION)))

/** The most of a question that is repeated over an answer that is shown to all. */
const QUESTION = 300

/** Under a line that could be mended: a button that opens it as a form. */
async function formBlocks(
  { parts }: Desk,
  { user }: Pick<Destination, 'user'>,
  { response, line }: Delivery,
): Promise<readonly KnownBlock[]> {
  if (response.ok || response.kind === 'fault' || response.kind === 'unsafe') return []
  const word = /^\/?\s*(\S+)/u.exec(line)?.[1]?.toLowerCase()
  if (!parts.commands.some(({ name }) => name === word)) return []
  const value = await ifKept(() => buttonValue(line, parts.keeping, user), parts.log)
  return value === undefined ? [] : [{ type: 'actions', elements: [button('form', 'Fill in a form', value)] }]
}

/** Logs every way that failed, when all did. */
export async function logged({ parts, doubt }: Desk, sending: Promise<Failures>): Promise<void> {
  const failures = await sending
  if (failures.some(isTakenBack)) doubt()
  if (failures.length > 0) parts.log.error({ failures }, 'an answer could not be shown in Slack')
}
