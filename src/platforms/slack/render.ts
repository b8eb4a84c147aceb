import type { KnownBlock } from '@slack/types'
import { tableLines } from '../../bot/format.ts'
import type { Button, Reply, Table } from '../../bot/reply.ts'
import type { Response } from '../../bot/request.ts'
import type { Show } from '../../bot/show.ts'
import { giveWay } from '../giveWay.ts'
import { replyText } from '../text.ts'
import { escapeText } from './escape.ts'
import { limits } from './limits.ts'
import { button, context, plainMessage, type SlackMessage, section } from './message.ts'

/** A response as a Slack message, within every limit unless answer and cautions alone are not (moreCautions.ts). */
export function render(response: Response): SlackMessage {
  if (!response.ok) return plainMessage(escapeText(response.error))
  const { show } = response
  const { reply, blocks } = giveWay(
    response.reply,
    (each) => ({ reply: each, blocks: blocksOf(each, show) }),
    fits,
    show,
  )
  return { text: fallbackText(reply, show), blocks, pictures: reply.pictures ?? [], files: reply.files ?? [] }
}

const blocksOf = (reply: Reply, show: Show): readonly KnownBlock[] => [
  ...chunks([escapeText(reply.answer)]).map(section),
  ...cautionBlocks((reply.cautions ?? []).map(({ text }) => text)),
  ...(reply.tables ?? []).flatMap((table) => tableBlocks(table, show)),
  ...chunks((reply.notes ?? []).map((note) => escapeText(`- ${note}`))).map(context),
  ...buttonBlocks(reply.buttons ?? []),
]

/** Cautions in full, in as few sections as hold them. */
export const cautionBlocks = (cautions: readonly string[]): readonly KnownBlock[] =>
  chunks(cautions.map((each) => escapeText(`! ${each}`))).map(section)

/**
 * A table as a code block at most 28 columns wide, which no phone wraps. Slack's own table block is not used: it is taken
 * once a message, not in a modal, and a phone shows few of its columns.
 */
const tableBlocks = (table: Table, show: Show): readonly KnownBlock[] =>
  chunks(tableLines(table, show).map(escapeText)).map((lines) => section(`\`\`\`\n${lines}\n\`\`\``))

/** A button holds the line it types; one whose line is too long was given a short name for it before (keptLines.ts). */
const buttonBlocks = (buttons: readonly Button[]): readonly KnownBlock[] => {
  const shown = buttons.filter(({ line }) => line.length <= limits.buttonValue)
  const rows = Math.ceil(shown.length / ROW)
  return Array.from({ length: rows }, (_, row) => ({
    type: 'actions' as const,
    elements: shown
      .slice(row * ROW, (row + 1) * ROW)
      .map(({ label, line }, index) => button(`line:${row * ROW + index}`, label, line)),
  }))
}

/** Buttons of one block; more get blocks of their own. */
const ROW = 5

/** Room for the fences of a code block. */
const ROOM = limits.sectionText - 10

/** Lines joined to as few texts as a section holds; a line longer than that is broken between words. */
function chunks(lines: readonly string[]): readonly string[] {
  const texts: string[] = []
  for (const line of lines.flatMap(broken)) {
    const last = texts.at(-1)
    if (last !== undefined && last.length + 1 + line.length <= ROOM)
      texts[texts.length - 1] = `${last}\n${line}`
    else texts.push(line)
  }
  return texts
}

/** An entity is kept whole. */
const broken = (line: string): readonly string[] =>
  line.length <= ROOM ? [line] : (line.match(/(?:&\w+;|[^&]){1,580}(?=\s|$)|(?:&\w+;|[^&]){1,580}/gsu) ?? [])

/** Everything in words where it is short enough, else the answer and its cautions, else as many of those as there is room for. */
function fallbackText(reply: Reply, show: Show): string {
  const { answer, cautions, tables, notes, figures } = reply
  const said = { answer, figures, ...(cautions && { cautions }) }
  const whole = { ...said, ...(tables && { tables }), ...(notes && { notes }) }
  const text = escapeText(replyText(whole, show))
  if (text.length <= limits.text) return text
  return withinText([answer, ...(cautions ?? []).map((caution) => `! ${caution.text}`)].map(escapeText))
}

/** As many of the lines as there is room for, and how many more there are; the blocks under the text have all of them. */
export function withinText(lines: readonly string[]): string {
  const all = lines.join('\n')
  if (all.length <= limits.text) return all
  let count = lines.length
  let room = all.length
  while (count > 1 && room > limits.text - MORE.length) {
    count -= 1
    room -= (lines[count]?.length ?? 0) + 1
  }
  const left = lines.length - count
  const first = lines.slice(0, count).join('\n')
  return `${clippedEntities(first, limits.text - MORE.length)}${left === 0 ? '' : `\n! ${left} more below`}`
}

/** Room for saying how many more there are. */
const MORE = '\n! 9999 more below'

/** An entity is never cut in two. */
const clippedEntities = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, most - 3).replace(/&\w*$/u, '')}...`

/** Whether Slack takes the message, with the buttons of a private answer too. */
export const fits = ({ blocks }: { readonly blocks: readonly KnownBlock[] }): boolean =>
  blocks.length <= limits.blocks - SPARE && JSON.stringify(blocks).length <= limits.budget

/** Blocks that are added on the way: the question asked, and the buttons of a private answer. */
const SPARE = 3
