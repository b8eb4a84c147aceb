import type { z } from 'zod'
import type { Caution } from '../core/checks/caution.ts'
import type { Facts } from '../core/checks/cautionFacts.ts'
import type { UnitSystem } from '../core/measure/reading.ts'
import type { Document } from './document.ts'
import type { Print } from './handout/handout.ts'
import type { Organisers } from './organisers.ts'
import type { Preferences, Settled } from './preferences.ts'
import type { Project } from './project.ts'
import type { Reference } from './reference.ts'
import type { Request } from './request.ts'
import type { Search } from './search.ts'
import type { BotSettings } from './settings.ts'
import type { Show } from './show.ts'
import type { Forgotten } from './state.ts'
import type { ShopStock } from './stockKept.ts'
import type { Description } from './usage.ts'

/** All that a command may know and do besides its own input. */
export interface Context {
  readonly request: Request
  /** Every command, for help. */
  readonly commands: readonly Description[]
  readonly settings: BotSettings
  readonly reference: Reference
  /** Units, tape, kerf and region as person, channel and config together settle them. */
  readonly settled: Settled
  /** The unit system that the question was typed in; undefined when it held no measure. */
  readonly typed: UnitSystem | undefined
  readonly show: Show
  /** The channel's project, as it was when the request came in; undefined when none is kept. */
  readonly project: Project | undefined
  /** The channel's stock list, likewise; undefined when none is kept, or none that can be read. */
  readonly stock: ShopStock | undefined
  /** Something kept for the channel, by a kind of its own: `project`, ... */
  readonly ofChannel: <Schema extends z.ZodType>(kind: string, schema: Schema) => Document<z.output<Schema>>
  readonly preferences: {
    readonly person: Document<Preferences>
    readonly channel: Document<Preferences>
  }
  /** Who organises the channel and what is held for them; only they may change it once somebody does. */
  readonly organisers: Document<Organisers>
  readonly isOrganiser: () => Promise<boolean>
  /** What a person is called, by their id: the name they had at their last change, else the id. */
  readonly nameOf: (user: string) => Promise<string>
  /** Deletes what is kept of the person who asks, and takes the name out of what they changed, on this platform. */
  readonly forgetPerson: () => Promise<Forgotten>
  /**
   * The cautions that belong to an answer with these facts. Throws a Refusal of kind `unsafe`, with the caution as its
   * sentence, where no number may be given before it is answered.
   */
  readonly cautions: (facts: Facts) => readonly Caution[]
  /** A document as a PDF, printed away from the thread that answers. */
  readonly print: Print
  /** Cutting layouts, searched away from the thread that answers. */
  readonly search: Search
  /** Aborted when the time for the answer is up. */
  readonly signal: AbortSignal
}
