import { type Client, DefaultRestOptions, Events, type RESTOptions } from 'discord.js'
import { closedWhy, saysWhy } from './trouble.ts'

/** Connects, for as long as it takes; rejects with one sentence where Discord refuses. */
export const connect = (client: Client, token: string): Promise<void> =>
  new Promise((resolve, reject) => {
    client.once(Events.ClientReady, () => resolve())
    client.once(Events.ShardDisconnect, ({ code }) => reject(new Error(closedWhy(code))))
    client
      .login(token)
      .catch((error: unknown) => reject(new Error(`Discord cannot be reached: ${saysWhy(error)}`)))
  })

/**
 * Resolves with `connected`. Rejects when Discord says nothing for `patience` milliseconds, or `signal` says that nobody waits
 * any more; the client goes on by itself all the same. Every connection that hears is progress: there may be many of them.
 */
export async function progressing(
  client: Client,
  connected: Promise<void>,
  { patience, signal }: { readonly patience: number; readonly signal: AbortSignal },
): Promise<void> {
  const done = new AbortController()
  try {
    const over = new Promise<never>((_, reject) => {
      const fail = (why: string) => reject(new Error(why))
      const timer = setTimeout(() => fail('Discord cannot be reached: it does not answer'), patience)
      const goesOn = () => timer.refresh()
      client.on(Events.ShardReady, goesOn)
      done.signal.addEventListener('abort', () => {
        clearTimeout(timer)
        client.off(Events.ShardReady, goesOn)
      })
      signal.addEventListener('abort', () => fail('Discord was closed while it was opened'), done)
    })
    await Promise.race([connected, over])
  } finally {
    done.abort()
  }
}

/**
 * Calls Discord as its client would, but does not ask any more where to connect to once `signal` is aborted: the client would
 * connect even after it was closed. Answers still go out.
 */
export const callsUntil =
  (signal: AbortSignal): RESTOptions['makeRequest'] =>
  (url, init) =>
    DefaultRestOptions.makeRequest(
      url,
      url.endsWith('/gateway/bot')
        ? { ...init, signal: init.signal ? AbortSignal.any([init.signal as AbortSignal, signal]) : signal }
        : init,
    )
