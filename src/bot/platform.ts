import type { Drawable } from '../drawing/drawing.ts'
import type { Logger } from './log.ts'
import type { Answer, Request } from './request.ts'
import type { Description } from './usage.ts'

/** Draws and paints a picture as a PNG, away from the thread that answers. */
export type Paint = (picture: Drawable) => Promise<Uint8Array>

/** What somebody is typing into one option of a command: up to 25 values that may be meant, best first. */
export type Complete = (
  asked: Omit<Request, 'invocation'>,
  typing: {
    readonly command: string
    readonly verb?: string
    readonly option: string
    readonly typed: string
  },
) => Promise<readonly string[]>

/** What a platform remembers by a name, and how often it was written; revision 0 and no text where it never was. */
export interface Remembered {
  readonly revision: number
  readonly text: string | undefined
}

/** Names what is remembered of a tap. It is forgotten when the button it was on may be: after 90 days. */
export type TapName = `tap ${string}`

/** What a platform keeps for itself between two starts. */
export interface Keeping {
  /** True the first time an event is seen within a day; chat services deliver some twice. */
  readonly once: (event: string) => Promise<boolean>
  /**
   * Keeps a line too long for a button, for at least 90 days or until `user` is forgotten, and gives the short name it is
   * recalled by. The same line of the same person has the same name; one that is nobody's, such as of a notice, has `''`.
   */
  readonly keepLine: (line: string, user: string) => Promise<string>
  /** Undefined when no such line is kept. */
  readonly recallLine: (name: string) => Promise<string | undefined>
  readonly recall: (name: string) => Promise<Remembered>
  /** Writes what is remembered by a name if it still is at `revision`; false where somebody else was faster. */
  readonly remember: (name: string, text: string, revision: number) => Promise<boolean>
}

/** What every chat platform is given; nothing else of the bot is known to it. */
export interface PlatformParts {
  readonly answer: Answer
  readonly commands: readonly Description[]
  readonly complete: Complete
  readonly paint: Paint
  readonly keeping: Keeping
  readonly log: Logger
  readonly now: () => Date
}
