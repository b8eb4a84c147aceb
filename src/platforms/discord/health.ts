import { type Client, Events, Status } from 'discord.js'
import type { Health } from '../../bot/request.ts'
import { closedWhy } from './trouble.ts'

/**
 * Whether every connection hears. The client itself stays "ready" after a connection was closed for good, so each one is
 * looked at.
 */
export function createHealth(client: Client): () => Health {
  const closed = new Map<number, string>()
  client.on(Events.ShardDisconnect, ({ code }, shard) => void closed.set(shard, closedWhy(code)))
  client.on(Events.ShardReady, (shard) => void closed.delete(shard))
  client.on(Events.ShardResume, (shard) => void closed.delete(shard))
  return () => {
    const [why] = closed.values()
    if (why !== undefined) return { well: false, says: why }
    const shards = [...client.ws.shards.values()]
    const ready = shards.filter(({ status }) => status === Status.Ready).length
    if (shards.length === 0) return { well: false, says: 'not connected to Discord' }
    const connections = `${ready} of ${shards.length} connections to Discord`
    return ready === shards.length
      ? { well: true, says: `${connections} hear` }
      : { well: false, says: `${connections} hear; the others are being opened` }
  }
}
