import type { Button } from '../../bot/reply.ts'
import type { Response } from '../../bot/request.ts'
import { customId, type Deed, shortId } from './customId.ts'
import type { Desk } from './desk.ts'
import { givenIn, lacksMore } from './form.ts'
import { type Packed, pack } from './pack.ts'
import { type RenderTerms, render } from './render.ts'

/** Where messages go, and whose lines are behind their buttons; nobody's where it is empty. */
export type PageTerms = Omit<RenderTerms, 'idOf' | 'lacks'> & { readonly user: string }

/** A response as messages ready to be sent, with buttons that outlive this run of the bot. */
export async function pagesOf(response: Response, terms: PageTerms, desk: Desk): Promise<readonly Packed[]> {
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
      needed.map(
        async ([deed, line]) =>
          [shortId(deed, line), await customId(deed, line, keeping, terms.user)] as const,
      ),
    ),
  )
  const idOf = (deed: Deed, line: string) => ids.get(shortId(deed, line)) ?? shortId(deed, line)
  const messages = render(response, { ...terms, idOf, lacks })
  return Promise.all(messages.map((message) => pack(message, terms.fileBytes, desk)))
}
