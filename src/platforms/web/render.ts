import { showCell } from '../../bot/format.ts'
import { sizeOf } from '../../bot/picture.ts'
import type { PlatformParts } from '../../bot/platform.ts'
import type { File, Picture, Table } from '../../bot/reply.ts'
import type { Response } from '../../bot/request.ts'
import type { Show } from '../../bot/show.ts'
import type { Card, CardFile, CardPicture, CardTable } from './card.ts'
import type { Transcript } from './transcript.ts'

/** What rendering needs of the outside: a painter, a log, and a place for pictures and files. */
export interface RenderParts extends Pick<PlatformParts, 'paint' | 'log'> {
  readonly transcript: Pick<Transcript, 'keepContent'>
}

/** A response as the page shows it, with its pictures painted and its files kept. */
export async function render(response: Response, parts: RenderParts): Promise<Card> {
  if (!response.ok) return { ok: false, kind: response.kind, error: response.error }
  const { reply, show } = response
  const [pictures, files] = await Promise.all([
    Promise.all((reply.pictures ?? []).map((picture) => renderPicture(picture, parts))),
    Promise.all((reply.files ?? []).map((file) => renderFile(file, parts))),
  ])
  return {
    ok: true,
    answer: reply.answer,
    cautions: (reply.cautions ?? []).map(({ text }) => text),
    tables: (reply.tables ?? []).map((table) => renderTable(table, show)),
    pictures,
    notes: [...(reply.notes ?? [])],
    files,
    buttons: (reply.buttons ?? []).map(({ label, line }) => ({ label, line })),
  }
}

const renderTable = ({ title, columns, rows }: Table, show: Show): CardTable => ({
  ...(title !== undefined && { title }),
  columns: [...columns],
  numeric: columns.map((_, column) => rows.every((row) => typeof row[column] !== 'string')),
  rows: rows.map((row) => row.map((cell) => showCell(cell, show))),
})

async function renderPicture(picture: Picture, parts: RenderParts): Promise<CardPicture> {
  const { name, alt, scene } = picture
  const card = { name, alt, ...sizeOf(picture) }
  try {
    return { ...card, content: await parts.transcript.keepContent(await parts.paint(scene)) }
  } catch (error) {
    parts.log.warn({ err: error, picture: name }, 'a picture could not be painted')
    return card
  }
}

async function renderFile({ name, type, content }: File, parts: RenderParts): Promise<CardFile> {
  const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content
  return { name, type, bytes: bytes.byteLength, content: await parts.transcript.keepContent(bytes) }
}
