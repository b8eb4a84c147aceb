import type { Response } from '../../bot/request.ts'
import { answerView } from './answerView.ts'
import { deliver } from './deliver.ts'
import type { Desk } from './desk.ts'
import type { Destination } from './destination.ts'
import { putUpNotice } from './notice.ts'
import { slackError } from './slackError.ts'

/** A response to a line, and the view that it goes into; undefined where none could be opened. */
export interface ViewAnswer {
  readonly view: string | undefined
  readonly response: Response
  readonly line: string
}

/** Shows an answer in a view that is open; where that is closed by then, it goes to whoever asked another way. Never rejects. */
export async function answerInView(
  desk: Desk,
  to: Destination,
  { view, response, line }: ViewAnswer,
): Promise<void> {
  try {
    if (view === undefined) throw new Error('no view was opened')
    await to.client.views.update({ view_id: view, view: answerView(response, to.channel, desk) })
  } catch (error) {
    desk.parts.log.info({ why: slackError(error) }, 'an answer came when its view was closed')
    return deliver(desk, to, { response, line, audience: 'asker' })
  }
  await putUpNotice(desk, to, response)
}
