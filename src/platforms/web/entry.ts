import { z } from 'zod'
import { type Card, cardSchema } from './card.ts'
import type { Visitor } from './visitor.ts'

/** One line that was asked in a channel, with its answer, as it is kept. */
export const entrySchema = z.object({
  id: z.string(),
  at: z.iso.datetime(),
  /** The name and the browser that it belongs to (visitor.ts). */
  owner: z.string(),
  name: z.string(),
  line: z.string(),
  card: cardSchema,
  /** When everybody in the channel came to see it; until then only its owner does. */
  shared: z.iso.datetime().optional(),
})
export type Entry = z.output<typeof entrySchema>

/** An entry as one person's page is told of it. */
export interface EntryView {
  readonly id: string
  /** When it was asked, or for everybody else when it was shared. */
  readonly at: string
  readonly name: string
  readonly line: string
  readonly card: Card
  readonly isMine: boolean
  readonly isShared: boolean
}

/** An entry kept in the transcript; undefined for anything else. */
export const readEntry = (kept: unknown): Entry | undefined => entrySchema.safeParse(kept).data

/** Whether this person may see the entry: it is their own, or it was shared. */
export const sees = ({ owner }: Visitor, entry: Entry): boolean =>
  entry.owner === owner || entry.shared !== undefined

/** The entry without what only the room may know. */
export function viewFor({ owner }: Visitor, entry: Entry): EntryView {
  const isMine = entry.owner === owner
  const { id, name, line, card, shared } = entry
  return {
    id,
    at: isMine ? entry.at : (shared ?? entry.at),
    name,
    line,
    card,
    isMine,
    isShared: shared !== undefined,
  }
}
