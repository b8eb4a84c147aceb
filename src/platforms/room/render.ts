import type { Response } from '../../bot/request.ts'
import { replyText } from '../text.ts'

/** A response as the terminal room prints it. */
export const render = (response: Response): string =>
  response.ok ? replyText(response.reply, response.show) : `? ${response.error}`
