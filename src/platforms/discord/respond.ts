import type { Invocation, Response } from '../../bot/request.ts'
import { acknowledge } from './acknowledge.ts'
import { type Asking, askerOf, isPrivate } from './asker.ts'
import { deliver, deliverElsewhere, followUp, sorry } from './deliver.ts'
import { type Desk, isFirst } from './desk.ts'
import { limits } from './limits.ts'
import { putUpNotice } from './notice.ts'
import type { Packed } from './pack.ts'
import { pagesOf } from './pages.ts'

/** What is asked: undefined where the line behind a button is kept no more. */
export type Asked = { readonly invocation: Invocation; readonly line: string } | undefined

const FORGOTTEN = 'The line behind this button is kept no more. Type it again, or start from a newer answer.'

/** Acknowledges, asks the bot, and delivers its answer; the same event a second time does nothing. */
export async function respond(interaction: Asking, asked: Asked | Promise<Asked>, desk: Desk): Promise<void> {
  const asker = askerOf(interaction, desk)
  const acknowledged = await acknowledge(interaction, desk)
  if (acknowledged === 'taken' || !(await isFirst(interaction.id, desk))) return
  const isLate = acknowledged === 'late'
  const question = await asked
  if (!question) {
    await deliver([sorry(FORGOTTEN)], interaction, desk, !isPrivate(interaction))
    return
  }
  const response = await desk.parts.answer({ ...asker, invocation: question.invocation })
  const hidden = isPrivate(interaction) && !isLate
  const fileBytes = interaction.attachmentSizeLimit ?? limits.fileBytes
  const terms = { isPrivate: hidden, asked: question.line, fileBytes, user: asker.user }
  const pages = await pagesOf(response, terms, desk)
  const isMeantForAll = response.ok && response.reply.audience === 'channel'
  const isForAll = isMeantForAll || !isPrivate(interaction)
  if (isLate) await deliverElsewhere(pages, interaction, desk, isForAll)
  const isReplied = !isLate && (await deliver(pages, interaction, desk, isForAll))
  if (hidden && isReplied && isMeantForAll) await showToAll(response, interaction, fileBytes, desk)
  const words = await putUpNotice(response, asker, interaction.channelId, desk)
  if (words && isReplied) await tell(words, interaction)
}

/** Something beside the answer, for whoever acted alone. */
async function tell(words: Packed, interaction: Asking): Promise<void> {
  interaction.ephemeral = isPrivate(interaction)
  await followUp(words, interaction)
}

/** An answer that is meant for everybody; the reply itself can only be for the asker by then. */
async function showToAll(response: Response, interaction: Asking, fileBytes: number, desk: Desk) {
  const terms = { isPrivate: false, fileBytes, user: interaction.user.id }
  const pages = await pagesOf(response, terms, desk)
  interaction.ephemeral = false
  for (const page of pages) await followUp(page, interaction)
}
