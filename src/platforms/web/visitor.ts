import { createHash } from 'node:crypto'
import { plain } from '../../bot/refusal.ts'
import { limits } from './limits.ts'

/** Somebody at a page: a name, in a channel, in one browser. There are no accounts: anybody may take any name. */
export interface Visitor {
  readonly channel: string
  readonly name: string
  /** Stands for the name in this browser, and gives neither away; what it asked is its own until it is shared. */
  readonly owner: string
  readonly locale: string | undefined
}

/** A channel as it is kept: lower case, letters, digits and hyphens of any script; undefined for what is no name. */
export function channelOf(typed: string): string | undefined {
  const channel = plain(typed.normalize('NFC')).toLowerCase().replace(/^#/u, '').replace(/\s+/gu, '-')
  const isName = /^[\p{L}\p{N}][\p{L}\p{M}\p{N}_-]*$/u.test(channel)
  return isName && [...channel].length <= limits.channelLength ? channel : undefined
}

/** A person's name as it is kept, a single word so that `@name` is one; undefined where nothing is left of it. */
export function nameOf(typed: string): string | undefined {
  const name = plain(typed.normalize('NFC')).replace(/^@/u, '').replace(/\s+/gu, '-')
  return name !== '' && [...name].length <= limits.nameLength ? name : undefined
}

/** The visitor that a page says it is; undefined where the name or the channel is none. */
export function visitorOf(
  said: { readonly name?: string; readonly channel?: string },
  browser: string,
  languages: string | undefined,
): Visitor | undefined {
  const [name, channel] = [nameOf(said.name ?? ''), channelOf(said.channel ?? '')]
  if (name === undefined || channel === undefined) return undefined
  const owner = createHash('sha256').update(`${browser}\n${name}`).digest('base64url')
  return { channel, name, owner, locale: /^[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8})*/u.exec(languages ?? '')?.[0] }
}
