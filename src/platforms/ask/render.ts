import { showCell } from '../../bot/format.ts'
import type { Reply } from '../../bot/reply.ts'
import type { Response } from '../../bot/request.ts'
import type { Show } from '../../bot/show.ts'
import { replyText, replyWithNotice } from '../text.ts'

/** A response as plain text, for a person at a terminal. */
export const renderText = (response: Response): string =>
  response.ok ? replyWithNotice(response.reply, response.show) : response.error

/** A response as one line of JSON, for scripts: the figures in mm, degrees, mm2, mL, g, and the reply with cells shown. */
export function renderJson(response: Response): string {
  if (!response.ok) return JSON.stringify(response)
  const { reply, show } = response
  const { answer, figures } = reply
  const notice = reply.notice && { name: reply.notice.name, reply: shownSlots(reply.notice.reply, show) }
  const shown = { ...shownSlots(reply, show), ...(notice && { notice }) }
  return JSON.stringify({ ok: true, answer, figures, reply: shown })
}

function shownSlots(reply: Reply, show: Show) {
  const { figures: _, answer, pictures: drawn, notice: __, ...slots } = reply
  const pictures = drawn?.map(({ name, alt }) => ({ name, alt }))
  const tables = reply.tables?.map((table) => ({
    ...table,
    rows: table.rows.map((row) => row.map((cell) => showCell(cell, show))),
  }))
  const files = reply.files?.map(({ name, type }) => ({ name, type }))
  return {
    answer,
    ...slots,
    ...(tables && { tables }),
    ...(pictures && { pictures }),
    ...(files && { files }),
    text: replyText(reply, show),
  }
}
