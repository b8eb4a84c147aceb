/** The longest wait that Slack may ask for before a request is given up. */
const LONGEST_WAIT = 60

const TRIES = 3

/** Resolves after so many milliseconds, or when `signal` says that it is over. */
export type Pause = (milliseconds: number, signal?: AbortSignal) => Promise<void>

/** Waits on the clock of the machine. */
export const pause: Pause = (milliseconds, signal) =>
  new Promise((resolve) => {
    const timer = setTimeout(resolve, milliseconds)
    signal?.addEventListener('abort', () => {
      clearTimeout(timer)
      resolve()
    })
  })

/**
 * POSTs, and where Slack says 429 waits as long as its `Retry-After` asks and tries again, three times in all. Any other
 * answer is returned as it is. Rejects when Slack is not reached within 10 s.
 */
export async function patientFetch(
  url: string,
  body: string | Uint8Array<ArrayBuffer>,
  type: string,
  wait: Pause = pause,
): Promise<globalThis.Response> {
  for (let tries = 1; ; tries += 1) {
    const response = await fetch(url, {
      method: 'POST',
      headers: { 'content-type': type },
      body,
      signal: AbortSignal.timeout(10_000),
    })
    if (response.status !== 429 || tries === TRIES) return response
    await response.body?.cancel()
    await wait(1000 * Math.min(LONGEST_WAIT, Number(response.headers.get('retry-after')) || 1))
  }
}
