import type { ModalView } from '@slack/types'
import type { Response } from '../../bot/request.ts'
import { limits } from './limits.ts'
import { section } from './message.ts'
import { render } from './render.ts'

/** An answer where there is no channel to put it in: over the home page. Pressing its buttons changes it in place. */
export const answerView = (response: Response, channel: string): ModalView =>
  view(render(response).blocks.slice(0, limits.viewBlocks), channel)

/** Shown at once, since Slack lets a modal be opened for three seconds only. */
export const workingView = (channel: string): ModalView => view([section('Working it out...')], channel)

const view = (blocks: ReturnType<typeof render>['blocks'], channel: string): ModalView => ({
  type: 'modal',
  callback_id: 'answer',
  title: { type: 'plain_text', text: 'Answer' },
  close: { type: 'plain_text', text: 'Close' },
  private_metadata: JSON.stringify({ channel }),
  blocks: [...blocks],
})
