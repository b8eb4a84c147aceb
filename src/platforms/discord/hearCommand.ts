import type { ChatInputCommandInteraction, CommandInteractionOption } from 'discord.js'
import type { Desk } from './desk.ts'
import { formFor, type Given, lacksMore, lineSaying, useOf } from './form.ts'
import { respond } from './respond.ts'

/** Answers a slash command, or opens a form where it lacks what it needs. */
export async function hearCommand(interaction: ChatInputCommandInteraction, desk: Desk): Promise<void> {
  const given = givenBy(interaction)
  const { commands } = desk.parts
  const use = useOf(given, commands)
  if (use && lacksMore(given, commands)) {
    const id = await desk.forms.idOf(lineSaying(given), interaction.user.id)
    await interaction.showModal(formFor(given, use, id))
    return
  }
  const { command, verb, options } = given
  const invocation = { command, options, ...(verb !== undefined && { verb }) }
  await respond(interaction, { invocation, line: lineSaying(given) }, desk)
}

function givenBy({ commandName, options }: ChatInputCommandInteraction): Given {
  const verb = options.getSubcommand(false) ?? undefined
  const rows = verb === undefined ? options.data : (options.data[0]?.options ?? [])
  return { command: commandName, verb, options: Object.fromEntries(rows.flatMap(nameAndValue)) }
}

const nameAndValue = ({
  name,
  value,
}: CommandInteractionOption): readonly (readonly [string, string | number | boolean])[] =>
  value === undefined ? [] : [[name, value]]
