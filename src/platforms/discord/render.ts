import {
  type APIActionRowComponent,
  type APIButtonComponentWithCustomId,
  type APIMessageTopLevelComponent,
  ButtonStyle,
  ComponentType,
} from 'discord-api-types/v10'
import { tableLines } from '../../bot/format.ts'
import type { Button, File, Picture, Reply, Table } from '../../bot/reply.ts'
import type { Response } from '../../bot/request.ts'
import type { Show } from '../../bot/show.ts'
import { giveWay } from '../giveWay.ts'
import { type Deed, shortId } from './customId.ts'
import { limits } from './limits.ts'
import { codeBlock, escapeText } from './markdown.ts'
import type { DiscordMessage, Upload } from './message.ts'
import { fits, pieces, ROOM } from './size.ts'

/** What depends on where a message goes. */
export interface RenderTerms {
  /** The id of the button that does this with the line. */
  readonly idOf: (deed: Deed, line: string) => string
  /** Whether a line still lacks something, so that its button opens a form. */
  readonly lacks: (line: string) => boolean
  /** Whether only the asker sees it, so that it can be shown to all. */
  readonly isPrivate: boolean
  /** The largest file that goes through, in bytes. */
  readonly fileBytes: number
  /** The line that was asked, for mending it; undefined where it cannot be. */
  readonly asked?: string | undefined
}

/** What an answer to one person is rendered with, as long as every line is short enough for a button. */
export const PLAIN: RenderTerms = {
  idOf: shortId,
  lacks: () => false,
  isPrivate: true,
  fileBytes: limits.fileBytes,
}

/**
 * A response as Discord messages: one, unless the answer and its cautions alone are too long for one. Reads from the top:
 * the answer, cautions, tables, pictures, what was assumed, files, buttons.
 */
export function render(response: Response, terms: RenderTerms = PLAIN): readonly DiscordMessage[] {
  if (!response.ok) return refusal(response.error, terms)
  const { reply, show } = response
  return giveWay(
    reply,
    (each) => replyMessages(each, show, terms),
    (messages) => messages.length === 1 && messages.every(fits),
    show,
  )
}

function replyMessages(reply: Reply, show: Show, terms: RenderTerms): readonly DiscordMessage[] {
  const cautions = (reply.cautions ?? []).map((caution) => `> ${escapeText(caution.text)}`)
  const said = [`**${escapeText(reply.answer)}**`, ...cautions].join('\n')
  const pictures = named(reply.pictures ?? [])
  const { sent, left } = sendable(reply.files ?? [], limits.files - pictures.length, terms.fileBytes)
  const notes = [...left, ...(reply.notes ?? [])].map((note) => `- ${escapeText(note)}`).join('\n')
  const rest = [
    ...(reply.tables ?? []).map((table) => text(tableText(table, show))),
    ...gallery(pictures),
    ...(notes === '' ? [] : [text(notes)]),
    ...sent.map(fileComponent),
    ...buttonRows(reply.buttons ?? [], terms),
  ]
  const uploads: readonly Upload[] = [...pictures, ...sent.map(({ name, content }) => ({ name, content }))]
  const parts = pieces(said, ROOM)
  const last = parts.at(-1) ?? ''
  return [
    ...parts.slice(0, -1).map((part) => ({ components: [text(part)], uploads: [] })),
    { components: [text(last), ...rest], uploads },
  ]
}

const refusal = (error: string, { idOf, asked }: RenderTerms): readonly DiscordMessage[] => {
  const mend = asked === undefined ? [] : [row([button('Change the line', idOf('edit', asked))])]
  return [{ components: [text(escapeText(error).slice(0, ROOM)), ...mend], uploads: [] }]
}

/** A message of one sentence of the bot's own. */
export const sentence = (words: string): DiscordMessage => ({
  components: [text(escapeText(words).slice(0, ROOM))],
  uploads: [],
})

const text = (content: string): APIMessageTopLevelComponent => ({ type: ComponentType.TextDisplay, content })

const tableText = (table: Table, show: Show): string => {
  const { title, ...untitled } = table
  const heading = title === undefined ? '' : `**${escapeText(title)}**\n`
  return `${heading}${codeBlock(tableLines(untitled, show, limits.tableColumns))}`
}

interface NamedPicture {
  readonly name: string
  readonly alt: string
  readonly scene: Picture['scene']
}

/** The pictures as files, each with a name of its own. */
const named = (pictures: readonly Picture[]): readonly NamedPicture[] =>
  pictures.map(({ name, alt, scene }, index) => ({
    name: `${fileName(name)}${index === 0 ? '' : `-${index + 1}`}.png`,
    alt: alt.slice(0, limits.alt),
    scene,
  }))

/** A name that Discord leaves as it is, so that the message finds its file. */
const fileName = (name: string): string => name.replace(/[^A-Za-z0-9._-]+/gu, '_').slice(0, 80)

const gallery = (pictures: readonly NamedPicture[]): readonly APIMessageTopLevelComponent[] =>
  pictures.length === 0
    ? []
    : [
        {
          type: ComponentType.MediaGallery,
          items: pictures.map(({ name, alt }) => ({
            media: { url: `attachment://${name}` },
            description: alt,
          })),
        },
      ]

/** The files that go through, under names that Discord keeps, and a sentence for each that does not. */
function sendable(files: readonly File[], most: number, bytes: number) {
  const small = files.filter(({ content }) => Buffer.byteLength(content) <= bytes)
  const sent = small.slice(0, Math.max(0, most)).map((file) => ({ ...file, name: fileName(file.name) }))
  const left = files
    .filter((file) => !small.includes(file))
    .map(({ name }) => `${name} is larger than the ${Math.floor(bytes / 2 ** 20)} MB that can be sent here`)
  const over = small.length - sent.length
  return { sent, left: over > 0 ? [...left, `${over} more files could not be sent here`] : left }
}

const fileComponent = ({ name }: File): APIMessageTopLevelComponent => ({
  type: ComponentType.File,
  file: { url: `attachment://${name}` },
})

type Row = APIActionRowComponent<APIButtonComponentWithCustomId>

const row = (components: APIButtonComponentWithCustomId[]): Row => ({
  type: ComponentType.ActionRow,
  components,
})

const button = (label: string, id: string): APIButtonComponentWithCustomId => ({
  type: ComponentType.Button,
  style: ButtonStyle.Secondary,
  label: label.length > limits.buttonLabel ? `${label.slice(0, limits.buttonLabel - 3)}...` : label,
  custom_id: id,
})

/** The reply's buttons, each line once, and one that shows the answer to all; as many as go into the rows with that one. */
function buttonRows(buttons: readonly Button[], { idOf, lacks, isPrivate }: RenderTerms): readonly Row[] {
  const lines = new Map(buttons.map((each) => [each.line, each]))
  const most = (limits.rows - 1) * limits.rowButtons
  const said = [...lines.values()]
    .slice(0, most)
    .map(({ label, line }) => button(label, idOf(lacks(line) ? 'ask' : 'say', line)))
  const all = isPrivate ? [...said, button('Show to all', idOf('share', ''))] : said
  const rows = Math.ceil(all.length / limits.rowButtons)
  return Array.from({ length: rows }, (_, index) =>
    row(all.slice(index * limits.rowButtons, (index + 1) * limits.rowButtons)),
  )
}
