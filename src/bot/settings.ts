import type { Length } from '../core/measure/length.ts'
import type { UnitSystem } from '../core/measure/reading.ts'
import type { MillimetreStep, Tape } from '../core/measure/show.ts'
import type { Corner } from '../core/panelling/framing.ts'
import type { Region } from '../core/stock/stock.ts'

/** How the side and end panels meet, by trade name. */
export const CORNERS = [
  'captured',
  'cleated',
  'butted',
  'halved',
  'bracketed',
] as const satisfies readonly Corner[]

/** Which panels get a diagonal brace. */
export const BRACES = ['ends', 'sides', 'all', 'none'] as const
export type Braces = (typeof BRACES)[number]

export const LOG_LEVELS = ['silent', 'fatal', 'error', 'warn', 'info', 'debug', 'trace'] as const
export type LogLevel = (typeof LOG_LEVELS)[number]

/** How long and how many cutting searches may run. */
export interface SearchSettings {
  /** Seconds one search may take; the best found by then is the answer. */
  readonly seconds: number
  /** Searches that may wait their turn; the next one is told to try later. */
  readonly queue: number
}

/** What is assumed of a build where nobody has said. */
export interface Usual {
  readonly kerf: Length
  /** Room round the object, per side. */
  readonly clearance: Length
  /** Thickness of a strip, which the rip fence sets. */
  readonly strip: Length
  /** The board that strips are ripped from, by its name on the rack. */
  readonly board: string
  /** The sheet that panels are cut from, as a person says it: `1/2 ply`. */
  readonly sheet: string
  /** Gap at each end of a captured corner stile. */
  readonly fit: Length
}

/** Every setting of config/bot.yaml; a channel may change those that a person would. */
export interface BotSettings {
  readonly region: Region
  /** Undefined until somebody has said: a bare number is then a question. */
  readonly units?: UnitSystem | undefined
  readonly tape: Tape
  /** For joints and fences. */
  readonly jointTape: Tape
  readonly millimetreStep: MillimetreStep
  /** For joints and fences. */
  readonly fineMillimetreStep: MillimetreStep
  /** What is assumed where a question does not say, by region. */
  readonly usual: Readonly<Record<Region, Usual>>
  readonly corner: Corner
  readonly braces: Braces
  readonly grooves: number
  /** The narrowest piece that may be left between the blade and the fence. */
  readonly safeRip: Length
  /** Degrees from square that a mitre saw reaches. */
  readonly mitreMax: number
  /** Seconds before a command is stopped. */
  readonly commandSeconds: number
  /** Characters in the longest line that is read. */
  readonly lineLength: number
  /** Revisions of a channel's document that are kept for undo and history. */
  readonly revisionsKept: number
  /** Folder for the store, from where the bot was started. */
  readonly dataFolder: string
  readonly logLevel: LogLevel
  readonly search: SearchSettings
  /** Where the room in the browser listens. */
  readonly room: { readonly host: string; readonly port: number }
}
