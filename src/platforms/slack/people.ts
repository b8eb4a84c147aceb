import type { WebClient } from '@slack/web-api'
import { slackError } from './slackError.ts'

/** Somebody in a channel of a workspace, and the client that may ask Slack about them. */
export interface Whereabouts {
  readonly client: WebClient
  readonly team: string
  readonly channel: string
  readonly user: string
  /** As the event has it. */
  readonly name?: string | undefined
}

/** What Slack tells of a person; nothing where it was not allowed to. */
export interface Person {
  readonly locale?: string
  readonly name?: string
  /** Undefined where neither scope was granted: then Slack knows of no roles here. */
  readonly managesChannel?: boolean
}

export interface People {
  /** Never rejects, and never holds an answer up for long. */
  readonly know: (where: Whereabouts) => Promise<Person>
}

interface Member {
  readonly locale?: string | undefined
  readonly name?: string | undefined
  readonly leads: boolean
}

/** In place of what Slack does not say for want of a scope. */
const UNSCOPED = 'unscoped'

const STRANGER: Member = { leads: false }

const HOUR = 3_600_000

/** How long an answer waits for Slack to say who asks. */
const PATIENCE = 1500

/**
 * Asks `users.info` and `conversations.info` once an hour. Both need scopes that are optional (users:read, channels:read,
 * groups:read). Who Slack does not say manages a channel is taken not to: it may only be slow to say so.
 */
export function createPeople(now: () => Date, patience = PATIENCE): People {
  const members = createRecall<Member>(now)
  const creators = createRecall<string | undefined>(now)
  const member = ({ client, team, user }: Whereabouts) =>
    members(team, user, async () => {
      const { user: found } = await client.users.info({ user, include_locale: true })
      const name = found?.profile?.display_name || found?.real_name
      return { locale: found?.locale, name, leads: !!(found?.is_admin || found?.is_owner) }
    })
  const creator = ({ client, team, channel }: Whereabouts) =>
    creators(team, channel, async () => (await client.conversations.info({ channel })).channel?.creator)
  return {
    know: async (where) => {
      const [person, created] = await Promise.all([
        soon(member(where), patience),
        isDirect(where.channel) ? undefined : soon(creator(where), patience),
      ])
      const { locale, name = where.name, leads }: Member = person === UNSCOPED || !person ? STRANGER : person
      const manages = isDirect(where.channel) || leads || created === where.user
      const isKnown = manages || person !== UNSCOPED || created !== UNSCOPED
      return { ...(locale && { locale }), ...(name && { name }), ...(isKnown && { managesChannel: manages }) }
    },
  }
}

/** A conversation of two is their own. */
const isDirect = (channel: string): boolean => channel.startsWith('D')

/** The answer, or undefined when it fails or takes longer than so many milliseconds. */
async function soon<Value>(asked: Promise<Value>, patience: number): Promise<Value | undefined> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<undefined>((resolve) => {
    timer = setTimeout(() => resolve(undefined), patience)
  })
  try {
    return await Promise.race([asked.catch(() => undefined), late])
  } finally {
    clearTimeout(timer)
  }
}

/** The most that is remembered of each. */
const MOST = 10_000

/**
 * Remembers what was learnt of each in a team, or that Slack refused to say, for an hour; asks once for many at a time.
 * Where a scope is missing nothing of that team is asked. What failed for any other reason is asked again.
 */
function createRecall<Value>(now: () => Date) {
  const known = new Map<
    string,
    { readonly value: Promise<Value | typeof UNSCOPED>; readonly until: number }
  >()
  const unscoped = new Map<string, number>()
  const inAnHour = () => now().getTime() + HOUR
  return async (team: string, one: string, learn: () => Promise<Value>): Promise<Value | typeof UNSCOPED> => {
    if ((unscoped.get(team) ?? 0) > now().getTime()) return UNSCOPED
    const key = `${team} ${one}`
    const found = known.get(key)
    if (found && found.until > now().getTime()) return found.value
    const value = learn().catch((error): typeof UNSCOPED => {
      if (slackError(error) !== 'missing_scope') throw error
      unscoped.set(team, inAnHour())
      return UNSCOPED
    })
    known.delete(key)
    known.set(key, { value, until: inAnHour() })
    for (const [oldest] of known) if (known.size > MOST) known.delete(oldest)
    value.catch((error) => {
      if (!REFUSED.test(slackError(error))) known.delete(key)
    })
    return value
  }
}

const REFUSED = /^(?:user_not_found|user_not_visible|channel_not_found|not_in_channel|.*restricted.*)$/u
