import { createHash } from 'node:crypto'
import type { BlockAction } from '@slack/bolt'
import type { WebClient } from '@slack/web-api'
import { createResponseUrl, type ResponseUrl } from './responseUrl.ts'
import type { Desk } from './desk.ts'
import type { Destination } from './destination.ts'

/** A press of a button, or a choice from a list: what of it every listener needs. */
export interface Press {
  readonly desk: Desk
  readonly client: WebClient
  readonly value: string
  /** Names the button in its message, the same for every tap of it. */
  readonly button: string
  /** Good for one modal, for three seconds. */
  readonly trigger: string
  /** Where an answer goes. */
  readonly to: Destination
  /** The view it was pressed in, when it was in no message. */
  readonly view?: { readonly id: string; readonly type: string } | undefined
  /** True in a message that everybody sees. */
  readonly isPublic: boolean
}

/** Reads what Slack sends with a press. A press in a view belongs to the channel that is noted in the view. */
export function readPress(desk: Desk, body: BlockAction, client: WebClient, team: string): Press {
  const { user, container, view, trigger_id: trigger, response_url: url } = body
  const [action] = body.actions
  const response: ResponseUrl | undefined = url
    ? createResponseUrl(url, desk.parts.now, desk.pause)
    : undefined
  const channel = body.channel?.id ?? channelOf(view?.private_metadata) ?? user.id
  const thread: unknown = container.thread_ts
  const value = chosenIn(action ?? {})
  return {
    desk,
    client,
    value,
    button: nameOfButton(team, channel, String(container.message_ts ?? ''), value),
    trigger,
    to: {
      client,
      team,
      channel,
      user: user.id,
      name: nameOf(user),
      response,
      ...(typeof thread === 'string' && { thread }),
    },
    view: view && { id: view.id, type: view.type },
    isPublic: container.type === 'message' && container.is_ephemeral !== true,
  }
}

const nameOfButton = (...parts: readonly string[]): string =>
  createHash('sha256').update(JSON.stringify(parts)).digest('base64url')

/** The channel noted in a view. */
export function channelOf(metadata: string | undefined): string | undefined {
  const noted = metadata ? (JSON.parse(metadata) as { channel?: unknown }).channel : undefined
  return typeof noted === 'string' ? noted : undefined
}

/** Of a button, of a choice from a list, of a chosen conversation. */
function chosenIn(action: object): string {
  const { value, selected_option, selected_conversation } = action as {
    value?: string
    selected_option?: { value?: string } | null
    selected_conversation?: string | null
  }
  return value ?? selected_option?.value ?? selected_conversation ?? ''
}

/** What somebody is called, as an event has it. */
const nameOf = ({
  name,
  username,
}: {
  readonly name?: string | undefined
  readonly username?: string
}): string | undefined => name ?? username
