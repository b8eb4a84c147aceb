import { z } from 'zod'

const table = z.object({
  title: z.string().optional(),
  columns: z.array(z.string()),
  /** Which columns hold numbers, and are set to the right. */
  numeric: z.array(z.boolean()),
  rows: z.array(z.array(z.string())),
})

const picture = z.object({
  name: z.string(),
  alt: z.string(),
  width: z.number(),
  height: z.number(),
  /** The name its content is kept by; left out where it could not be painted, and only the words are shown. */
  content: z.string().optional(),
})

const file = z.object({
  name: z.string(),
  type: z.string(),
  bytes: z.number(),
  content: z.string(),
})

/** A response as the page shows it: text in the units of the person who asked, and names of what is kept beside it. */
export const cardSchema = z.discriminatedUnion('ok', [
  z.object({
    ok: z.literal(true),
    answer: z.string(),
    cautions: z.array(z.string()),
    tables: z.array(table),
    pictures: z.array(picture),
    notes: z.array(z.string()),
    files: z.array(file),
    buttons: z.array(z.object({ label: z.string(), line: z.string() })),
  }),
  z.object({ ok: z.literal(false), kind: z.string(), error: z.string() }),
])
export type Card = z.output<typeof cardSchema>
export type CardTable = z.output<typeof table>
export type CardPicture = z.output<typeof picture>
export type CardFile = z.output<typeof file>
