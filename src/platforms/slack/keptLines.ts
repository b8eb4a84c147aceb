import type { Logger } from '../../bot/log.ts'
import type { Keeping, PlatformParts } from '../../bot/platform.ts'
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

/** What `make` gives; undefined, with a word in the log, where the store does not keep what it needs: an answer goes without. */
export async function ifKept<Value>(make: () => Promise<Value>, log: Logger): Promise<Value | undefined> {
  try {
    return await make()
  } catch (err) {
    log.error({ err }, 'the store did not keep what a button stands for')
    return undefined
  }
}

/** `response` with a short name for every line that is too long for a button; without those that cannot be kept. */
export async function shortLines(
  response: Response,
  { keeping, log }: Pick<PlatformParts, 'keeping' | 'log'>,
  user: string,
): Promise<Response> {
  if (!response.ok || !response.reply.buttons?.some(({ line }) => line.length > limits.buttonValue))
    return response
  const buttons = await Promise.all(
    response.reply.buttons.map(async ({ label, line }) => {
      const value = await ifKept(() => buttonValue(line, keeping, user), log)
      return value === undefined ? [] : [{ label, line: value }]
    }),
  )
  return { ...response, reply: { ...response.reply, buttons: buttons.flat() } }
}
