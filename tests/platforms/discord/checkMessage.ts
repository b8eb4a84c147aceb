/** A message as it goes over the wire: its JSON, and the files beside it. */
export interface WireMessage {
  readonly payload: Readonly<Record<string, unknown>>
  readonly files: readonly { readonly name: string; readonly bytes: number }[]
}

type Part = Readonly<Record<string, unknown>>

// Discord developer documentation: Component Reference, Message, Receiving and Responding, Uploading Files (2026-08).
const COMPONENTS_V2 = 1 << 15
const EPHEMERAL = 1 << 6
const SUPPRESS_EMBEDS = 1 << 2
const SUPPRESS_NOTIFICATIONS = 1 << 12
const VOICE = 1 << 13
const MIB = 2 ** 20

const partsOf = (value: unknown): readonly Part[] => (Array.isArray(value) ? (value as Part[]) : [])

/** All components, those inside others too. */
export const flattened = (components: unknown): readonly Part[] =>
  partsOf(components).flatMap((part) => [
    part,
    ...flattened(part.components),
    ...(part.accessory ? flattened([part.accessory]) : []),
  ])

const size = (value: unknown): number => (typeof value === 'string' ? value.length : 0)

const isOver = (what: string, value: unknown, most: number, least = 0): readonly string[] =>
  size(value) > most || size(value) < least
    ? [`${what}: ${size(value)} characters, ${least} to ${most} allowed`]
    : []

/** What Discord would refuse of a message; nothing where it would take it. */
export function checkMessage({ payload, files }: WireMessage): readonly string[] {
  const flags = Number(payload.flags ?? 0)
  const isV2 = (flags & COMPONENTS_V2) !== 0
  return [
    ...checkFlags(flags),
    ...(isV2 ? checkParts(payload, files) : checkClassic(payload)),
    ...checkIds(payload.components),
    ...checkFiles(payload, files),
    ...checkPings(payload),
  ]
}

const checkFlags = (flags: number): readonly string[] =>
  (flags & ~(COMPONENTS_V2 | EPHEMERAL | SUPPRESS_EMBEDS | SUPPRESS_NOTIFICATIONS | VOICE)) === 0
    ? []
    : [`flags ${flags} may not be set`]

function checkClassic(payload: Part): readonly string[] {
  const rows = partsOf(payload.components)
  const embeds = partsOf(payload.embeds)
  return [
    ...isOver('content', payload.content, 2000),
    ...(rows.length > 5 ? ['over 5 rows'] : []),
    ...(rows.every(({ type }) => type === 1) ? [] : ['a part that needs the flag of components V2']),
    ...rows.flatMap(checkPart),
    ...(embeds.length > 10 ? ['over 10 embeds'] : []),
    ...(size(payload.content) + rows.length + embeds.length + partsOf(payload.attachments).length === 0
      ? ['an empty message']
      : []),
  ]
}

function checkParts(payload: Part, files: WireMessage['files']): readonly string[] {
  const all = flattened(payload.components)
  const texts = all.filter(({ type }) => type === 10)
  const shown = new Set(all.flatMap(attachmentsIn))
  const names = files.map(({ name }) => name)
  return [
    ...['content', 'embeds', 'poll', 'sticker_ids'].flatMap((field) =>
      payload[field] === undefined ||
      payload[field] === null ||
      partsOf(payload[field]).length + size(payload[field]) === 0
        ? []
        : [`${field} excludes components V2`],
    ),
    ...(all.length === 0 ? ['a message without parts'] : []),
    ...(all.length > 40 ? [`${all.length} parts, 40 allowed`] : []),
    ...isOver('all text', texts.map(({ content }) => content).join(''), 4000),
    ...partsOf(payload.components).flatMap(checkPart),
    ...[...shown].filter((name) => !names.includes(name)).map((name) => `${name} is shown but not there`),
    ...names.filter((name) => !shown.has(name)).map((name) => `${name} is there but not shown`),
    ...(new Set(names).size < names.length ? ['two files of one name'] : []),
  ]
}

