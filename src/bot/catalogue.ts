import { readdir } from 'node:fs/promises'
import { pathToFileURL } from 'node:url'
import type { Action, Command } from './command.ts'
import { readLine } from './line.ts'
import { optionTable } from './option.ts'
import type { Description } from './usage.ts'

/** Every command, by name. */
export type Catalogue = ReadonlyMap<string, Command>

/** Loads every command in a folder; one that is badly defined stops the start with a sentence that names it. */
export async function loadCatalogue(folder: string): Promise<Catalogue> {
  const files = (await readdir(folder)).filter((file) => /\.(?:ts|js)$/u.test(file)).sort()
  const commands = await Promise.all(
    files.map(async (file) => {
      const module = (await import(pathToFileURL(`${folder}/${file}`).href)) as { default: Command }
      return checked(module.default, file.replace(/\.(?:ts|js)$/u, ''))
    }),
  )
  return new Map(commands.map((command) => [command.name, command]))
}

/** The action that a command, or one of its verbs, runs; undefined for a verb that there is not. */
export const actionOf = (command: Command, verb: string | undefined): Action | undefined =>
  verb === undefined
    ? command.action
    : Object.hasOwn(command.verbs ?? {}, verb)
      ? command.verbs?.[verb]
      : undefined

/** What help says of every command. */
export const describe = (catalogue: Catalogue): readonly Description[] =>
  [...catalogue.values()].map(({ name, summary, examples, action, verbs }) => ({
    name,
    summary,
    examples,
    uses: [...(action ? [[undefined, action] as const] : []), ...Object.entries(verbs ?? {})].map(
      ([verb, each]) => ({
        verb,
        summary: each.summary,
        options: optionTable(each.options),
      }),
    ),
  }))

/** What chat platforms allow at most: the smaller of their limits. */
const LIMITS = { name: 32, summary: 100, options: 25, choices: 25 } as const

function checked(command: Command, fileName: string): Command {
  const faults = [
    command.name === fileName ? '' : `its name is ${command.name}`,
    command.examples.length > 0 ? '' : 'it has no example',
    command.action || (command.verbs && command.fallback && Object.hasOwn(command.verbs, command.fallback))
      ? ''
      : 'it does nothing',
    ...command.examples.map((example) =>
      readLine(example).command === command.name ? '' : `"${example}" is not its own`,
    ),
    ...Object.entries(command.verbs ?? { '': command.action as Action }).flatMap(([verb, action]) =>
      actionFaults(verb, action),
    ),
    nameFault(command.name),
    summaryFault(command.name, command.summary),
  ].filter((fault) => fault !== '')
  if (faults.length > 0) throw new Error(`commands/${fileName}.ts: ${faults.join('; ')}`)
  return command
}

function actionFaults(verb: string, action: Action): readonly string[] {
  const table = optionTable(action.options)
  const firstRequired = table.findIndex((option) => !option.required)
  return [
    verb ? nameFault(verb) : '',
    verb ? summaryFault(verb, action.summary) : '',
    table.length > LIMITS.options ? `${verb} has over ${LIMITS.options} options` : '',
    table.filter((option) => option.first).length > 1 ? `${verb} has two options that stand first` : '',
    firstRequired >= 0 && table.slice(firstRequired).some((option) => option.required)
      ? `${verb} has a required option after an optional one`
      : '',
    ...table.flatMap((option) => [
      nameFault(option.name),
      summaryFault(option.name, option.description),
      (option.choices?.length ?? 0) > LIMITS.choices
        ? `${option.name} has over ${LIMITS.choices} choices`
        : '',
    ]),
  ]
}

const nameFault = (name: string): string =>
  /^[a-z][a-z-]*$/u.test(name) && name.length <= LIMITS.name
    ? ''
    : `${name} is no name: 1 to ${LIMITS.name} lower-case letters`

const summaryFault = (name: string, text: string): string =>
  text.length >= 1 && text.length <= LIMITS.summary
    ? ''
    : `${name} needs a summary of 1 to ${LIMITS.summary} characters`
