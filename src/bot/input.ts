import type { UnitSystem } from '../core/measure/reading.ts'
import { type KindSettings, readValue } from './kind.ts'
import { type OptionRow, type OptionSchema, optionTable } from './option.ts'
import { plain, quoted, Refusal } from './refusal.ts'
import { didYouMean, listed } from './suggest.ts'

/** What was given for a command: the words that stand first, and the named options, all as typed. */
export interface RawInput {
  readonly first: string
  readonly options: readonly (readonly [name: string, value: string])[]
}

/** The parsed values of a command, and what was assumed in reading them. */
export interface Input {
  readonly values: Record<string, unknown>
  readonly notes: readonly string[]
  /** The unit system of the thing that the question is about: the option that may stand first. */
  readonly units?: UnitSystem | undefined
  /** That of any other measure, for want of a better. */
  readonly otherUnits?: UnitSystem | undefined
}

/**
 * Reads what was typed against a command's options. Throws a Refusal with one clear sentence for an unknown or repeated
 * option, a value that cannot be read or could be read two ways, and a required one left out.
 */
export function readInput(raw: RawInput, schema: OptionSchema, settings: KindSettings): Input {
  const table = optionTable(schema)
  const terms = { table, settings }
  const given = mending(raw.first, terms, () => matchOptions(raw, table))
  const values: Record<string, unknown> = {}
  const notes: string[] = []
  let units: UnitSystem | undefined
  let otherUnits: UnitSystem | undefined
  for (const [option, text] of given) {
    const reading = () => readOption(option, text, settings)
    const read = option.first ? mending(raw.first, terms, reading) : reading()
    values[option.name] = read.value
    if (read.note) notes.push(read.note)
    if (option.first) units ??= read.units
    else otherUnits ??= read.units
  }
  return { values: validated(schema, values, table), notes, units, otherUnits }
}

function matchOptions(raw: RawInput, table: readonly OptionRow[]): ReadonlyMap<OptionRow, string> {
  const given = new Map<OptionRow, string>()
  if (raw.first) given.set(firstOption(raw.first, table), raw.first)
  for (const [name, text] of raw.options) {
    const option = table.find((row) => row.name === name)
    if (!option) throw new Refusal('unknown', unknownOption(name, table))
    if (given.has(option)) {
      throw new Refusal(
        'invalid',
        `${name} is given twice, as ${quoted(given.get(option) ?? '')} and ${quoted(text)}; keep one`,
      )
    }
    given.set(option, text)
  }
  return given
}

function firstOption(text: string, table: readonly OptionRow[]): OptionRow {
  const option = table.find((row) => row.first)
  if (option) return option
  if (table.length === 0)
    throw new Refusal('unknown', `nothing is read from ${quoted(text)} here; leave it out`)
  throw new Refusal(
    'unknown',
    `nothing is read from ${quoted(text)} here; every option needs its name, such as ${optionExample(table)}`,
  )
}

const unknownOption = (name: string, table: readonly OptionRow[]): string => {
  const names = table.map((row) => row.name)
  if (names.length === 0) return `nothing is read from ${quoted(`${name}=`)} here; leave it out`
  return `there is no option ${quoted(name)} here; there is ${listed(names, 'and')}.${didYouMean(name, names)}`
}

function readOption(option: OptionRow, text: string, settings: KindSettings) {
  if (text === '')
    throw new Refusal('invalid', `${option.name} has nothing after it; write ${written(option)}`)
  const read = readValue(text, settings, option)
  if (read.status === 'ambiguous') throw new Refusal('ambiguous', under(option, read.question))
  if (read.status === 'invalid') throw new Refusal('invalid', under(option, read.problem))
  return read
}

/** A sentence about an option begins with its name. */
const under = ({ name, first }: OptionRow, sentence: string): string =>
  first || sentence.startsWith(`${name}=`) ? sentence : `${name}: ${sentence}`

/** Runs `read`; where what stands first cannot be read and holds an option without its `=`, the refusal says how. */
function mending<Result>(first: string, schema: OptionTerms, read: () => Result): Result {
  try {
    return read()
  } catch (error) {
    if (!(error instanceof Refusal) || error.kind === 'fault') throw error
    const mend = optionWithoutMark(first, schema)
    throw mend === '' ? error : new Refusal(error.kind, `${error.message}; write ${mend}`)
  }
}

interface OptionTerms {
  readonly table: readonly OptionRow[]
  readonly settings: KindSettings
}

/** `rip=1/2in` for `2x6 rip 1/2in`: the first option's name that stands there as a word with a value after it. */
function optionWithoutMark(text: string, { table, settings }: OptionTerms): string {
  const names = table.map(({ name }) => name).join('|')
  if (names === '') return ''
  const words = new RegExp(`(?<=^|[\\s,;])(${names})[\\s:]+(\\S.*?)(?=[\\s,;]+(?:${names})[\\s:]|$)`, 'giu')
  for (const [, word = '', value = ''] of plain(text).matchAll(words)) {
    const option = table.find(({ name }) => name === word.toLowerCase())
    if (option && value.length <= 40 && readValue(value, settings, option).status === 'read')
      return `${option.name}=${value}`
  }
  return ''
}

/** The last word is the schema's: bounds and required options are declared there and nowhere else. */
function validated(schema: OptionSchema, values: Record<string, unknown>, table: readonly OptionRow[]) {
  const missing = table.find((row) => row.required && values[row.name] === undefined)
  if (missing)
    throw new Refusal(
      'invalid',
      `${missing.name} is missing (${missing.description}); write ${written(missing)}`,
    )
  const parsed = schema.safeParse(values)
  if (parsed.success) return parsed.data as Record<string, unknown>
  const issue = parsed.error.issues[0]
  throw new Refusal(
    'invalid',
    `${issue?.path.join('.') || 'the options'}: ${issue?.message ?? 'not accepted'}`,
  )
}

const written = (option: OptionRow): string => {
  const example =
    option.example ??
    option.choices?.[0] ??
    (option.type === 'integer' ? String(option.minimum ?? 1) : 'a value')
  return `${option.name}=${example}`
}

const optionExample = (table: readonly OptionRow[]): string => (table[0] ? written(table[0]) : '')
