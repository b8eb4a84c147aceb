import type { ActionsBlock, ContextBlock, KnownBlock, SectionBlock } from '@slack/types'
import type { File, Picture } from '../../bot/reply.ts'
import { limits } from './limits.ts'

/** An answer as Slack takes it: blocks, and `text` for notifications and screen readers, which get only that. */
export interface SlackMessage {
  readonly text: string
  readonly blocks: readonly KnownBlock[]
  /** Sent as files beside the message: response_url takes none. */
  readonly pictures: readonly Picture[]
  readonly files: readonly File[]
}

/** What is posted of a message. */
export interface Post {
  readonly text: string
  readonly blocks?: readonly KnownBlock[]
}

/** A section whose text is taken as it stands: `verbatim` keeps Slack from making links of it. */
export const section = (text: string): SectionBlock => ({
  type: 'section',
  text: { type: 'mrkdwn', text, verbatim: true },
})

/** Small grey text under the rest. */
export const context = (text: string): ContextBlock => ({
  type: 'context',
  elements: [{ type: 'mrkdwn', text, verbatim: true }],
})

/** A button that says what to do with its value; `action` tells what. */
export const button = (
  action: string,
  label: string,
  value: string,
): ActionsBlock['elements'][number] & { readonly value?: string } => ({
  type: 'button',
  action_id: action,
  text: { type: 'plain_text', text: clipped(label, limits.buttonText), emoji: false },
  value,
})

/** `text` in at most `most` characters, with dots where it was cut. */
export const clipped = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, most - 3).trimEnd()}...`

/** A message of words alone, for what is said beside answers. */
export const plainMessage = (text: string): SlackMessage => ({
  text,
  blocks: [section(text)],
  pictures: [],
  files: [],
})
