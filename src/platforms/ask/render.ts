import { showCell } from '../../bot/format.ts'
import type { Response } from '../../bot/request.ts'
import { replyText } from '../text.ts'

/** A response as plain text, for a person at a terminal. */
export const renderText = (response: Response): string =>
  response.ok ? replyText(response.reply, response.show) : response.error

/** A response as one line of JSON, for scripts: the figures in mm, degrees, mm2, mL, g, and the reply with cells shown. */
export function renderJson(response: Response): string {
  if (!response.ok) return JSON.stringify(response)
  const { reply, show } = response
  const { figures, answer, pictures: drawn, ...slots } = reply
  const pictures = drawn?.map(({ name, alt }) => ({ name, alt }))
  const tables = reply.tables?.map((table) => ({
    ...table,
    rows: table.rows.map((row) => row.map((cell) => showCell(cell, show))),
  }))
  const files = reply.files?.map(({ name, type }) => ({ name, type }))
  const shown = {
    answer,
    ...slots,
    ...(tables && { tables }),
    ...(pictures && { pictures }),
    ...(files && { files }),
    text: replyText(reply, show),
  }
  return JSON.stringify({ ok: true, answer, figures, reply: shown })
}
