import type { KnownBlock, ModalView } from '@slack/types'
import type { Response } from '../../bot/request.ts'
import type { Desk } from './desk.ts'
import { limits } from './limits.ts'
import { section } from './message.ts'
import { render } from './render.ts'
import { sendButtons } from './sendButton.ts'

/**
 * An answer where there is no channel to put it in: over the home page. Pressing its buttons changes it in place; its drawings
 * and files are sent to whoever asks for them.
 */
export function answerView(response: Response, channel: string, desk: Pick<Desk, 'recent'>): ModalView {
  const message = render(response)
  const elements = sendButtons(message, desk)
  const send: readonly KnownBlock[] = elements.length === 0 ? [] : [{ type: 'actions', elements }]
  return view([...message.blocks.slice(0, limits.viewBlocks - send.length), ...send], channel)
}

/** Shown at once, since Slack lets a modal be opened for three seconds only. */
export const workingView = (channel: string): ModalView => view([section('Working it out...')], channel)

const view = (blocks: readonly KnownBlock[], channel: string): ModalView => ({
  type: 'modal',
  callback_id: 'answer',
  title: { type: 'plain_text', text: 'Answer' },
  close: { type: 'plain_text', text: 'Close' },
  private_metadata: JSON.stringify({ channel }),
  blocks: [...blocks],
})
