import type { DiscordOptions } from './client.ts'
import type { RegisterOptions } from './register.ts'

type Environment = Readonly<Record<string, string | undefined>>

/**
 * What the environment says of Discord; undefined when it holds no token. Throws an Error that names the variable that is
 * wrong; no secret is in its message.
 */
export function readDiscordOptions(environment: Environment): (DiscordOptions & RegisterOptions) | undefined {
  const token = environment.BATTENBOT_DISCORD_TOKEN?.trim()
  const server = environment.BATTENBOT_DISCORD_SERVER?.trim()
  const shards = environment.BATTENBOT_DISCORD_SHARDS?.trim()
  if (!token) {
    if (server || shards) throw new Error('BATTENBOT_DISCORD_TOKEN is not set')
    return undefined
  }
  return {
    token,
    ...(server && { server: readServer(server) }),
    ...(shards && { shards: readShards(shards) }),
  }
}

/** Discord's ids are numbers of 17 to 20 digits (developer documentation, Reference, Snowflakes). */
function readServer(text: string): string {
  if (!/^\d{17,20}$/u.test(text))
    throw new Error(
      `BATTENBOT_DISCORD_SERVER is "${text}"; write the id of a server, 17 to 20 digits ("Copy Server ID" in Discord's developer mode)`,
    )
  return text
}

/** `0,1 of 4`: which connections this process opens, of how many there are over all processes. */
function readShards(text: string): NonNullable<DiscordOptions['shards']> {
  const [, list = '', total = ''] = /^(\d+(?:\s*,\s*\d+)*)\s+of\s+(\d+)$/iu.exec(text) ?? []
  const ids = [...new Set(list.split(',').map(Number))]
  const count = Number(total)
  if (list === '' || ids.some((id) => id >= count))
    throw new Error(
      `BATTENBOT_DISCORD_SHARDS is "${text}"; write the numbers of the connections, from 0, and how many there are in all, such as 0,1 of 4`,
    )
  return { ids, count }
}
