import type { ActionsBlock } from '@slack/types'
import type { Desk } from './desk.ts'
import { button } from './message.ts'
import type { Attachments } from './recent.ts'

/** The button that sends what goes with an answer as files; none where there is nothing to send. */
export function sendButtons(
  attachments: Attachments,
  { recent }: Pick<Desk, 'recent'>,
): ActionsBlock['elements'] {
  const kept = recent.keep(attachments)
  return kept === undefined ? [] : [button('send', sendLabel(attachments), kept)]
}

const sendLabel = ({ pictures, files }: Attachments): string => {
  if (pictures.length === 0) return files.length === 1 ? 'Send me the file' : 'Send me the files'
  return pictures.length === 1 ? 'Send me the drawing' : 'Send me the drawings'
}
