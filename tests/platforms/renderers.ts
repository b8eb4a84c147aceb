import { createHash } from 'node:crypto'
import { PHONE_COLUMNS } from '../../src/bot/format.ts'
import { type Deed, shortId } from '../../src/platforms/discord/customId.ts'
import { limits } from '../../src/platforms/discord/limits.ts'
import type { DiscordMessage } from '../../src/platforms/discord/message.ts'
import { PLAIN, render as renderDiscord } from '../../src/platforms/discord/render.ts'
import { render as renderRoom } from '../../src/platforms/room/render.ts'
import { render as renderSlack } from '../../src/platforms/slack/render.ts'
import { checkMessage as checkDiscord, flattened, type WireMessage } from './discord/checkMessage.ts'
import { type Renderers, renderer } from './renders.ts'
import { checkMessage as checkSlack } from './slack/checkMessage.ts'

/** A message of Discord as it would go over the wire, with a kilobyte for every picture that is still to be painted. */
export const onTheWire = ({ components, uploads }: DiscordMessage): WireMessage => ({
  payload: {
    components,
    flags: 1 << 15,
    allowed_mentions: { parse: [] },
    attachments: uploads.map((upload, index) => ({
      id: String(index),
      ...('alt' in upload && { description: upload.alt }),
    })),
  },
  files: uploads.map((upload) => ({
    name: upload.name,
    bytes: 'scene' in upload ? 1024 : Buffer.byteLength(upload.content),
  })),
})

/** Lines between fences that a phone would wrap, and fences that it would not see. */
export function codeFaults(text: string): readonly string[] {
  const blocks = text.split('```').filter((_, index) => index % 2 === 1)
  return [
    ...(text.split('```').length % 2 === 1 ? [] : ['a code block that is never closed']),
    ...blocks.flatMap((block) => (block.startsWith('\n') ? [] : ['words on the fence of a code block'])),
    ...blocks
      .flatMap((block) => block.split('\n'))
      .filter((line) => [...line].length > PHONE_COLUMNS)
      .map((line) => `a phone wraps "${line}"`),
  ]
}

const textsIn = (message: DiscordMessage): readonly string[] =>
  flattened(message.components).flatMap(({ content, label }) =>
    [content, label].flatMap((each) => (typeof each === 'string' ? [each] : [])),
  )

/** As a reader sees it: Slack writes three characters as entities. */
const slackSeen = (text: string): string =>
  text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&')

const slackTexts = (value: unknown): readonly string[] => {
  if (Array.isArray(value)) return value.flatMap(slackTexts)
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, each]) =>
    key === 'text' && typeof each === 'string' ? [each] : slackTexts(each),
  )
}

/** As pages.ts has it: a line too long for the id of a button is named in its place. */
function idOf(deed: Deed, line: string): string {
  const id = shortId(deed, line)
  const name = createHash('sha256').update(line).digest('base64url').slice(0, 22)
  return id.length <= limits.customId ? id : `1:${deed}#${name}`
}

/** The renderer of every platform, each with its own strict checker. */
export const renderers: Renderers = {
  discord: renderer({
    render: (response) => renderDiscord(response, { ...PLAIN, idOf }),
    faults: (messages) => [
      ...messages.flatMap((message) => checkDiscord(onTheWire(message))),
      ...messages.flatMap(textsIn).flatMap(codeFaults),
    ],
    // A backslash before a mark is not seen.
    read: (messages) =>
      messages
        .flatMap(textsIn)
        .join('\n')
        .replace(/\\([^A-Za-z0-9\s])/gu, '$1'),
  }),
  slack: renderer({
    render: renderSlack,
    faults: (message) => [
      ...checkSlack(message),
      ...slackTexts(message.blocks).map(slackSeen).flatMap(codeFaults),
    ],
    read: ({ blocks }) => slackSeen(slackTexts(blocks).join('\n')),
  }),
  room: renderer({
    render: renderRoom,
    faults: (text) => (/(?![\n])[\p{Cc}]/u.test(text) ? ['something that a terminal would obey'] : []),
    read: (text) => text,
  }),
}
