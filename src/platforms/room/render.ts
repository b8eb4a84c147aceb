import type { Response } from '../../bot/request.ts'
import { replyWithNotice } from '../text.ts'

/** A response as the terminal room prints it. */
export const render = (response: Response): string =>
  response.ok ? replyWithNotice(response.reply, response.show) : `? ${response.error}`
