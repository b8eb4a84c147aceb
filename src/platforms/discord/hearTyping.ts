import type { AutocompleteInteraction } from 'discord.js'
import { askerOf } from './asker.ts'
import type { Desk } from './desk.ts'
import { limits } from './limits.ts'
import { loggable } from './trouble.ts'

/** Offers values for the option that is being typed; offers none where they cannot be found. */
export async function hearTyping(interaction: AutocompleteInteraction, desk: Desk): Promise<void> {
  const { options, commandName } = interaction
  const { name, value } = options.getFocused(true)
  const verb = options.getSubcommand(false)
  const typing = { command: commandName, option: name, typed: value, ...(verb !== null && { verb }) }
  const offered = await desk.parts.complete(askerOf(interaction, desk), typing).catch((error: unknown) => {
    desk.parts.log.warn(
      { ...loggable(error), command: commandName, option: name },
      'nothing could be offered',
    )
    return []
  })
  const short = offered.filter((each) => each.length > 0 && each.length <= limits.choiceText)
  try {
    await interaction.respond(short.slice(0, limits.suggestions).map((each) => ({ name: each, value: each })))
  } catch (error) {
    // Whoever types on is asked about again; what was offered for the last letter is of no use to anybody by then.
    desk.parts.log.info(loggable(error), 'what was offered came too late')
  }
}
