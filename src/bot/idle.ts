/** An option that only some requests have use for; `Subject` is what decides which. */
export interface Conditional<Chosen, Subject> {
  readonly option: keyof Chosen & string
  /** What it is for, and what brings that about. */
  readonly what: string
  readonly how: string
  readonly isUsed: (subject: Subject) => boolean
}

/** Options that were chosen and go for nothing, one line each. To turn off what is not there is no slip. */
export const idleLines = <Chosen, Subject>(
  chosen: Chosen,
  subject: Subject,
  conditions: readonly Conditional<Chosen, Subject>[],
): readonly string[] =>
  conditions
    .filter(({ option, isUsed }) => !isOff(chosen[option]) && !isUsed(subject))
    .map(({ option, what, how }) => `${option}= is for ${what}: there is none here (${how})`)

const isOff = (value: unknown): boolean =>
  value === undefined || value === false || value === 'none' || value === 0
