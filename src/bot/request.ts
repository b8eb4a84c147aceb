import type { Reply } from './reply.ts'
import type { RefusalKind } from './refusal.ts'
import type { Show } from './show.ts'

/** Where a request came from; everything that is kept is kept per place. */
export interface Place {
  readonly platform: string
  readonly workspace: string
  readonly channel: string
}

/** A typed line, or a command with its options named, as a platform with forms of its own sends it. */
export type Invocation =
  | { readonly line: string }
  | {
      readonly command: string
      readonly verb?: string
      readonly options: Readonly<Record<string, string | number | boolean>>
    }

/** One question, by one person, in one place. Platforms translate their events to this. */
export interface Request {
  readonly place: Place
  /** The person's id, which never changes. */
  readonly user: string
  /** What the person is called there; the id where nothing is said. */
  readonly name?: string
  readonly invocation: Invocation
  readonly at: Date
  /** The person's language as the platform knows it, such as `en-GB`: which units they most likely think in. */
  readonly locale?: string
  /** Whether the platform lets this person manage the channel; undefined where it knows no such thing. */
  readonly managesChannel?: boolean
}

/** What became of a request: a reply and how to show its numbers, or a sentence that says why there is none. */
export type Response =
  | { readonly ok: true; readonly reply: Reply; readonly show: Show }
  | { readonly ok: false; readonly kind: RefusalKind; readonly error: string }

/** Answers a request; never throws. This is all that a platform knows of the bot. */
export type Answer = (request: Request) => Promise<Response>

/** Whether a platform still hears and answers, and a sentence that says so. */
export interface Health {
  readonly well: boolean
  readonly says: string
}

/** A chat platform: two translations, from its event to a Request and from a Response to its message. */
export interface Platform {
  readonly name: string
  /** What its messages can hold, as data. */
  readonly limits: Readonly<Record<string, number>>
  readonly start: () => Promise<void>
  /** Lets what is under way finish, then closes. */
  readonly stop: () => Promise<void>
  readonly health: () => Health
}
