import type { KnownBlock } from '@slack/types'
import type { Post } from './message.ts'
import type { Whereabouts } from './people.ts'
import type { ResponseUrl } from './responseUrl.ts'
import { slackError } from './slackError.ts'

/** Where an answer goes, and who is waiting for it. */
export interface Destination extends Whereabouts {
  readonly thread?: string | undefined
  /** Works in channels that the bot is not in. */
  readonly response?: ResponseUrl | undefined
}

/** Every way that was tried, with what Slack said; empty when the message is there. */
export type Failures = readonly string[]

/** Shows a message to one person: by the response_url, else in the channel for them alone, else directly to them. */
export const tell = (to: Destination, post: Post): Promise<Failures> =>
  firstOf([
    ['response_url', () => byResponse(to, post, 'ephemeral')],
    ['chat.postEphemeral', () => byEphemeral(to, post)],
    ['chat.postMessage', () => byMessage({ ...to, channel: to.user, thread: undefined }, post)],
  ])

/** Shows a message to everybody in the channel: by the response_url, else as the bot's own. */
export const show = (to: Destination, post: Post): Promise<Failures> =>
  firstOf([
    ['response_url', () => byResponse(to, post, 'in_channel')],
    ['chat.postMessage', () => byMessage(to, post)],
  ])

type Way = readonly [name: string, go: () => Promise<string | undefined>]

async function firstOf(ways: readonly Way[]): Promise<Failures> {
  const failures: string[] = []
  for (const [name, go] of ways) {
    const why = await go().catch(slackError)
    if (why === undefined) return []
    failures.push(`${name}: ${why}`)
  }
  return failures
}

const byResponse = async (
  { response, thread }: Destination,
  post: Post,
  type: 'ephemeral' | 'in_channel',
): Promise<string | undefined> =>
  response
    ? response.post({
        ...post,
        response_type: type,
        replace_original: false,
        ...(thread !== undefined && { thread_ts: thread }),
      })
    : 'none'

async function byEphemeral({ client, channel, user, thread }: Destination, post: Post): Promise<undefined> {
  await client.chat.postEphemeral({
    channel,
    user,
    ...content(post),
    ...(thread !== undefined && { thread_ts: thread }),
  })
}

async function byMessage({ client, channel, thread }: Destination, post: Post): Promise<undefined> {
  await client.chat.postMessage({
    channel,
    ...content(post),
    unfurl_links: false,
    unfurl_media: false,
    ...(thread !== undefined && { thread_ts: thread }),
  })
}

const content = ({ text, blocks }: Post): { text: string; blocks: KnownBlock[] } | { text: string } =>
  blocks ? { text, blocks: [...blocks] } : { text }
