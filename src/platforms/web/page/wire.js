/**
 * @typedef {{ readonly name: string, readonly channel: string }} Who
 * @typedef {import('../entry.ts').EntryView} EntryView
 * @typedef {import('../card.ts').Card} Card
 * @typedef {import('../posted.ts').Posted} Posted
 * @typedef {import('../registration.ts').Welcome} Welcome
 * @typedef {import('../../completions.ts').Completion} Completion
 */

/** How long to wait before a connection that was refused is tried again, in ms. */
const AGAIN = 3000

/**
 * Sends something to the room; throws with the sentence that it gives back where it was not taken.
 *
 * @param {string} what
 * @param {Readonly<Record<string, string>>} body
 * @returns {Promise<unknown>}
 */
async function send(what, body) {
  const answer = await fetch(`/room/${what}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  })
  return read(answer)
}

/**
 * @param {string} what
 * @param {Readonly<Record<string, string>>} [query]
 * @param {AbortSignal} [signal]
 * @returns {Promise<unknown>}
 */
const get = async (what, query = {}, signal) =>
  read(await fetch(`/room/${what}?${new URLSearchParams(query)}`, signal ? { signal } : {}))

/** @param {globalThis.Response} answer */
async function read(answer) {
  const body = await answer.json()
  if (answer.ok) return body
  throw new Error(answer.status === 429 ? 'too many lines at once; wait a minute' : body.error)
}

/** @param {Who} who @param {string} line */
export const ask = async (who, line) => /** @type {EntryView} */ (await send('lines', { ...who, line }))

/** @param {Who} who @param {string} id */
export const share = async (who, id) => /** @type {EntryView} */ (await send('shared', { ...who, id }))

/** @param {Who} who */
export const forget = async (who) => /** @type {{ count: number }} */ (await send('forgotten', { ...who }))

/** @param {Who} who */
export const project = async (who) => /** @type {Card} */ (await get('project', who))

/** @param {Who} who @param {string} line @param {AbortSignal} signal */
export const completions = async (who, line, signal) =>
  /** @type {readonly Completion[]} */ (await get('completions', { ...who, line }, signal))

export const welcome = async () =>
  /** @type {{ channels: readonly string[], begin: readonly Welcome[] }} */ (await get('welcome'))

/**
 * Keeps a connection to the room while the page is looked at, and calls what is to be done with what comes. Returns what
 * closes it for good.
 *
 * @param {Who} who
 * @param {{
 *   history: (entries: readonly EntryView[], posted: readonly Posted[]) => void,
 *   posted: (posted: Posted) => void,
 *   entry: (entry: EntryView) => void,
 *   changed: () => void,
 *   forgotten: (ids: readonly string[]) => void,
 *   lost: (isLost: boolean) => void,
 * }} hears
 */
export function listen(who, hears) {
  /** @type {EventSource | undefined} */
  let source
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let waiting
  const close = () => {
    clearTimeout(waiting)
    source?.close()
    source = undefined
  }
  const open = () => {
    close()
    const opened = new EventSource(`/room/live?${new URLSearchParams(who)}`)
    source = opened
    /** @param {string} name @param {(body: any) => void} hear */
    const on = (name, hear) => opened.addEventListener(name, (event) => hear(JSON.parse(event.data)))
    opened.addEventListener('open', () => hears.lost(false))
    opened.addEventListener('error', () => {
      hears.lost(true)
      if (opened.readyState === EventSource.CLOSED) waiting = setTimeout(open, AGAIN)
    })
    on('history', ({ entries, posted }) => hears.history(entries, posted))
    on('posted', hears.posted)
    on('entry', hears.entry)
    on('changed', hears.changed)
    on('forgotten', ({ ids }) => hears.forgotten(ids))
  }
  // A browser allows few connections to one room, so a page in the background gives its own up.
  const look = () => (document.hidden ? close() : open())
  document.addEventListener('visibilitychange', look)
  look()
  return () => {
    document.removeEventListener('visibilitychange', look)
    close()
  }
}
