import { deflateRawSync, inflateRawSync } from 'node:zlib'
import type { KnownBlock } from '@slack/types'
import type { Keeping } from '../../bot/platform.ts'
import { buttonValue, recalledText } from './keptLines.ts'
import type { Post } from './message.ts'

/** What `show to all` shows, and the name under which its drawings and files are kept. */
export interface SharedMessage {
  readonly post: Required<Post>
  readonly attachments: string | undefined
}

/**
 * A message as the value of the button that shows it: Slack sends no private message back with a press, and asking a
 * second time could change a project a second time. Packed, most answers fit the button itself.
 */
export const packMessage = (
  { post, attachments }: SharedMessage,
  keeping: Keeping,
  user: string,
): Promise<string> =>
  buttonValue(
    deflateRawSync(JSON.stringify([post.text, post.blocks, attachments ?? null])).toString('base64'),
    keeping,
    user,
  )

/** The message that `packMessage` packed; undefined when it is kept no more. */
export async function unpackMessage(value: string, keeping: Keeping): Promise<SharedMessage | undefined> {
  const packed = await recalledText(value, keeping)
  if (packed === undefined) return undefined
  const [text, blocks, attachments] = JSON.parse(
    inflateRawSync(Buffer.from(packed, 'base64')).toString('utf8'),
  ) as [string, readonly KnownBlock[], string | null]
  return { post: { text, blocks }, attachments: attachments ?? undefined }
}
