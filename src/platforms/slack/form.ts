import type { InputBlock, ModalView } from '@slack/types'
import { optionSaying, readLine } from '../../bot/line.ts'
import type { OptionRow } from '../../bot/option.ts'
import type { Invocation } from '../../bot/request.ts'
import { type Description, typedForm, type Use } from '../../bot/usage.ts'
import { limits } from './limits.ts'
import { clipped } from './message.ts'

/** A command as a form: what it takes, and what was typed already. */
export interface Form {
  readonly command: string
  readonly use: Use
  readonly typed: Readonly<Record<string, string>>
}

/** Where the answer to a form goes; kept in the form itself. */
export interface FormTicket {
  readonly command: string
  readonly verb?: string | undefined
  readonly channel: string
  readonly thread?: string | undefined
  /** Where the press that opened it may be answered; a form on the home page has none. */
  readonly responseUrl?: string | undefined
}

/** The form of a typed line; undefined where no command takes anything by that name. */
export function formOf(line: string, commands: readonly Description[]): Form | undefined {
  const read = readLine(line)
  const description = commands.find(({ name }) => name === read.command)
  const [, word = '', rest = ''] = /^(\S*)\s*(.*)$/su.exec(read.first) ?? []
  const named = description?.uses.find(({ verb }) => verb === word.toLowerCase())
  const use = named ?? description?.uses[0]
  if (!description || !use || use.options.length === 0) return undefined
  const first = use.options.find((option) => option.first)
  const words = named ? rest : read.first
  const typed = Object.fromEntries([
    ...(first && words ? [[first.name, words] as const] : []),
    ...read.options,
  ])
  return { command: description.name, use, typed }
}

/** The form as a modal; pressing its button sends `view_submission`. */
export const formView = ({ command, use, typed }: Form, ticket: FormTicket): ModalView => ({
  type: 'modal',
  callback_id: 'form',
  title: { type: 'plain_text', text: clipped([command, use.verb ?? ''].join(' ').trim(), limits.viewTitle) },
  submit: { type: 'plain_text', text: 'Answer' },
  close: { type: 'plain_text', text: 'Cancel' },
  private_metadata: JSON.stringify(ticket),
  blocks: use.options.map((option) => input(option, typed[option.name])),
})

const input = (option: OptionRow, typed: string | undefined): InputBlock => ({
  type: 'input',
  block_id: option.name,
  optional: !option.required,
  label: { type: 'plain_text', text: option.name, emoji: false },
  hint: { type: 'plain_text', text: clipped(option.description, limits.label), emoji: false },
  element: choicesOf(option) ? choice(choicesOf(option) ?? [], typed) : words(option, typed),
})

/** What to choose from; undefined where Slack takes no list of it, and it is typed. */
function choicesOf({ choices, type }: OptionRow): readonly string[] | undefined {
  if (!choices) return type === 'boolean' ? ['yes', 'no'] : undefined
  const isList =
    choices.length <= limits.selectOptions && choices.every((each) => each.length <= limits.optionValue)
  return isList ? choices : undefined
}

function choice(choices: readonly string[], typed: string | undefined): InputBlock['element'] {
  const options = choices.map((each) => ({
    text: { type: 'plain_text' as const, text: clipped(each, limits.optionText), emoji: false },
    value: each,
  }))
  const chosen = options.find(({ value }) => value === typed?.toLowerCase())
  return { type: 'static_select', action_id: 'value', options, ...(chosen && { initial_option: chosen }) }
}

const words = (option: OptionRow, typed: string | undefined): InputBlock['element'] => ({
  type: 'plain_text_input',
  action_id: 'value',
  // Words without a kind of their own may be a pasted list.
  multiline: option.kind === undefined && option.type === 'string',
  max_length: limits.inputText,
  placeholder: { type: 'plain_text', text: clipped(typedForm(option), limits.placeholder), emoji: false },
  ...(typed ? { initial_value: typed.slice(0, limits.inputText) } : {}),
})

/** One field of a form as Slack sends it back. */
export interface FormField {
  readonly value?: string | null | undefined
  readonly selected_option?: { readonly value?: string } | null | undefined
}

/** What was filled in, as a command with its options named; what was left empty is left out. */
export function filledForm(
  { command, verb }: FormTicket,
  fields: Readonly<Record<string, Readonly<Record<string, FormField>>>>,
): Extract<Invocation, { command: string }> {
  const options = Object.entries(fields).flatMap(([name, { value: field }]) => {
    const value = (field?.value ?? field?.selected_option?.value ?? '').trim()
    return value === '' ? [] : [[name, value] as const]
  })
  return { command, ...(verb !== undefined && { verb }), options: Object.fromEntries(options) }
}

/** The same as it would be typed. */
export const filledLine = ({ command, verb, options }: Extract<Invocation, { command: string }>): string =>
  [
    command,
    ...(verb ? [verb] : []),
    ...Object.entries(options).map(([name, value]) => optionSaying(name, value)),
  ].join(' ')

/** The field that a refusal is about: the first that it names, else the first of all. */
export function fieldAt(error: string, fields: readonly string[]): string {
  const named = fields.filter((name) => new RegExp(`(?<![\\w-])${name}(?![\\w-])`, 'u').test(error))
  return named[0] ?? fields[0] ?? ''
}
