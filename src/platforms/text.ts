import { PHONE_COLUMNS, tableLines } from '../bot/format.ts'
import type { Reply } from '../bot/reply.ts'
import type { Show } from '../bot/show.ts'

/**
 * A reply as plain text, in the order that every platform keeps: the answer, cautions, tables, what was assumed, files,
 * and what may be asked next. Nothing is coloured, so that it survives a copy, a screenshot and a screen reader.
 */
export function replyText(reply: Reply, show: Show, width = PHONE_COLUMNS): string {
  const cautions = (reply.cautions ?? []).map(({ text }) => `! ${text}`)
  const tables = (reply.tables ?? []).map((table) => tableLines(table, show, width).join('\n'))
  const notes = (reply.notes ?? []).map((note) => `- ${note}`)
  const files = (reply.files ?? []).map(({ name }) => `file: ${name}`)
  const buttons = (reply.buttons ?? []).map(({ label, line }) => `${label}: ${line}`)
  return [
    reply.answer,
    cautions.join('\n'),
    ...tables,
    notes.join('\n'),
    files.join('\n'),
    buttons.join('\n'),
  ]
    .filter((part) => part !== '')
    .join('\n\n')
}

/** The same with the notice that goes up for everybody under it, where there is one. */
export const replyWithNotice = (reply: Reply, show: Show, width = PHONE_COLUMNS): string =>
  [
    replyText(reply, show, width),
    ...(reply.notice ? [`For everybody here:\n\n${replyText(reply.notice.reply, show, width)}`] : []),
  ].join('\n\n')
