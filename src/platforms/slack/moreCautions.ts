import type { KnownBlock } from '@slack/types'
import type { Response } from '../../bot/request.ts'
import { mostOf } from '../oneMessage.ts'
import type { Desk } from './desk.ts'
import { escapeText } from './escape.ts'
import { ifKept, keptValue } from './keptLines.ts'
import { button, type Post, type SlackMessage, section } from './message.ts'
import { cautionBlocks, fits, render, withinText } from './render.ts'

/** A message that Slack takes, and the cautions that it had no room for. */
export interface Shortened {
  readonly message: SlackMessage
  readonly rest: readonly string[]
}

/**
 * A response as one message. Where its answer and cautions alone are too much for one, the last cautions are left for a
 * button: they stand in order of gravity, so the gravest stay.
 */
export function shortened(response: Response): Shortened {
  const message = render(response)
  if (!response.ok || fits(message)) return { message, rest: [] }
  const all = response.reply.cautions ?? []
  const withFirst = (count: number) =>
    render({ ...response, reply: { ...response.reply, cautions: all.slice(0, count) } })
  const count = mostOf(all.length, (each) => fits(withFirst(each)))
  return { message: withFirst(count), rest: all.slice(count).map(({ text }) => text) }
}

/** The button that says the cautions there was no room for; nothing where there was. */
export async function moreBlocks(
  rest: readonly string[],
  { parts }: Desk,
  user: string,
): Promise<readonly KnownBlock[]> {
  if (rest.length === 0) return []
  const value = await ifKept(() => keptValue(JSON.stringify(rest), parts.keeping, user), parts.log)
  return value === undefined
    ? [section(`${counted(rest.length)}, which cannot be shown just now: ask again in a minute.`)]
    : [{ type: 'actions', elements: [button('more', counted(rest.length), value)] }]
}

/** What that button says: as many of the cautions as one message holds, and a button for the others. */
export async function cautionsPost(kept: string, desk: Desk, user: string): Promise<Post> {
  const all = JSON.parse(kept) as readonly string[]
  const first = (count: number) => [section(counted(all.length)), ...cautionBlocks(all.slice(0, count))]
  const count = mostOf(all.length, (each) => fits({ blocks: first(each) }))
  const text = withinText([counted(all.length), ...cautionLines(all.slice(0, count))])
  return { text, blocks: [...first(count), ...(await moreBlocks(all.slice(count), desk, user))] }
}

const cautionLines = (cautions: readonly string[]): readonly string[] =>
  cautions.map((each) => escapeText(`! ${each}`))

const counted = (count: number): string => `${count} more ${count === 1 ? 'caution' : 'cautions'}`
