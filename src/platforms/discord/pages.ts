import type { Button } from '../../bot/reply.ts'
import type { Response } from '../../bot/request.ts'
import { customId, type Deed, shortId } from './customId.ts'
import type { Desk } from './desk.ts'
import { givenIn, lacksMore } from './form.ts'
import { type Packed, pack } from './pack.ts'
import { type RenderTerms, render } from './render.ts'
import { loggable } from './trouble.ts'

/** Where messages go, and whose lines are behind their buttons; nobody's where it is empty. */
export type PageTerms = Omit<RenderTerms, 'idOf' | 'lacks'> & { readonly user: string }

/** A response as messages ready to be sent, with buttons that outlive this run of the bot. */
export async function pagesOf(response: Response, terms: PageTerms, desk: Desk): Promise<readonly Packed[]> {
  const { keeping, commands, log } = desk.parts
  const lacks = (line: string) => {
    const given = givenIn(line, commands)
    return given !== undefined && lacksMore(given, commands)
  }
  const buttons: readonly Button[] = response.ok ? (response.reply.buttons ?? []) : []
  const needed: readonly (readonly [Deed, string])[] = [
    ...buttons.map(({ line }) => [lacks(line) ? 'ask' : 'say', line] as const),
    ...(response.ok || terms.asked === undefined ? [] : [['edit', terms.asked] as const]),
  ]
  const ids = new Map<string, string>()
  for (const [deed, line] of needed) {
    const id = await customId(deed, line, keeping, terms.user).catch((error: unknown) => {
      log.warn(loggable(error), 'a line could not be kept for its button')
      return undefined
    })
    if (id !== undefined) ids.set(shortId(deed, line), id)
  }
  const has = (deed: Deed, line: string) => ids.has(shortId(deed, line))
  const shown = withButtons(response, ({ line }) => has(lacks(line) ? 'ask' : 'say', line))
  const asked = terms.asked !== undefined && has('edit', terms.asked) ? terms.asked : undefined
  const idOf = (deed: Deed, line: string) => ids.get(shortId(deed, line)) ?? shortId(deed, line)
  const messages = render(shown, { ...terms, asked, idOf, lacks })
  return Promise.all(messages.map((message) => pack(message, terms.fileBytes, desk)))
}

/** The response with those of its buttons that `has` says there are: the answer is worth more than what may be asked next. */
const withButtons = (response: Response, has: (button: Button) => boolean): Response =>
  response.ok && response.reply.buttons
    ? { ...response, reply: { ...response.reply, buttons: response.reply.buttons.filter(has) } }
    : response
