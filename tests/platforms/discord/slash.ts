import type { OptionRow } from '../../../src/bot/option.ts'
import { readLine } from '../../../src/bot/line.ts'
import { type Given, givenIn, useOf } from '../../../src/platforms/discord/form.ts'
import { catalogue } from '../../room.ts'
import { commands } from './bot.ts'
import { payload } from './payload.ts'
import type { Json } from './wire.ts'

const TYPES: Readonly<Record<string, number>> = { integer: 4, boolean: 5, number: 10 }

/** An option as Discord sends it: of the type it was registered with. */
function optionOf(row: OptionRow | undefined, name: string, said: string | number | boolean): Json {
  const type = row?.choices ? 3 : (TYPES[row?.kind ?? row?.type ?? ''] ?? 3)
  const value = type === 5 ? /^(?:yes|true)$/iu.test(String(said)) : type === 3 ? String(said) : Number(said)
  return { name, type, value }
}

/** What a line says; a command with verbs cannot be sent without one. */
export function givenBy(line: string): Given {
  const given = givenIn(line, commands)
  if (given) return given
  const { command, options } = readLine(line)
  return { command, verb: catalogue.get(command)?.fallback, options: Object.fromEntries(options) }
}

/** The slash command that says what a typed line says, as Discord sends it. */
export function slash(line: string): Json {
  const given = givenBy(line)
  const use = useOf(given, commands)
  if (!use) throw new Error(`${line} is no command`)
  const options = Object.entries(given.options).map(([name, value]) =>
    optionOf(
      use.options.find((row) => row.name === name),
      name,
      value,
    ),
  )
  return {
    ...payload('command'),
    data: {
      id: '1600000000000000001',
      name: given.command,
      type: 1,
      options: given.verb === undefined ? options : [{ name: given.verb, type: 1, options }],
    },
  }
}
