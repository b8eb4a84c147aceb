import type { ButtonInteraction } from 'discord.js'
import { type APIMessageTopLevelComponent, ComponentType, MessageFlags } from 'discord-api-types/v10'
import { oneEffect } from '../oneEffect.ts'
import { followUp, sorry } from './deliver.ts'
import { type Desk, isFirst } from './desk.ts'
import { escapeText } from './markdown.ts'
import { type Packed, withoutShare } from './pack.ts'
import { loggable } from './trouble.ts'

const SHOWN = 'This answer is shown to all already.'
const HIDDEN =
  'This server lets nobody see what an app of your own says. Who manages it can allow "Use External Apps".'
const FAILED = 'This answer could not be shown to all just now; press the button again.'
const LOST = 'The pictures and files could not be taken along; ask again to show them.'

/**
 * Shows the answer that the button stands under to everybody, once. It is taken from the message itself, so that nothing
 * is reckoned or changed a second time.
 */
export async function share(interaction: ButtonInteraction, desk: Desk): Promise<void> {
  await interaction.deferUpdate()
  if (!(await isFirst(interaction.id, desk))) return
  let words: string | undefined
  const effect = await oneEffect(
    `share:${interaction.message.id}`,
    async () => {
      words = await show(interaction, desk)
      return words === undefined
    },
    desk.parts,
  )
  const said = effect === 'done before' ? SHOWN : words
  if (said !== undefined) await tell(interaction, said)
}

/** Shows it; gives a sentence for whoever pressed where nobody else sees it. */
async function show(interaction: ButtonInteraction, desk: Desk): Promise<string | undefined> {
  const components = interaction.message.components.map(
    (each) => each.toJSON() as APIMessageTopLevelComponent,
  )
  const copied = await copy(components, desk)
  const by = `-# shown by ${escapeText(interaction.user.displayName)}`
  try {
    const said = await interaction.followUp({
      components: [...copied.components, { type: ComponentType.TextDisplay, content: by }],
      files: [...copied.files],
      flags: MessageFlags.IsComponentsV2,
    })
    return said.flags.has(MessageFlags.Ephemeral) ? HIDDEN : undefined
  } catch (error) {
    desk.parts.log.warn(loggable(error), 'an answer could not be shown to all')
    return FAILED
  }
}

/** A sentence for whoever pressed. */
async function tell(interaction: ButtonInteraction, words: string): Promise<void> {
  interaction.ephemeral = true
  await followUp(sorry(words), interaction)
}

type Copied = Pick<Packed, 'components' | 'files'>

/** What is in a message that was sent, as one that can be sent: its files with it, without the button that shows it to all. */
async function copy(all: readonly APIMessageTopLevelComponent[], { parts }: Desk): Promise<Copied> {
  const components = withoutShare(all)
  const urls = components.flatMap(urlsIn)
  try {
    const files = await Promise.all(urls.map(fetchFile))
    return { components: components.flatMap((each) => copied(each, true)), files }
  } catch (error) {
    parts.log.warn(loggable(error), 'files of a shown answer could not be taken along')
    return {
      components: [...components.flatMap((each) => copied(each, false)), ...sorry(LOST).components],
      files: [],
    }
  }
}

interface Source {
  readonly url: string
  readonly description?: string
}

function urlsIn(component: APIMessageTopLevelComponent): readonly Source[] {
  if (component.type === ComponentType.File) return [{ url: component.file.url }]
  if (component.type !== ComponentType.MediaGallery) return []
  return component.items.map(({ media, description }) => ({
    url: media.url,
    ...(description && { description }),
  }))
}

async function fetchFile({ url, description }: Source): Promise<Packed['files'][number]> {
  const response = await fetch(url, { signal: AbortSignal.timeout(10_000) })
  if (!response.ok) throw new Error(`a file of the message is gone (${response.status})`)
  return {
    name: nameIn(url),
    attachment: Buffer.from(await response.arrayBuffer()),
    ...(description !== undefined && { description }),
  }
}

const nameIn = (url: string): string => decodeURIComponent(new URL(url).pathname.split('/').at(-1) ?? 'file')

function copied(
  component: APIMessageTopLevelComponent,
  withFiles: boolean,
): readonly APIMessageTopLevelComponent[] {
  switch (component.type) {
    case ComponentType.TextDisplay:
      return [{ type: component.type, content: component.content }]
    case ComponentType.MediaGallery:
      return withFiles ? [{ type: component.type, items: component.items.map(copiedItem) }] : []
    case ComponentType.File:
      return withFiles
        ? [{ type: component.type, file: { url: `attachment://${nameIn(component.file.url)}` } }]
        : []
    case ComponentType.ActionRow:
      return [{ type: component.type, components: component.components }]
    default:
      return []
  }
}

const copiedItem = ({ media, description }: { media: { url: string }; description?: string | null }) => ({
  media: { url: `attachment://${nameIn(media.url)}` },
  ...(description && { description }),
})
