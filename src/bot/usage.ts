import type { OptionRow } from './option.ts'

/** A command as help tells of it: plain data, taken from its definition. */
export interface Description {
  readonly name: string
  readonly summary: string
  readonly examples: readonly string[]
  /** One for a plain command, one for each verb otherwise. */
  readonly uses: readonly Use[]
}

export interface Use {
  readonly verb: string | undefined
  readonly summary: string
  readonly options: readonly OptionRow[]
}

/**
 * How a command is typed: `strips <board> [rip=1/2in] [kerf=1/8in]`. Angle brackets hold what stands first, square
 * brackets what may be left out, bars part what to choose from.
 */
export const usageLine = (name: string, { verb, options }: Use): string =>
  [name, ...(verb ? [verb] : []), ...options.map(usageOf)].join(' ')

/** What to type for one option: its choices, or its example. */
export const typedForm = (option: OptionRow): string =>
  option.choices?.join('|') ??
  option.example ??
  (option.type === 'integer' ? `${option.minimum}-${option.maximum}` : '...')

function usageOf(option: OptionRow): string {
  if (option.first) return option.required ? `<${option.name}>` : `[${option.name}]`
  const named = `${option.name}=${typedForm(option)}`
  return option.required ? named : `[${named}]`
}
