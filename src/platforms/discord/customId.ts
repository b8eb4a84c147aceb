import type { Keeping } from '../../bot/platform.ts'
import { limits } from './limits.ts'

/** What a button or a form does: says a line, asks for what the line still lacks, lets it be changed, or shows an answer to all. */
export type Deed = 'say' | 'ask' | 'edit' | 'share'

/** What stands behind a button, read back from its id: with a line, or the name that the line is kept under. */
export type Press =
  | { readonly deed: Deed; readonly line: string }
  | { readonly deed: Deed; readonly kept: string }

/** Buttons outlive the program that made them; an id of another version is not read. */
const VERSION = '1'

const DEEDS: readonly string[] = ['say', 'ask', 'edit', 'share'] satisfies Deed[]

/**
 * The id of a button, which says all that is needed after a restart: `1:say:strips 2x6`, or `1:say#name` where that is too
 * long; `user` is whose line it is.
 */
export async function customId(deed: Deed, line: string, keeping: Keeping, user: string): Promise<string> {
  const id = shortId(deed, line)
  return id.length <= limits.customId ? id : `${VERSION}:${deed}#${await keeping.keepLine(line, user)}`
}

/** The id with the line in it, however long. */
export const shortId = (deed: Deed, line: string): string => `${VERSION}:${deed}:${line}`

/** What the id of a button or form says; undefined for one that this version does not know. */
export function readCustomId(id: string): Press | undefined {
  const [, version, deed = '', mark, rest = ''] = /^(\d+):([a-z]+)([:#])(.*)$/su.exec(id) ?? []
  if (version !== VERSION || !DEEDS.includes(deed)) return undefined
  return mark === ':' ? { deed: deed as Deed, line: rest } : { deed: deed as Deed, kept: rest }
}

/** The line behind a press; undefined where it is kept no more. */
export const lineOf = async (press: Press, keeping: Keeping): Promise<string | undefined> =>
  'line' in press ? press.line : keeping.recallLine(press.kept)
