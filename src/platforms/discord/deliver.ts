import { MessageFlags } from 'discord-api-types/v10'
import type { Asking } from './asker.ts'
import type { Desk } from './desk.ts'
import { limits } from './limits.ts'
import { type Packed, withoutAnyFile } from './pack.ts'
import { sentence } from './render.ts'
import { loggable, troubleOf } from './trouble.ts'

const NO_FILES =
  'The pictures and files are left out: this bot may not attach files here. Who manages the server can allow "Attach Files".'
const REFUSED =
  'The answer is there, but Discord did not take it as a message. Ask again, or ask for less at once.'

/**
 * Puts an answer where the acknowledgement stands, and what does not go into one message behind it. Where the time for that is
 * over the answer goes into the channel, else to the person directly; where it may not go either way the log says so.
 */
export async function deliver(messages: readonly Packed[], interaction: Asking, desk: Desk): Promise<void> {
  try {
    await edit(messages, interaction)
  } catch (error) {
    desk.parts.log.warn({ ...loggable(error), interaction: interaction.id }, 'an answer did not go through')
    await mended(messages, interaction, desk, error)
  }
}

async function edit(messages: readonly Packed[], interaction: Asking): Promise<void> {
  const [first, ...more] = messages
  if (first) await interaction.editReply(sendable(first))
  for (const message of more.slice(0, limits.followUps)) await followUp(message, interaction)
}

/** A message after the first, seen by whoever sees the first. */
export const followUp = (message: Packed, interaction: Asking) =>
  interaction.followUp({
    ...sendable(message),
    flags: interaction.ephemeral ? message.flags | MessageFlags.Ephemeral : message.flags,
  })

/** The client takes lists that can be changed. */
export const sendable = ({ components, files, flags }: Packed) => ({
  components: [...components],
  files: [...files],
  flags,
})

async function mended(messages: readonly Packed[], interaction: Asking, desk: Desk, error: unknown) {
  switch (troubleOf(error)) {
    case 'forbidden':
      return edit(
        messages.map((each) => (each.files.length > 0 ? withoutAnyFile(each, NO_FILES) : each)),
        interaction,
      )
    case 'refused':
      return edit([sorry(REFUSED)], interaction)
    default:
      return deliverElsewhere(messages, interaction, desk)
  }
}

/** A sentence of the bot's own as a message. */
export const sorry = (words: string): Packed => ({
  components: sentence(words).components,
  files: [],
  flags: MessageFlags.IsComponentsV2,
})

/** Into the channel, else to the person: for an answer whose interaction is over. */
export async function deliverElsewhere(
  messages: readonly Packed[],
  interaction: Asking,
  desk: Desk,
): Promise<void> {
  const { user, client, channelId, id } = interaction
  const late = sorry(`${user.displayName} asked, and the answer came too late for a reply:`)
  const all = messages.map((message, index) =>
    index === 0 ? { ...message, components: [...late.components, ...message.components] } : message,
  )
  const channel = channelId === null ? null : await client.channels.fetch(channelId).catch(() => null)
  const ways = [...(channel?.isSendable() ? [channel] : []), user]
  for (const way of ways) {
    try {
      for (const message of all) await way.send(sendable(message))
      desk.parts.log.warn({ interaction: id }, 'an answer came too late for a reply and went another way')
      return
    } catch (error) {
      desk.parts.log.warn({ ...loggable(error), interaction: id }, 'a late answer did not go through')
    }
  }
  desk.parts.log.error({ interaction: id }, 'an answer could not be delivered at all')
}
