import { randomUUID } from 'node:crypto'
import { MessageFlags } from 'discord-api-types/v10'
import type { Asking } from './asker.ts'
import type { Desk } from './desk.ts'
import { limits } from './limits.ts'
import { type Packed, withoutAnyFile, withoutShare } from './pack.ts'
import { sentence } from './render.ts'
import { loggable, troubleOf } from './trouble.ts'

const NO_FILES =
  'The pictures and files are left out: this bot may not attach files here. Who manages the server can allow "Attach Files".'
const REFUSED =
  'The answer is there, but Discord did not take it as a message. Ask again, or ask for less at once.'

/**
 * Puts an answer where the acknowledgement stands, and what does not go into one message behind it. Where the time for that is
 * over it goes another way (`deliverElsewhere`); gives false then.
 */
export async function deliver(
  messages: readonly Packed[],
  interaction: Asking,
  desk: Desk,
  isForAll: boolean,
): Promise<boolean> {
  const reply = replyOf(messages, interaction)
  const elsewhere = async () => {
    await deliverElsewhere(reply.left(), interaction, desk, isForAll)
    return false
  }
  try {
    await reply.send()
    return true
  } catch (error) {
    desk.parts.log.warn({ ...loggable(error), interaction: interaction.id }, 'an answer did not go through')
    switch (troubleOf(error)) {
      case 'forbidden':
        await reply.send((each) => (each.files.length > 0 ? withoutAnyFile(each, NO_FILES) : each))
        return true
      case 'refused':
        await reply.say(sorry(REFUSED))
        return true
      case 'unreachable':
        return (await sentAgain(reply, interaction, desk)) || elsewhere()
      default:
        return elsewhere()
    }
  }
}

/** The messages of one answer, in order; each goes out once, as far as Discord says so. */
interface Sending {
  /** Sends what is left, each as `change` makes it. */
  readonly send: (change?: (message: Packed) => Packed) => Promise<void>
  /** Says something in the place of what is left. */
  readonly say: (message: Packed) => Promise<unknown>
  readonly left: () => readonly Packed[]
}

function replyOf(messages: readonly Packed[], interaction: Asking): Sending {
  const all = messages.slice(0, 1 + limits.followUps)
  let sent = 0
  const say = (message: Packed) =>
    sent === 0 ? interaction.editReply(sendable(message)) : followUp(message, interaction)
  return {
    say,
    left: () => all.slice(sent),
    send: async (change = (message) => message) => {
      for (const message of all.slice(sent)) {
        await say(change(message))
        sent += 1
      }
    },
  }
}

/**
 * What Discord did not answer may have had its effect. The same edit once more changes nothing then, while the answer in
 * another place would stand there twice; so it goes another way only where Discord says that it is over here. False for that.
 */
async function sentAgain(reply: Sending, { id }: Asking, { parts }: Desk): Promise<boolean> {
  try {
    await reply.send()
    return true
  } catch (error) {
    if (troubleOf(error) === 'gone') return false
    parts.log.error({ ...loggable(error), interaction: id }, 'an answer may not have come through')
    return true
  }
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

/** The same for a channel; it is there once, even when the call is made again: Discord knows it by its nonce, of 25 letters. */
export const postable = (message: Packed, nonce = randomUUID().slice(0, 25)) => ({
  ...sendable(message),
  nonce,
  enforceNonce: true,
})

/** A sentence of the bot's own as a message. */
export const sorry = (words: string): Packed => ({
  components: sentence(words).components,
  files: [],
  flags: MessageFlags.IsComponentsV2,
})

/**
 * For an answer whose interaction is over. What is for all goes into the channel, else to the person directly; what is for
 * the person alone goes to them, and where that may not be, the channel is only told that there is an answer.
 */
export async function deliverElsewhere(
  messages: readonly Packed[],
  interaction: Asking,
  desk: Desk,
  isForAll: boolean,
): Promise<void> {
  const { user, client, channelId, id } = interaction
  const late = sorry(`${user.displayName} asked, and the answer came too late for a reply:`)
  const all = messages.map((message, index) => ({
    ...message,
    components: [...(index === 0 ? late.components : []), ...withoutShare(message.components)],
  }))
  const channel = channelId === null ? null : await client.channels.fetch(channelId).catch(() => null)
  const open = channel?.isSendable() ? [channel] : []
  const untold = sorry(
    `${user.displayName} asked, and the answer came too late for a reply. It is for them alone, and I may not write to them directly: allow direct messages from this server, then ask again.`,
  )
  const ways = isForAll
    ? [...open, user].map((way) => ({ way, says: all }))
    : [{ way: user, says: all }, ...open.map((way) => ({ way, says: [untold] }))]
  for (const { way, says } of ways) {
    try {
      for (const message of says) await way.send(postable(message))
      desk.parts.log.warn({ interaction: id }, 'an answer came too late for a reply and went another way')
      return
    } catch (error) {
      desk.parts.log.warn({ ...loggable(error), interaction: id }, 'a late answer did not go through')
    }
  }
  desk.parts.log.error({ interaction: id }, 'an answer could not be delivered at all')
}
