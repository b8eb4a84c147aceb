import { z } from 'zod'
import { cardSchema } from './card.ts'

/** What stands for everybody in a channel, in the place of what stood there under the same name, as it is kept. */
export const postedSchema = z.object({
  id: z.string(),
  notice: z.string(),
  at: z.iso.datetime(),
  card: cardSchema,
})
export type Posted = z.output<typeof postedSchema>

/** A notice kept in the transcript; undefined for anything else. */
export const readPosted = (kept: unknown): Posted | undefined => postedSchema.safeParse(kept).data

/** The id under which a notice of this name is kept, so that the next one takes its place. */
export const idOfNotice = (name: string): string => `notice ${name}`
