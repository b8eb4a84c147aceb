import type { WebClient } from '@slack/web-api'
import { deliver } from './deliver.ts'
import { ask, type Desk, isFirst } from './desk.ts'
import { typedText } from './escape.ts'

/** What is used of an `app_mention`, or of a `message` in the conversation with the bot. */
export interface HeardMessage {
  readonly eventId: string
  readonly team: string
  readonly channel: string
  readonly user: string
  readonly text: string
  /** The bot, as mentions name it. */
  readonly bot?: string | undefined
  /** Of the message itself. */
  readonly at: string
  /** Of the message that its thread began with. */
  readonly thread?: string | undefined
}

/** Answers a mention in its thread, or begins one under it: a slash command cannot be typed in a thread. */
export const answerMention = (desk: Desk, heard: HeardMessage, client: WebClient): Promise<void> =>
  answerHeard(desk, heard, heard.thread ?? heard.at, client)

/** Answers a message in the conversation with the bot where it was written. */
export const answerDirect = (desk: Desk, heard: HeardMessage, client: WebClient): Promise<void> =>
  answerHeard(desk, heard, heard.thread, client)

async function answerHeard(
  desk: Desk,
  { eventId, team, channel, user, text, bot }: HeardMessage,
  thread: string | undefined,
  client: WebClient,
): Promise<void> {
  if (!(await isFirst(desk, `event ${eventId}`))) return
  const where = { client, team, channel, user }
  const typed = typedText(text.replace(bot === undefined ? FIRST_MENTION : mentionOf(bot), ' '))
  // People repeat the slash command when they write to the bot by name.
  const line =
    (typed.startsWith(`${desk.command} `) ? typed.slice(desk.command.length).trim() : typed) || 'help'
  const response = await ask(desk, where, { line })
  await deliver(desk, { ...where, thread }, { response, line, audience: 'channel' })
}

const FIRST_MENTION = /^\s*<@[^<>]*>/u

const mentionOf = (user: string): RegExp => new RegExp(`<@${user}(?:\\|[^<>]*)?>`, 'gu')
