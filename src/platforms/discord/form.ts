import {
  type APIComponentInLabel,
  type APILabelComponent,
  type APIModalInteractionResponseCallbackData,
  ComponentType,
  TextInputStyle,
} from 'discord-api-types/v10'
import { optionSaying, readLine } from '../../bot/line.ts'
import type { OptionRow } from '../../bot/option.ts'
import { type Description, type Use, typedForm } from '../../bot/usage.ts'
import { limits } from './limits.ts'
import { fitList } from './registration.ts'

/** A command and what is given for it so far, whichever way it came. */
export interface Given {
  readonly command: string
  readonly verb: string | undefined
  readonly options: Readonly<Record<string, string | number | boolean>>
}

/** A typed line as a command with its options named; undefined where there is no such command or verb. */
export function givenIn(line: string, commands: readonly Description[]): Given | undefined {
  const read = readLine(line)
  const description = commands.find(({ name }) => name === read.command)
  const [, word = '', rest = ''] = /^(\S*)\s*(.*)$/su.exec(read.first) ?? []
  const verb = description?.uses.find((use) => use.verb === word.toLowerCase())
  const use = verb ?? description?.uses.find((each) => each.verb === undefined)
  if (!use) return undefined
  const words = verb ? rest : read.first
  const first = use.options.find((row) => row.first)
  return {
    command: read.command,
    verb: use.verb,
    options: Object.fromEntries([
      ...(first && words !== '' ? [[first.name, words] as const] : []),
      ...read.options,
    ]),
  }
}

/** The line that says the same as a command with named options. */
export const lineSaying = ({ command, verb, options }: Given): string =>
  [
    command,
    ...(verb === undefined ? [] : [verb]),
    ...Object.entries(options).map(([name, value]) => optionSaying(name, value)),
  ].join(' ')

export const useOf = ({ command, verb }: Given, commands: readonly Description[]): Use | undefined =>
  commands.find(({ name }) => name === command)?.uses.find((use) => use.verb === verb)

/**
 * Whether a command should be asked for more before it is run: something required is left out, or nothing at all was said
 * where something may stand first and the bare command is none of its examples.
 */
export function lacksMore(given: Given, commands: readonly Description[]): boolean {
  const use = useOf(given, commands)
  if (!use) return false
  if (use.options.some(({ name, required }) => required && given.options[name] === undefined)) return true
  const bare = [given.command, ...(given.verb === undefined ? [] : [given.verb])].join(' ')
  const examples = commands.find(({ name }) => name === given.command)?.examples ?? []
  const isBare = Object.keys(given.options).length === 0
  return isBare && use.options.some(({ first }) => first) && !examples.includes(bare)
}

/** A form for what `given` still lacks: what is required, what may stand first, then the rest in order, as many as fit. */
export function formFor(given: Given, use: Use, id: string): APIModalInteractionResponseCallbackData {
  const open = use.options.filter(({ name }) => given.options[name] === undefined)
  const weight = (row: OptionRow): number => (row.required ? 0 : row.first ? 1 : 2)
  const asked = open.toSorted((a, b) => weight(a) - weight(b)).slice(0, limits.modalFields)
  const words = [given.command, ...(given.verb === undefined ? [] : [given.verb])].join(' ')
  return {
    title: `${words}: ${use.summary}`.slice(0, limits.modalTitle),
    custom_id: id,
    components: asked.map((row) => label(row, field(row))),
  }
}

/** A form with the whole line in it, to be mended. */
export const lineForm = (line: string, id: string): APIModalInteractionResponseCallbackData => ({
  title: 'Change the line',
  custom_id: id,
  components: [
    {
      type: ComponentType.Label,
      label: 'The line',
      component: {
        type: ComponentType.TextInput,
        custom_id: LINE_FIELD,
        style: TextInputStyle.Paragraph,
        value: line.slice(0, limits.fieldText),
        required: true,
      },
    },
  ],
})

/** The name of the field that holds a whole line; no option is called so. */
export const LINE_FIELD = '#line'

const label = ({ name, description }: OptionRow, component: APIComponentInLabel): APILabelComponent => ({
  type: ComponentType.Label,
  label: name.slice(0, limits.fieldLabel),
  description: description.slice(0, limits.fieldDescription),
  component,
})

const YES_OR_NO = ['yes', 'no']

function field(row: OptionRow): APIComponentInLabel {
  const choices = row.choices ?? (row.type === 'boolean' ? YES_OR_NO : undefined)
  if (choices && fitList(choices))
    return {
      type: ComponentType.StringSelect,
      custom_id: row.name,
      required: row.required,
      min_values: row.required ? 1 : 0,
      max_values: 1,
      options: choices.map((choice) => ({ label: choice, value: choice })),
    }
  return {
    type: ComponentType.TextInput,
    custom_id: row.name,
    style: TextInputStyle.Short,
    required: row.required,
    placeholder: typedForm(row).slice(0, limits.placeholder),
  }
}
