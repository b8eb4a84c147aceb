import { z } from 'zod'
import type { Document } from './document.ts'
import { quoted, Refusal } from './refusal.ts'
import type { Request } from './request.ts'

/** What of a channel may be held back for its organisers, by what a person calls it, with the kinds of document behind it. */
export const HELD = {
  project: ['project', 'steps'],
  cutlist: ['cutlist'],
  stock: ['stock'],
  shopping: ['shopping'],
  units: ['channel'],
} as const satisfies Readonly<Record<string, readonly string[]>>

export const HELD_NAMES = Object.keys(HELD) as readonly (keyof typeof HELD)[]

/** Who organises a channel, and what only they may change there. */
export const organisersSchema = z.strictObject({
  people: z.array(z.string()),
  held: z.array(z.enum(HELD_NAMES)),
})
export type Organisers = z.output<typeof organisersSchema>

export const NO_ORGANISERS: Organisers = { people: [], held: [] }

/** Whoever the platform lets manage the channel organises it, and whoever is listed. */
export const organises = (
  { user, managesChannel }: Pick<Request, 'user' | 'managesChannel'>,
  { people }: Organisers,
): boolean => managesChannel === true || people.includes(user)

/** The document, with every change of it refused where it is held for organisers and the person is none. */
export function heldBack<Body>(
  document: Document<Body>,
  kind: string,
  request: Request,
  read: () => Promise<Organisers>,
): Document<Body> {
  const name = HELD_NAMES.find((held) => (HELD[held] as readonly string[]).includes(kind))
  if (name === undefined) return document
  const allow = async () => {
    const organisers = await read()
    if (!organisers.held.includes(name) || organises(request, organisers)) return
    throw new Refusal(
      'invalid',
      `only the organisers of this channel change its ${name}; ask one of them, "organisers" lists them`,
    )
  }
  return {
    ...document,
    change: (edit) => allow().then(() => document.change(edit)),
    undo: () => allow().then(() => document.undo()),
    redo: () => allow().then(() => document.redo()),
    forget: () => allow().then(() => document.forget()),
  }
}

/** The id in what was typed for a person: `<@U12>` as chat services send it, `@ann` or `ann`. */
export function personOf(typed: string): string {
  const [, mentioned, named] = /^(?:<@!?([\w-]+)(?:\|[^>]*)?>|@?(\S{1,80}))$/u.exec(typed.trim()) ?? []
  const id = mentioned ?? named
  if (id === undefined)
    throw new Refusal('invalid', `cannot read ${quoted(typed)} as one person; write @ and a name`)
  return id
}
