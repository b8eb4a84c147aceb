import { type ButtonInteraction, MessageFlags } from 'discord.js'
import { type Press, readCustomId, shortId } from './customId.ts'
import { sendable, sorry } from './deliver.ts'
import type { Desk } from './desk.ts'
import { formFor, givenIn, lacksMore, lineForm, useOf } from './form.ts'
import { inTime } from './formLines.ts'
import { type Asked, respond } from './respond.ts'
import { share } from './share.ts'

const OLD =
  'This button was made by another version of the bot. Type the line instead, or start from a newer answer.'

/** Does what a button says, whichever run of the bot made it. */
export async function hearButton(interaction: ButtonInteraction, desk: Desk): Promise<void> {
  const press = readCustomId(interaction.customId)
  if (!press) return tell(interaction, OLD)
  if (press.deed === 'share') return share(interaction, desk)
  const asked = asLine(press, desk)
  if (press.deed === 'say') return respond(interaction, asked, desk)
  const early = await inTime(asked)
  // Nothing but a form may be late: where the line is, it is said instead.
  if (!early) return respond(interaction, asked, desk)
  if (press.deed === 'ask') return ask(interaction, early.line, desk)
  await interaction.showModal(lineForm(early.line, shortId('edit', '')))
}

async function asLine(press: Press, { forms }: Desk): Promise<Asked> {
  const line = await forms.lineOf(press)
  return line === undefined ? undefined : { invocation: { line }, line }
}

/** Opens a form for what the line lacks, under the id of the button; a line that lacks nothing any more is said. */
async function ask(interaction: ButtonInteraction, line: string, desk: Desk): Promise<void> {
  const { commands } = desk.parts
  const given = givenIn(line, commands)
  const use = given && useOf(given, commands)
  if (!given || !use || !lacksMore(given, commands))
    return respond(interaction, { invocation: { line }, line }, desk)
  await interaction.showModal(formFor(given, use, interaction.customId))
}

/** A sentence for whoever pressed. */
const tell = async (interaction: ButtonInteraction, words: string): Promise<void> => {
  const { components, flags } = sendable(sorry(words))
  await interaction.reply({ components, flags: flags | MessageFlags.Ephemeral })
}
