import { ComponentType } from 'discord-api-types/v10'
import { limits } from './limits.ts'
import type { DiscordMessage } from './message.ts'

type Component = DiscordMessage['components'][number]

/**
 * Letters for the text of one message, and parts. What is left of either is for what a message is given on its way: that it
 * comes late, by whom it is shown, which files are missing and why.
 */
export const ROOM = limits.text - 500
const PARTS = limits.components - 4

/** Whether Discord takes the message, with what it may be given on its way: its text, its parts and the number of its files. */
export const fits = ({ components, uploads }: DiscordMessage): boolean =>
  components.reduce((sum, each) => sum + textIn(each), 0) <= ROOM &&
  components.reduce((sum, each) => sum + countOf(each), 0) <= PARTS &&
  components.every(
    (each) => each.type !== ComponentType.MediaGallery || each.items.length <= limits.pictures,
  ) &&
  uploads.length <= limits.files

const textIn = (component: Component): number =>
  component.type === ComponentType.TextDisplay ? component.content.length : 0

const countOf = (component: Component): number =>
  component.type === ComponentType.ActionRow ? 1 + component.components.length : 1

/** `text` in pieces of at most `most` characters, parted between lines where that can be. */
export function pieces(text: string, most: number): readonly string[] {
  if (text.length <= most) return [text]
  const end = text.lastIndexOf('\n', most)
  const at = end > 0 ? end : most
  return [text.slice(0, at), ...pieces(text.slice(end > 0 ? at + 1 : at), most)]
}
