/** One person at one browser, without a page: sends what the page would. */
export interface Caller {
  /** What tells the browser from others. */
  readonly cookie: string
  readonly get: (path: string, headers?: Readonly<Record<string, string>>) => Promise<globalThis.Response>
  readonly post: (
    path: string,
    body: unknown,
    headers?: Readonly<Record<string, string>>,
  ) => Promise<globalThis.Response>
  readonly ask: (line: string) => Promise<EntryRead>
  readonly live: () => Promise<Live>
}

export interface EntryRead {
  readonly id: string
  readonly name: string
  readonly line: string
  readonly isMine: boolean
  readonly isShared: boolean
  readonly card: { readonly ok: boolean; readonly answer?: string; readonly error?: string } & Record<
    string,
    unknown
  >
}

/** What comes to an open page, in order. */
export interface Live {
  /** The next event. */
  readonly next: () => Promise<{ readonly event: string; readonly body: unknown }>
  /** What the next event of this name holds, whatever comes before it. */
  readonly nextOf: (event: string) => Promise<unknown>
  readonly close: () => void
}

/** Somebody new at a room, with a browser of their own, or that of another caller. */
export async function caller(
  url: string,
  name = 'Ann',
  channel = 'bench',
  browser?: Caller,
): Promise<Caller> {
  const first = await fetch(`${url}/`, { headers: browser ? { cookie: browser.cookie } : {} })
  const cookie = browser?.cookie ?? first.headers.get('set-cookie')?.split(';')[0] ?? ''
  await first.arrayBuffer()
  const who = { name, channel }
  const get: Caller['get'] = (path, headers = {}) => fetch(url + path, { headers: { cookie, ...headers } })
  const post: Caller['post'] = (path, body, headers = {}) =>
    fetch(url + path, {
      method: 'POST',
      headers: { cookie, origin: url, 'content-type': 'application/json', ...headers },
      body: typeof body === 'string' ? body : JSON.stringify({ ...who, ...(body as object) }),
    })
  return {
    cookie,
    get,
    post,
    ask: async (line) => (await (await post('/room/lines', { line })).json()) as EntryRead,
    live: () => openLive(`${url}/room/live?${new URLSearchParams(who)}`, cookie),
  }
}

async function openLive(address: string, cookie: string): Promise<Live> {
  const stop = new AbortController()
  const response = await fetch(address, { headers: { cookie }, signal: stop.signal })
  if (!response.ok || !response.body) throw new Error(`live: ${response.status} ${await response.text()}`)
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader()
  let text = ''
  const next: Live['next'] = async () => {
    for (;;) {
      const end = text.indexOf('\n\n')
      if (end < 0) {
        const { value, done } = await reader.read()
        if (done) throw new Error('the connection was closed')
        text += value
        continue
      }
      const block = text.slice(0, end)
      text = text.slice(end + 2)
      const [, event, data] = /^event: (\w+)\ndata: (.*)$/u.exec(block) ?? []
      if (event && data) return { event, body: JSON.parse(data) as unknown }
    }
  }
  return {
    next,
    nextOf: async (event) => {
      for (;;) {
        const heard = await next()
        if (heard.event === event) return heard.body
      }
    },
    close: () => stop.abort(),
  }
}
