import { DiscordAPIError, DiscordjsError, DiscordjsErrorCodes, HTTPError } from 'discord.js'

/**
 * What is behind a failed call: the time to answer is over, somebody answered already, something may not be done there, the
 * message was refused, or nobody could be reached.
 */
export type Trouble = 'gone' | 'taken' | 'forbidden' | 'refused' | 'unreachable'

/** Discord's numbers for errors, from its developer documentation (Opcodes and Status Codes, JSON). */
const CODES: Readonly<Record<number, Trouble>> = {
  10003: 'gone', // unknown channel
  10008: 'gone', // unknown message
  10015: 'gone', // unknown webhook
  10062: 'gone', // unknown interaction
  50027: 'gone', // invalid webhook token
  40060: 'taken', // interaction has already been acknowledged
  50001: 'forbidden', // missing access
  50007: 'forbidden', // cannot send messages to this user
  50013: 'forbidden', // missing permissions
  160002: 'forbidden', // cannot reply without permission to read message history
  40005: 'refused', // request entity too large
  50006: 'refused', // cannot send an empty message
  50035: 'refused', // invalid form body
}

export function troubleOf(error: unknown): Trouble {
  if (error instanceof DiscordjsError)
    return error.code === DiscordjsErrorCodes.InteractionAlreadyReplied ? 'taken' : 'unreachable'
  if (!(error instanceof DiscordAPIError)) return 'unreachable'
  const known = CODES[Number(error.code)]
  if (known !== undefined) return known
  if (error.status === 404) return 'gone'
  return error.status === 403 ? 'forbidden' : error.status < 500 ? 'refused' : 'unreachable'
}

/** What may be logged of an error: never its address or its body, which hold tokens and what people wrote. */
export function loggable(error: unknown): Readonly<Record<string, unknown>> {
  if (error instanceof DiscordAPIError || error instanceof HTTPError)
    return {
      error: error.name,
      method: error.method,
      status: error.status,
      ...(error instanceof DiscordAPIError && { code: error.code }),
      says: withoutAddresses(error.message),
    }
  if (error instanceof Error) return { error: error.name, says: withoutAddresses(error.message) }
  return { error: 'unknown' }
}

const withoutAddresses = (text: string): string =>
  text
    .replace(/(?:https?|wss?):\/\/\S+/gu, '(address)')
    .replace(/\/(?:interactions|webhooks)\/\S+/gu, '(address)')

/** The reason of a failed call in a few words, for a sentence. */
export function saysWhy(error: unknown): string {
  if (error instanceof DiscordAPIError && error.status === 401) return TOKEN_REFUSED
  if (error instanceof DiscordjsError && error.code === DiscordjsErrorCodes.TokenInvalid) return TOKEN_REFUSED
  if (error instanceof DiscordAPIError) return `${withoutAddresses(error.message)} (${error.code})`
  return error instanceof Error ? withoutAddresses(error.message) : 'it did not say why'
}

export const TOKEN_REFUSED = 'the token is not valid; copy the bot token from the developer portal once more'

/** Why a closed connection is not opened again, by the number it was closed with (Gateway close event codes). */
const CLOSED: Readonly<Record<number, string>> = {
  4004: TOKEN_REFUSED,
  4010: 'it knows no such shard; check which shards this process is told to run',
  4011: 'the bot is in too many servers for so few shards; let it run more',
  4012: 'it does not speak this version any more; a newer release is needed',
  4013: 'it knows no such intents; a newer release is needed',
  4014: 'it does not allow the intents that were asked for; this bot needs none that have to be allowed, so check the token is its own',
}

/** A sentence for a connection that was closed for good. */
export const closedWhy = (code: number): string =>
  `Discord closed the connection for good (${code}): ${CLOSED[code] ?? 'it did not say why'}`
