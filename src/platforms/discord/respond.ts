import type { Button } from '../../bot/reply.ts'
import type { Invocation, Response } from '../../bot/request.ts'
import { acknowledge } from './acknowledge.ts'
import { type Asking, askerOf, isPrivate } from './asker.ts'
import { customId, type Deed, shortId } from './customId.ts'
import { deliver, deliverElsewhere, followUp, sorry } from './deliver.ts'
import { type Desk, isFirst } from './desk.ts'
import { givenIn, lacksMore } from './form.ts'
import { limits } from './limits.ts'
import { type Packed, pack } from './pack.ts'
import { type RenderTerms, render } from './render.ts'

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
  if (!question) return deliver([sorry(FORGOTTEN)], interaction, desk)
  const response = await desk.parts.answer({ ...asker, invocation: question.invocation })
  const hidden = isPrivate(interaction) && !isLate
  const fileBytes = interaction.attachmentSizeLimit ?? limits.fileBytes
  const pages = await pagesOf(response, { isPrivate: hidden, asked: question.line, fileBytes }, desk)
  if (isLate) return deliverElsewhere(pages, interaction, desk)
  await deliver(pages, interaction, desk)
  if (hidden && response.ok && response.reply.audience === 'channel')
    await showToAll(response, interaction, fileBytes, desk)
}

/** An answer that is meant for everybody; the reply itself can only be for the asker by then. */
async function showToAll(response: Response, interaction: Asking, fileBytes: number, desk: Desk) {
  const pages = await pagesOf(response, { isPrivate: false, fileBytes }, desk)
  interaction.ephemeral = false
  for (const page of pages) await followUp(page, interaction)
}

/** A response as messages ready to be sent, with buttons that do what they say for good. */
export async function pagesOf(
  response: Response,
  terms: Omit<RenderTerms, 'idOf' | 'lacks'>,
  desk: Desk,
): Promise<readonly Packed[]> {
  const { keeping, commands } = desk.parts
  const lacks = (line: string) => {
    const given = givenIn(line, commands)
    return given !== undefined && lacksMore(given, commands)
  }
  const buttons: readonly Button[] = response.ok ? (response.reply.buttons ?? []) : []
  const needed: readonly (readonly [Deed, string])[] = [
    ...buttons.map(({ line }) => [lacks(line) ? 'ask' : 'say', line] as const),
    ...(response.ok || terms.asked === undefined ? [] : [['edit', terms.asked] as const]),
  ]
  const ids = new Map(
    await Promise.all(
      needed.map(async ([deed, line]) => [shortId(deed, line), await customId(deed, line, keeping)] as const),
    ),
  )
  const idOf = (deed: Deed, line: string) => ids.get(shortId(deed, line)) ?? shortId(deed, line)
  const messages = render(response, { ...terms, idOf, lacks })
  return Promise.all(messages.map((message) => pack(message, terms.fileBytes, desk)))
}
