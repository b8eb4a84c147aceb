import type { PlatformParts } from '../../bot/platform.ts'
import type { Invocation, Response } from '../../bot/request.ts'
import type { Notices } from '../notices.ts'
import { shortLines } from './keptLines.ts'
import type { Pause } from './patientFetch.ts'
import type { People, Whereabouts } from './people.ts'
import type { Recent } from './recent.ts'

/** What every listener works with. */
export interface Desk {
  readonly parts: PlatformParts
  /** The slash command, such as `/batten`. */
  readonly command: string
  readonly people: People
  readonly recent: Recent
  readonly notices: Notices
  readonly pause: Pause
  /** To be told where Slack seems to take the token no more. */
  readonly doubt: () => void
}

/** Asks the bot for somebody, in the place where they are: a thread is a part of its channel. */
export async function ask(desk: Desk, where: Whereabouts, invocation: Invocation): Promise<Response> {
  const { parts, people } = desk
  const person = await people.know(where)
  const response = await parts.answer({
    ...person,
    place: { platform: 'slack', workspace: where.team, channel: where.channel },
    user: where.user,
    invocation,
    at: parts.now(),
  })
  return shortLines(response, parts, where.user)
}

/**
 * True the first time that Slack delivers something. When the store cannot say, it is taken for the first: an answer
 * twice is better than none.
 */
export async function isFirst({ parts }: Desk, event: string): Promise<boolean> {
  try {
    return await parts.keeping.once(`slack ${event}`)
  } catch (error) {
    parts.log.error({ err: error }, 'the store cannot say whether an event from Slack was seen before')
    return true
  }
}
