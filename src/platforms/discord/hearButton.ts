import { type ButtonInteraction, MessageFlags } from 'discord.js'
import { customId, lineOf, type Press, readCustomId } from './customId.ts'
import { sendable, sorry } from './deliver.ts'
import type { Desk } from './desk.ts'
import { formFor, givenIn, lacksMore, lineForm, useOf } from './form.ts'
import { respond } from './respond.ts'
import { share } from './share.ts'

const OLD =
  'This button was made by another version of the bot. Type the line instead, or start from a newer answer.'

/** Does what a button says, whichever run of the bot made it. */
export async function hearButton(interaction: ButtonInteraction, desk: Desk): Promise<void> {
  const press = readCustomId(interaction.customId)
  if (!press) return tell(interaction, OLD)
  if (press.deed === 'share') return share(interaction, desk)
  if (press.deed === 'say') return respond(interaction, asLine(press, desk), desk)
  const line = await lineOf(press, desk.parts.keeping)
  if (line === undefined) return respond(interaction, undefined, desk)
  return press.deed === 'ask' ? ask(interaction, line, desk) : edit(interaction, line, desk)
}

async function asLine(press: Press, { parts }: Desk) {
  const line = await lineOf(press, parts.keeping)
  return line === undefined ? undefined : { invocation: { line }, line }
}

/** Opens a form for what the line lacks; a line that lacks nothing any more is said. */
async function ask(interaction: ButtonInteraction, line: string, desk: Desk): Promise<void> {
  const { commands, keeping } = desk.parts
  const given = givenIn(line, commands)
  const use = given && useOf(given, commands)
  if (!given || !use || !lacksMore(given, commands))
    return respond(interaction, { invocation: { line }, line }, desk)
  const id = await customId('ask', line, keeping, interaction.user.id)
  await interaction.showModal(formFor(given, use, id))
}

const edit = async (interaction: ButtonInteraction, line: string, { parts }: Desk): Promise<void> => {
  await interaction.showModal(lineForm(line, await customId('edit', '', parts.keeping, interaction.user.id)))
}

/** A sentence for whoever pressed. */
const tell = async (interaction: ButtonInteraction, words: string): Promise<void> => {
  const { components, flags } = sendable(sorry(words))
  await interaction.reply({ components, flags: flags | MessageFlags.Ephemeral })
}
