import {
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandOption,
  type APIApplicationCommandSubcommandOption,
  ApplicationCommandOptionType,
  ApplicationCommandType,
  ApplicationIntegrationType,
  InteractionContextType,
  type RESTPostAPIChatInputApplicationCommandsJSONBody,
} from 'discord-api-types/v10'
import type { OptionRow } from '../../bot/option.ts'
import type { Description, Use } from '../../bot/usage.ts'
import { limits } from './limits.ts'

export type CommandJson = RESTPostAPIChatInputApplicationCommandsJSONBody

/** Every command as Discord is told of it, from the option tables: in servers, direct messages and wherever a person takes it. */
export const commandsJson = (commands: readonly Description[]): readonly CommandJson[] =>
  commands.map(({ name, summary, uses }) => ({
    type: ApplicationCommandType.ChatInput,
    name,
    description: summary,
    integration_types: [ApplicationIntegrationType.GuildInstall, ApplicationIntegrationType.UserInstall],
    contexts: [
      InteractionContextType.Guild,
      InteractionContextType.BotDM,
      InteractionContextType.PrivateChannel,
    ],
    options: uses.flatMap(optionsOf),
  }))

const optionsOf = (use: Use): APIApplicationCommandOption[] =>
  use.verb === undefined ? inOrder(use.options) : [subcommand(use, use.verb)]

const subcommand = (use: Use, name: string): APIApplicationCommandSubcommandOption => ({
  type: ApplicationCommandOptionType.Subcommand,
  name,
  description: use.summary,
  options: inOrder(use.options),
})

/** What is required stands first, as Discord wants it. */
const inOrder = (rows: readonly OptionRow[]): APIApplicationCommandBasicOption[] =>
  rows.toSorted((one, other) => Number(other.required) - Number(one.required)).map(optionJson)

/** Whether Discord offers them as a list; those that it does not are completed as they are typed. */
export const fitList = (choices: readonly string[]): boolean =>
  choices.length <= limits.choices && choices.every((each) => each.length <= limits.choiceText)

/** A measure is text, so that `23 7/8 in` can be typed; it is completed as it is typed. */
function optionJson(row: OptionRow): APIApplicationCommandBasicOption {
  const { name, description, required } = row
  const common = { name, description, required }
  if (row.choices && fitList(row.choices))
    return {
      ...common,
      type: ApplicationCommandOptionType.String,
      choices: row.choices.map((choice) => ({ name: choice, value: choice })),
    }
  const bounds = {
    ...(row.minimum !== undefined && { min_value: row.minimum }),
    ...(row.maximum !== undefined && { max_value: row.maximum }),
  }
  switch (row.kind ?? row.type) {
    case 'boolean':
      return { ...common, type: ApplicationCommandOptionType.Boolean }
    case 'integer':
      return { ...common, ...bounds, type: ApplicationCommandOptionType.Integer }
    case 'number':
      return { ...common, ...bounds, type: ApplicationCommandOptionType.Number }
    default:
      return { ...common, type: ApplicationCommandOptionType.String, autocomplete: true }
  }
}

/** Whether what Discord holds, as it gives it back, says the same as `wanted`. */
export const isRegistered = (wanted: readonly CommandJson[], held: readonly unknown[]): boolean =>
  JSON.stringify(byName(wanted)) === JSON.stringify(byName(held))

const byName = (commands: readonly unknown[]): readonly unknown[] =>
  commands.map(told).toSorted((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1))

const nameOf = (command: unknown): string => String((command as { name?: unknown }).name)

/** What we tell Discord of a command or option; it adds ids, versions and what is usual, and leaves out what is empty or false. */
const TOLD = [
  'type',
  'name',
  'description',
  'required',
  'autocomplete',
  'choices',
  'min_value',
  'max_value',
  'integration_types',
  'contexts',
  'options',
] as const

function told(value: unknown): unknown {
  const record = value as Readonly<Record<string, unknown>>
  return Object.fromEntries(
    TOLD.flatMap((key) => {
      const each = record[key]
      if (each === undefined || each === null || each === false) return []
      if (!Array.isArray(each)) return [[key, each]]
      if (each.length === 0) return []
      if (key === 'options') return [[key, each.map(told)]]
      if (key === 'choices') return [[key, each.map(choiceWords)]]
      return [[key, each.toSorted()]]
    }),
  )
}

const choiceWords = (choice: unknown): readonly unknown[] => {
  const { name, value } = choice as { name?: unknown; value?: unknown }
  return [name, value]
}
