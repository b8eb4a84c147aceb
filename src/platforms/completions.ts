import type { OptionRow } from '../bot/option.ts'
import type { Description, Use } from '../bot/usage.ts'

/** What may stand next in a line that is being typed: everything from `from` on gives way to `text`. */
export interface Completion {
  readonly from: number
  readonly text: string
  /** What it is, in one line; empty where the text says it all. */
  readonly says: string
}

/** The value that is being typed, and the option that it is for. */
export interface TypedValue {
  readonly command: string
  readonly verb: string | undefined
  readonly option: OptionRow
  readonly typed: string
  /** Where in the line the value begins. */
  readonly from: number
}

/** What may be typed next after `line`: commands, then verbs, then choices and the options not yet named. */
export function completionsOf(line: string, commands: readonly Description[]): readonly Completion[] {
  const typing = read(line, commands)
  if (typing.place === 'command')
    return startingWith(
      line,
      typing.from,
      commands.map(({ name, summary }) => [name, summary]),
    )
  if (typing.place === 'verb')
    return startingWith(
      line,
      typing.from,
      typing.uses.map(({ verb = '', summary }) => [verb, summary]),
    )
  if (typing.place === 'nowhere') return []
  const { value, isNamed, unused, word } = typing
  const choices = (value?.option.choices ?? []).map((choice): Offer => [choice, ''])
  const names = isNamed ? [] : unused.map(({ name, description }): Offer => [`${name}=`, description])
  return [...startingWith(line, value?.from ?? word, choices), ...startingWith(line, word, names)]
}

/** The value that `line` ends in; nothing where a command, a verb or something unknown is being typed. */
export function typedValue(line: string, commands: readonly Description[]): TypedValue | undefined {
  const typing = read(line, commands)
  return typing.place === 'options' ? typing.value : undefined
}

/** The same for a terminal, where only the last word is completed. */
export function wordCompletions(line: string, commands: readonly Description[]): readonly string[] {
  const word = lastWord(line)
  return completionsOf(line, commands)
    .filter(({ from }) => from >= word)
    .map(({ from, text }) => line.slice(word, from) + text)
}

type Offer = readonly [text: string, says: string]

type Typing =
  | { readonly place: 'command'; readonly from: number }
  | { readonly place: 'verb'; readonly from: number; readonly uses: readonly Use[] }
  | { readonly place: 'nowhere' }
  | {
      readonly place: 'options'
      readonly value: TypedValue | undefined
      /** The last word is the beginning of an option's value. */
      readonly isNamed: boolean
      readonly unused: readonly OptionRow[]
      /** Where the last word begins. */
      readonly word: number
    }

function read(line: string, commands: readonly Description[]): Typing {
  const [lead = '', name = '', space = ''] = /^\s*\/?\s*(\S*)(\s*)/u.exec(line) ?? []
  const start = lead.length - space.length - name.length
  if (space === '') return { place: 'command', from: start }
  const command = commands.find((each) => each.name === name.toLowerCase())
  if (!command) return { place: 'nowhere' }
  const verbs = command.uses.filter(({ verb }) => verb !== undefined)
  const rest = line.slice(lead.length)
  if (verbs.length > 0 && !/\s/u.test(rest)) return { place: 'verb', from: lead.length, uses: verbs }
  const [word = ''] = verbs.length > 0 ? (/^\S*/u.exec(rest) ?? []) : []
  const use = command.uses.find(({ verb }) => (verb ?? '') === word.toLowerCase())
  return use ? readOptions(line, lead.length + word.length, command.name, use) : { place: 'nowhere' }
}

/** The same mark of an option as in a whole line (bot/line.ts). */
const OPTION = /(?<=^|[\s,;])([A-Za-z_][A-Za-z_-]*)\s*[=＝]\s*/gu

function readOptions(line: string, start: number, command: string, { verb, options }: Use): Typing {
  const body = line.slice(start)
  const marks = [...body.matchAll(OPTION)]
  const named = marks.map((mark) => (mark[1] ?? '').toLowerCase())
  const last = marks.at(-1)
  const lead = /^\s*/u.exec(body)?.[0].length ?? 0
  const from = start + (last ? last.index + last[0].length : lead)
  const word = lastWord(line)
  const option = options.find((each) => (last ? each.name === named.at(-1) : each.first))
  const isFirstGiven = body.slice(0, marks[0]?.index ?? word - start).trim() !== ''
  return {
    place: 'options',
    value: option && { command, verb, option, typed: line.slice(from), from },
    isNamed: last !== undefined && from >= word,
    unused: options.filter((each) => !named.includes(each.name) && !(each.first && isFirstGiven)),
    word,
  }
}

const lastWord = (line: string): number => line.length - (/\S*$/u.exec(line)?.[0].length ?? 0)

function startingWith(line: string, from: number, offers: readonly Offer[]): readonly Completion[] {
  const start = line.slice(from)
  return offers.filter(([text]) => text.startsWith(start)).map(([text, says]) => ({ from, text, says }))
}
