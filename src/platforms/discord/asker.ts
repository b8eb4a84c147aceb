import {
  type AutocompleteInteraction,
  type ChatInputCommandInteraction,
  GuildMember,
  InteractionContextType,
  type Message,
  type MessageComponentInteraction,
  type ModalSubmitInteraction,
  PermissionFlagsBits,
} from 'discord.js'
import type { Request } from '../../bot/request.ts'
import type { Desk } from './desk.ts'

/** An interaction that is answered with messages. */
export type Asking = ChatInputCommandInteraction | MessageComponentInteraction | ModalSubmitInteraction

/** Who asks, and where: all of a request but what is asked. */
export type Asker = Omit<Request, 'invocation'>

/** What stands for the server where there is none. */
const DIRECT = 'direct'

/** Who is behind an interaction. A thread counts as the channel it hangs from, so that both share one project. */
export function askerOf(interaction: Asking | AutocompleteInteraction, { parts, parentOf }: Desk): Asker {
  const { user, member, guildId, channelId, memberPermissions } = interaction
  const nickname = member instanceof GuildMember ? member.displayName : member?.nick
  return {
    place: {
      platform: 'discord',
      workspace: guildId ?? DIRECT,
      channel: parentOf(interaction.id) ?? channelId ?? user.id,
    },
    user: user.id,
    name: nickname ?? user.displayName,
    at: parts.now(),
    locale: interaction.locale,
    ...(memberPermissions && { managesChannel: memberPermissions.has(PermissionFlagsBits.ManageChannels) }),
  }
}

/** Who is behind a message. Discord does not say a person's language there. */
export function authorOf(message: Message, { parts }: Desk): Asker {
  const { author, member, guildId, channelId, channel } = message
  const permissions = member && 'permissionsFor' in channel ? channel.permissionsFor(member) : undefined
  return {
    place: {
      platform: 'discord',
      workspace: guildId ?? DIRECT,
      channel: (channel.isThread() ? channel.parentId : null) ?? channelId,
    },
    user: author.id,
    name: member?.displayName ?? author.displayName,
    at: parts.now(),
    ...(permissions && { managesChannel: permissions.has(PermissionFlagsBits.ManageChannels) }),
  }
}

/** Whether a reply may be for the asker's eyes only; alone with the bot there is nobody to hide it from. */
export const isPrivate = ({ context, guildId }: Asking): boolean =>
  context !== InteractionContextType.BotDM && (context !== null || guildId !== null)
