import type { Context } from '../context.ts'
import { Refusal } from '../refusal.ts'
import type { File } from '../reply.ts'
import type { Handout } from './handout.ts'

/** Chat services take 10 MiB at least; some room is left for the rest of the message. */
const MOST_BYTES = 8_000_000

/** A document as a PDF to attach. Throws a Refusal where it is larger than chats take. */
export async function printedFile(
  handout: Handout,
  name: string,
  { print }: Context,
): Promise<{ readonly file: File; readonly pages: number }> {
  const { content, pages } = await print(handout)
  if (content.length > MOST_BYTES)
    throw new Refusal(
      'invalid',
      `the ${pages} pages come to ${Math.ceil(content.length / 1e6)} MB, and a chat takes ${MOST_BYTES / 1e6}; print the labels alone (file=labels) or take the parts as a spreadsheet (file=parts)`,
    )
  return { file: { name: `${name}.pdf`, type: 'application/pdf', content }, pages }
}
