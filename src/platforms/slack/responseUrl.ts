import { limits } from './limits.ts'
import type { Post } from './message.ts'
import { type Pause, patientFetch } from './patientFetch.ts'
import { slackError } from './slackError.ts'

/** What may be said beside the text and blocks. */
export interface ResponsePost extends Partial<Post> {
  readonly response_type?: 'ephemeral' | 'in_channel'
  readonly replace_original?: boolean
  readonly delete_original?: boolean
  readonly thread_ts?: string
}

/** The address that Slack gives with a command or a press, to answer it without being in the channel. */
export interface ResponseUrl {
  readonly url: string
  /** Undefined when posted, else why not: what Slack said, or `used_up`, `expired`, `unreachable`. */
  readonly post: (message: ResponsePost) => Promise<string | undefined>
}

/** Errors that are about the blocks: the words alone may still be taken. */
const ABOUT_BLOCKS = /blocks|attachments/u

/**
 * Posts to a response_url at most 5 times within 30 minutes, as Slack allows (Handling user interaction, "Message
 * responses"). Where blocks are refused the words are posted alone. Never rejects.
 */
export function createResponseUrl(url: string, now: () => Date, wait?: Pause): ResponseUrl {
  const until = now().getTime() + limits.responseMinutes * 60_000
  let left = limits.responseUses
  const send = async (message: ResponsePost): Promise<string | undefined> => {
    if (left <= 0) return 'used_up'
    if (now().getTime() > until) return 'expired'
    left -= 1
    return attempt(url, message, wait)
  }
  return {
    url,
    post: async (message) => {
      const why = await send(message)
      if (why === undefined || !message.blocks || !ABOUT_BLOCKS.test(why)) return why
      const { blocks, ...words } = message
      return send(words)
    },
  }
}

async function attempt(url: string, message: ResponsePost, wait?: Pause): Promise<string | undefined> {
  try {
    const response = await patientFetch(url, JSON.stringify(message), 'application/json', wait)
    const body = await response.text()
    return response.ok ? undefined : (errorIn(body) ?? `http_${response.status}`)
  } catch (error) {
    return slackError(error) === 'TimeoutError' ? 'timeout' : 'unreachable'
  }
}

/** A refusal says why in its body, as JSON or as a bare word; its status is 404 for bad blocks as for a spent address. */
function errorIn(body: string): string | undefined {
  try {
    return (JSON.parse(body) as { error?: string }).error
  } catch {
    return /^[a-z_]{3,60}$/u.exec(body.trim())?.[0]
  }
}
