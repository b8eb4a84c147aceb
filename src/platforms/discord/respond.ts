import type { Invocation, Response } from '../../bot/request.ts'
import { acknowledge } from './acknowledge.ts'
import { type Asker, type Asking, askerOf, isPrivate } from './asker.ts'
import { deliver, deliverElsewhere, followUp, sorry } from './deliver.ts'
import { type Desk, isFirst } from './desk.ts'
import { limits } from './limits.ts'
import { putUpNotice } from './notice.ts'
import type { Packed } from './pack.ts'
import { pagesOf } from './pages.ts'
import { loggable } from './trouble.ts'

/** What is asked: undefined where the line behind a button is kept no more. */
export type Asked = { readonly invocation: Invocation; readonly line: string } | undefined

const FORGOTTEN = 'The line behind this button is kept no more. Type it again, or start from a newer answer.'
const UNKNOWN =
  'The line behind this button cannot be looked up just now; press it again in a minute, or type it.'
const FAULT = 'That went wrong on my side, and is in my log; ask again.'

/** Acknowledges, asks the bot, and delivers its answer; the same event a second time does nothing. */
export async function respond(interaction: Asking, asked: Asked | Promise<Asked>, desk: Desk): Promise<void> {
  // From the first, as it may fail while the acknowledgement is under way.
  const known = Promise.resolve(asked).catch((error: unknown) => {
    desk.parts.log.warn(loggable(error), 'the line behind a button could not be looked up')
    return sorry(UNKNOWN)
  })
  const asker = askerOf(interaction, desk)
  const acknowledged = await acknowledge(interaction, desk)
  if (acknowledged === 'taken' || !(await isFirst(interaction.id, desk))) return
  const isLate = acknowledged === 'late'
  const put = async (pages: readonly Packed[], isForAll: boolean): Promise<boolean> => {
    if (!isLate) return deliver(pages, interaction, desk, isForAll)
    await deliverElsewhere(pages, interaction, desk, isForAll)
    return false
  }
  const question = (await known) ?? sorry(FORGOTTEN)
  if (!('line' in question)) return void (await put([question], !isPrivate(interaction)))
  const hidden = isPrivate(interaction) && !isLate
  const answered = await answer(interaction, question, { asker, hidden }, desk).catch(
    async (error: unknown) => {
      await put([sorry(FAULT)], !isPrivate(interaction))
      throw error
    },
  )
  const { response, pages, fileBytes } = answered
  const isMeantForAll = response.ok && response.reply.audience === 'channel'
  let isReplied = false
  try {
    isReplied = await put(pages, isMeantForAll || !isPrivate(interaction))
    if (hidden && isReplied && isMeantForAll) await showToAll(response, interaction, fileBytes, desk)
  } finally {
    // What was changed is up for everybody, whatever became of the answer.
    const words = await putUpNotice(response, asker, interaction.channelId, desk)
    if (words && isReplied) await tell(words, interaction)
  }
}

/** Asks the bot, and makes messages of what it says. */
async function answer(
  interaction: Asking,
  { invocation, line }: NonNullable<Asked>,
  { asker, hidden }: { readonly asker: Asker; readonly hidden: boolean },
  desk: Desk,
) {
  const response = await desk.parts.answer({ ...asker, invocation })
  const fileBytes = interaction.attachmentSizeLimit ?? limits.fileBytes
  const terms = { isPrivate: hidden, asked: line, fileBytes, user: asker.user }
  return { response, pages: await pagesOf(response, terms, desk), fileBytes }
}

/** Something beside the answer, for whoever acted alone. */
async function tell(words: Packed, interaction: Asking): Promise<void> {
  interaction.ephemeral = isPrivate(interaction)
  await followUp(words, interaction)
}

const UNSHOWN = 'This is meant for everybody here, but could not be shown to all just now.'

/** An answer that is meant for everybody; the reply itself can only be for the asker by then. */
async function showToAll(response: Response, interaction: Asking, fileBytes: number, desk: Desk) {
  const terms = { isPrivate: false, fileBytes, user: interaction.user.id }
  const pages = await pagesOf(response, terms, desk)
  interaction.ephemeral = false
  try {
    for (const page of pages) await followUp(page, interaction)
  } catch (error) {
    desk.parts.log.warn(loggable(error), 'an answer could not be shown to all')
    await tell(sorry(UNSHOWN), interaction).catch(() => undefined)
  }
}
