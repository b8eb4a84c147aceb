/** A rule for how long a noise may be borne: so many dBA for 8 hours, and half the time for every `exchange` dB more. */
export interface NoiseRule {
  /** dBA */
  readonly level: number
  /** dB */
  readonly exchange: number
}

/** The limits of OSHA (29 CFR 1910.95, US law), NIOSH (recommended, US) and Canada's federal workplaces. */
export const NOISE_RULES = {
  OSHA: { level: 90, exchange: 5 },
  NIOSH: { level: 85, exchange: 3 },
  Canada: { level: 87, exchange: 3 },
} as const satisfies Readonly<Record<string, NoiseRule>>

/** Hours a day that a steady level in dBA may last under a rule: 8 / 2^((L - Lref) / exchange). Past 24 it is no limit. */
export const noiseLimit = (level: number, rule: NoiseRule): number =>
  8 / 2 ** ((level - rule.level) / rule.exchange)
