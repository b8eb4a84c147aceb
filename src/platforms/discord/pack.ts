import {
  type APIComponentInActionRow,
  type APIMessageTopLevelComponent,
  ComponentType,
  MessageFlags,
} from 'discord-api-types/v10'
import { readCustomId } from './customId.ts'
import type { Desk } from './desk.ts'
import type { DiscordMessage, Upload } from './message.ts'
import { sentence } from './render.ts'
import { loggable } from './trouble.ts'

/** A message as the client sends it, with every picture painted. */
export interface Packed {
  readonly components: readonly APIMessageTopLevelComponent[]
  readonly files: readonly {
    readonly name: string
    readonly attachment: Buffer
    readonly description?: string
  }[]
  readonly flags: typeof MessageFlags.IsComponentsV2
}

/** Paints what is to be painted; a picture that cannot be, or is too large to send, is left out with a sentence. */
export async function pack(message: DiscordMessage, fileBytes: number, { parts }: Desk): Promise<Packed> {
  const files = await Promise.all(
    message.uploads.map(async (upload) => {
      try {
        const attachment = await contentOf(upload, parts.paint)
        if (attachment.length > fileBytes) return { name: upload.name, why: 'is too large to send here' }
        return { name: upload.name, attachment, ...('alt' in upload && { description: upload.alt }) }
      } catch (error) {
        parts.log.error({ ...loggable(error), file: upload.name }, 'a picture could not be painted')
        return { name: upload.name, why: 'could not be drawn' }
      }
    }),
  )
  const sent = files.filter((file) => 'attachment' in file)
  const lost = files.filter((file) => 'why' in file)
  return {
    components: [
      ...withoutFiles(
        message.components,
        lost.map(({ name }) => name),
      ),
      ...(lost.length === 0
        ? []
        : sentence(clipped(lost.map(({ name, why }) => `${name} ${why}`))).components),
    ],
    files: sent,
    flags: MessageFlags.IsComponentsV2,
  }
}

/** As much of the lines as the room for them in a message that is full already. */
const clipped = (lines: readonly string[]): string => {
  const all = lines.join('; ')
  return all.length <= 200 ? all : `${all.slice(0, 197)}...`
}

const contentOf = async (upload: Upload, paint: Desk['parts']['paint']): Promise<Buffer> =>
  Buffer.from('scene' in upload ? await paint(upload.scene) : upload.content)

/** What is in a message but the button that shows it to all, for where that has nobody left to show it to. */
export const withoutShare = (components: Packed['components']): Packed['components'] =>
  components.flatMap((component): readonly APIMessageTopLevelComponent[] => {
    if (component.type !== ComponentType.ActionRow) return [component]
    const buttons = component.components.filter((each) => !isShare(each))
    return buttons.length === 0 ? [] : [{ ...component, components: buttons }]
  })

/** Whether it is the button that shows an answer to all. */
const isShare = (component: APIComponentInActionRow): boolean =>
  'custom_id' in component && readCustomId(component.custom_id)?.deed === 'share'

/** The same message with a sentence in place of its files, for where files may not be sent. */
export const withoutAnyFile = ({ components, files, flags }: Packed, words: string): Packed => ({
  components: [
    ...withoutFiles(
      components,
      files.map(({ name }) => name),
    ),
    ...sentence(words).components,
  ],
  files: [],
  flags,
})

function withoutFiles(
  components: Packed['components'],
  names: readonly string[],
): readonly APIMessageTopLevelComponent[] {
  const gone = new Set(names.map((name) => `attachment://${name}`))
  return components.flatMap((component): readonly APIMessageTopLevelComponent[] => {
    if (component.type === ComponentType.File) return gone.has(component.file.url) ? [] : [component]
    if (component.type !== ComponentType.MediaGallery) return [component]
    const items = component.items.filter(({ media }) => !gone.has(media.url))
    return items.length === 0 ? [] : [{ ...component, items }]
  })
}
