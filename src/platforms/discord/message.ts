import type { APIMessageTopLevelComponent } from 'discord-api-types/v10'
import type { Picture } from '../../bot/reply.ts'

/** A file that goes with a message: a picture still to be painted, or what is in it. */
export type Upload =
  | { readonly name: string; readonly alt: string; readonly scene: Picture['scene'] }
  | { readonly name: string; readonly content: string | Uint8Array }

/** One message, in parts as Discord lays them out. */
export interface DiscordMessage {
  readonly components: readonly APIMessageTopLevelComponent[]
  readonly uploads: readonly Upload[]
}
