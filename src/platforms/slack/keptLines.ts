import type { Keeping } from '../../bot/platform.ts'
import type { Response } from '../../bot/request.ts'
import { limits } from './limits.ts'

const KEPT = 'kept:'

/**
 * `text` as the value of a button: itself, or a short name that it is recalled by where it is too long. `user` is whose it
 * is; nobody's where that is empty.
 */
export const buttonValue = async (text: string, keeping: Keeping, user: string): Promise<string> =>
  text.length <= limits.buttonValue && !text.startsWith(KEPT) ? text : keptValue(text, keeping, user)

/** The same, short in any case. */
export const keptValue = async (text: string, keeping: Keeping, user: string): Promise<string> =>
  `${KEPT}${await keeping.keepLine(text, user)}`

/** The text that a button stands for; undefined when it is kept no more. */
export const recalledText = async (value: string, keeping: Keeping): Promise<string | undefined> =>
  value.startsWith(KEPT) ? keeping.recallLine(value.slice(KEPT.length)) : value

/** `response` with a short name for every line that is too long for a button. */
export async function shortLines(response: Response, keeping: Keeping, user: string): Promise<Response> {
  if (!response.ok || !response.reply.buttons?.some(({ line }) => line.length > limits.buttonValue))
    return response
  const buttons = await Promise.all(
    response.reply.buttons.map(async ({ label, line }) => ({
      label,
      line: await buttonValue(line, keeping, user),
    })),
  )
  return { ...response, reply: { ...response.reply, buttons } }
}
