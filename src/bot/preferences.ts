import { z } from 'zod'
import { type Length, nanometres } from '../core/measure/length.ts'
import type { UnitSystem } from '../core/measure/reading.ts'
import { TAPES, type Tape } from '../core/measure/show.ts'
import { REGIONS, type Region } from '../core/stock/stock.ts'
import type { BotSettings } from './settings.ts'

/** What a person, or a channel, has settled on. Everything may be left open. */
export const preferencesSchema = z.strictObject({
  units: z.enum(['inch', 'metric']).optional(),
  /** Divisions of the inch that are shown: 16, 32 or 64. */
  tape: z.literal(TAPES).optional(),
  kerf: z.int().positive().transform(nanometres).optional(),
  region: z.enum(REGIONS).optional(),
  /** What a person is called where they last changed something; a channel has none. */
  name: z.string().max(100).optional(),
})
export type Preferences = z.output<typeof preferencesSchema>

/** What holds for one request once person, channel and config are laid over each other. */
export interface Settled {
  readonly units: UnitSystem | undefined
  readonly tape: Tape
  readonly kerf: Length
  readonly region: Region
}

/** The person's word goes before the channel's, and the channel's before the config's. */
export const settle = (
  person: Preferences,
  channel: Preferences,
  settings: Pick<BotSettings, 'units' | 'tape' | 'region' | 'usual'>,
): Settled => {
  const region = person.region ?? channel.region ?? settings.region
  return {
    units: person.units ?? channel.units ?? settings.units,
    tape: person.tape ?? channel.tape ?? settings.tape,
    kerf: person.kerf ?? channel.kerf ?? settings.usual[region].kerf,
    region,
  }
}

/** The units an answer is shown in: what was settled, else those of the question, else those of the region. */
export const shownIn = (settled: Settled, typed: UnitSystem | undefined): UnitSystem =>
  settled.units ?? typed ?? (settled.region === 'US' ? 'inch' : 'metric')

/** The units most people think in where `locale` is spoken; undefined where no land is named. */
export function unitsOf(locale: string | undefined): UnitSystem | undefined {
  const land = /^[a-z]{2,3}[-_](?:[A-Z][a-z]{3}[-_])?([A-Z]{2})\b/u.exec(locale ?? '')?.[1]
  if (land === undefined) return undefined
  return land === 'US' ? 'inch' : 'metric'
}