const urlsIn = (part: Part): readonly unknown[] => {
  const media = (value: unknown) => (value as { url?: unknown } | undefined)?.url
  if (part.type === 12) return partsOf(part.items).map((item) => media(item.media))
  return part.type === 13 ? [media(part.file)] : part.type === 11 ? [media(part.media)] : []
}

const attachmentsIn = (part: Part): readonly string[] =>
  urlsIn(part).flatMap((url) => (String(url).startsWith('attachment://') ? [String(url).slice(13)] : []))

const TOP = [1, 9, 10, 12, 13, 14, 17]

function checkPart(part: Part): readonly string[] {
  switch (part.type) {
    case 1:
      return checkRow(partsOf(part.components))
    case 10:
      return isOver('a text', part.content, 4000, 1)
    case 12:
      return checkGallery(partsOf(part.items))
    case 13:
      return urlsIn(part).every((url) => String(url).startsWith('attachment://'))
        ? []
        : ['a file that is no attachment']
    default:
      return TOP.includes(Number(part.type)) ? [] : [`a part of type ${part.type} at the top`]
  }
}

const checkGallery = (items: readonly Part[]): readonly string[] => [
  ...(items.length < 1 || items.length > 10 ? [`${items.length} pictures, 1 to 10 allowed`] : []),
  ...items.flatMap(({ description }) => isOver('an alt text', description, 1024)),
  ...items.flatMap(({ media }) =>
    /\.(?:png|jpe?g|webp|gif)(?:\?|$)/u.test(String((media as { url?: unknown } | undefined)?.url))
      ? []
      : ['a picture of no kind that is shown'],
  ),
]

function checkRow(buttons: readonly Part[]): readonly string[] {
  return [
    ...(buttons.length < 1 || buttons.length > 5 ? [`${buttons.length} in a row, 1 to 5 allowed`] : []),
    ...buttons.flatMap((button) => [
      ...(button.type === 2 ? [] : [`type ${button.type} in a row`]),
      ...isOver('a button', button.label, 80, 1),
      ...([1, 2, 3, 4].includes(Number(button.style)) && button.custom_id === undefined
        ? ['a button without an id']
        : []),
    ]),
  ]
}

function checkIds(components: unknown): readonly string[] {
  const ids = flattened(components).flatMap(({ custom_id: id }) => (id === undefined ? [] : [id]))
  return [
    ...ids.flatMap((id) => isOver('an id', id, 100, 1)),
    ...(new Set(ids).size < ids.length ? ['two parts of one id'] : []),
  ]
}

function checkFiles(payload: Part, files: WireMessage['files']): readonly string[] {
  const attachments = partsOf(payload.attachments)
  const total = files.reduce((sum, { bytes }) => sum + bytes, 0)
  return [
    ...(files.length > 10 ? [`${files.length} files, 10 allowed`] : []),
    ...files.flatMap(({ name, bytes }) => (bytes > 10 * MIB ? [`${name} is over 10 MiB`] : [])),
    ...files.flatMap(({ name }) =>
      /^[A-Za-z0-9._-]{1,100}$/u.test(name) ? [] : [`${name} would be renamed`],
    ),
    ...(total > 25 * MIB ? ['the request is over 25 MiB'] : []),
    ...attachments.flatMap(({ description }) => isOver('an alt text', description, 1024)),
    ...(attachments.length === files.length ? [] : ['attachments and files differ']),
  ]
}

/** Nobody may ever be called by what somebody typed. */
function checkPings(payload: Part): readonly string[] {
  const allowed = payload.allowed_mentions as
    | { parse?: unknown; users?: unknown; roles?: unknown }
    | undefined
  if (allowed === undefined) return ['allowed_mentions is left to what is usual']
  return partsOf(allowed.parse).length + partsOf(allowed.users).length + partsOf(allowed.roles).length === 0
    ? []
    : ['somebody would be called']
}
