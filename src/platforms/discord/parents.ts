import type { Client } from 'discord.js'
import { GatewayDispatchEvents } from 'discord-api-types/v10'

/** Threads of events still to be handled; more than this and the oldest is forgotten. */
const MOST = 1000

/**
 * The channel that the thread of an interaction hangs from. The event says so itself; the client only knows it where the
 * bot is in the server.
 */
export function createParents(client: Client): (interactionId: string) => string | undefined {
  const parents = new Map<string, string>()
  client.ws.on(GatewayDispatchEvents.InteractionCreate, (event: unknown) => {
    const { id, channel } = event as { id: string; channel?: { type: number; parent_id?: string | null } }
    if (!channel?.parent_id || !THREADS.includes(channel.type)) return
    parents.set(id, channel.parent_id)
    const [oldest] = parents.keys()
    if (parents.size > MOST && oldest !== undefined) parents.delete(oldest)
  })
  return (id) => {
    const parent = parents.get(id)
    parents.delete(id)
    return parent
  }
}

/** Announcement, public and private threads; an ordinary channel's parent is only its heading. */
const THREADS = [10, 11, 12]
