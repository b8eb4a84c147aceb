import { request } from 'node:http'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createServer } from 'node:net'
import { limits } from '../../../src/platforms/web/limits.ts'
import { type Caller, caller } from './caller.ts'
import { type OpenWebRoom, openWebRoom } from './webRoom.ts'

let room: OpenWebRoom
let ann: Caller

beforeAll(async () => {
  room = await openWebRoom()
  ann = await caller(room.url)
}, 60_000)
afterAll(() => room.close())

/** The status of a plain request with these headers; `fetch` does not let a host be made up. */
const statusWith = (path: string, headers: Readonly<Record<string, string>>, method = 'GET') =>
  new Promise<number>((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port: room.port, path, method, headers }, (response) => {
      response.resume()
      resolve(response.statusCode ?? 0)
    })
    sent.on('error', reject).end()
  })

describe('the page', () => {
  it('comes with a policy that runs no script but its own', async () => {
    const response = await ann.get('/')
    expect(response.status).toBe(200)
    const policy = response.headers.get('content-security-policy') ?? ''
    expect(policy).toContain("default-src 'none'")
    expect(policy).toContain("script-src 'self'")
    expect(policy).toContain("frame-ancestors 'none'")
    expect(policy).not.toMatch(/unsafe|https?:|\*/u)
    expect(response.headers.get('x-content-type-options')).toBe('nosniff')
    const html = await response.text()
    expect(html).not.toMatch(/<script(?![^>]* src=)|<style|\son\w+=|\sstyle=|javascript:/u)
  })

  it.each([
    ['/room.js', 200, 'javascript'],
    ['/card.css', 200, 'text/css'],
    ['/icon.svg', 200, 'image/svg'],
    ['/tsconfig.json', 404, 'json'],
    ['/client.ts', 404, 'json'],
    ['/..%2fclient.ts', 404, 'json'],
    ['/%2e%2e/%2e%2e/%2e%2e/package.json', 404, 'json'],
    ['/nothing', 404, 'json'],
  ])('gives out only what is the page: %s', async (path, status, type) => {
    const response = await ann.get(path)
    expect([response.status, response.headers.get('content-type')]).toEqual([
      status,
      expect.stringContaining(type),
    ])
  })

  it('gives a browser a number that no script can read, once', async () => {
    const first = await fetch(room.url)
    expect(first.headers.get('set-cookie')).toMatch(
      /^battenbot_browser=[0-9a-f-]{36}; .*HttpOnly; SameSite=Strict/u,
    )
    expect((await ann.get('/')).headers.get('set-cookie')).toBeNull()
  })
})

describe('who may ask', () => {
  it.each(['evil.example', 'evil.example:80', '127.0.0.1.evil.example', '192.168.1.9'])(
    'not a page that reaches this machine as %j',
    async (host) => {
      expect(await statusWith('/', { host })).toBe(403)
      expect(await statusWith('/room/welcome', { host })).toBe(403)
    },
  )

  it.each(['127.0.0.1', 'localhost', 'LOCALHOST', '[::1]'])('this machine as %s', async (host) => {
    expect(await statusWith('/room/welcome', { host: `${host}:${room.port}` })).toBe(200)
  })

  it.each(['https://evil.example', 'null', 'http://127.0.0.1:1', 'http://localhost'])(
    'nothing that another page sends, as %s',
    async (origin) => {
      const response = await ann.post('/room/lines', { line: 'help' }, { origin })
      expect(response.status).toBe(403)
    },
  )

  it('nothing that does not say which page sent it', async () => {
    const headers = { host: `127.0.0.1:${room.port}`, 'content-type': 'application/json' }
    expect(await statusWith('/room/lines', headers, 'POST')).toBe(403)
  })

  it.each(['cross-site', 'same-site'])('no picture, script or fetch of a page that is %s', async (site) => {
    const header = { 'sec-fetch-site': site, 'sec-fetch-mode': 'no-cors' }
    expect((await ann.get('/room/welcome', header)).status).toBe(403)
    expect((await ann.get('/room.js', header)).status).toBe(403)
  })

  it('a person who follows a link from anywhere', async () => {
    const header = { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' }
    expect(await statusWith('/?channel=bench', { host: `localhost:${room.port}`, ...header })).toBe(200)
  })

  it('only with a name and a channel', async () => {
    for (const who of [{ name: '' }, { name: ' \u200b ' }, { name: 'x'.repeat(41) }, { channel: '../etc' }]) {
      const response = await ann.post('/room/lines', { line: 'help', ...who })
      expect([response.status, await response.json()]).toEqual([
        400,
        { error: expect.stringMatching(/^a name has 1 to 40/u) },
      ])
    }
  })
})

describe('what is sent', () => {
  it('is read as JSON and nothing else', async () => {
    for (const type of [
      'text/plain',
      'application/x-www-form-urlencoded',
      'multipart/form-data; boundary=x',
    ]) {
      const response = await ann.post('/room/lines', '{"line":"help"}', { 'content-type': type })
      expect(response.status).toBe(415)
    }
    expect((await ann.post('/room/lines', '{"line":')).status).toBe(400)
    expect((await ann.post('/room/lines', '{"line":"help"}')).status).toBe(400)
    expect((await ann.post('/room/lines', { line: 7 })).status).toBe(400)
  })

  it('is no longer than the room reads', async () => {
    const response = await ann.post('/room/lines', { line: 'x'.repeat(limits.bodyBytes) })
    expect(response.status).toBe(413)
    // The longest that comes through is refused by the bot, in a sentence.
    const entry = await ann.ask('x'.repeat(3000))
    expect(entry.card.error).toContain('2000 is the most')
  })

  it('is refused when there is too much of it in a minute', async () => {
    const busy = await openWebRoom()
    const ben = await caller(busy.url)
    const statuses = []
    for (let sent = 0; sent <= limits.linesPerMinute; sent += 1)
      statuses.push((await ben.post('/room/shared', { id: 'none' })).status)
    expect(statuses.filter((status) => status === 429)).toHaveLength(1)
    expect(statuses.at(-1)).toBe(429)
    await busy.close()
  })
})

describe('where it listens', () => {
  it('is the next free port where the one wanted is taken, and it says so', async () => {
    const other = createServer()
    await new Promise<void>((ready) => other.listen(0, '127.0.0.1', ready))
    const { port } = other.address() as { port: number }
    const next = await openWebRoom({ port })
    expect(next.port).toBeGreaterThan(port)
    expect(next.web.health()).toEqual({
      well: true,
      says: `the room is open at http://127.0.0.1:${next.port} (port ${port} is taken)`,
    })
    await next.close()
    expect(next.web.health()).toEqual({ well: false, says: 'the room in the browser is closed' })
    await expect(openWebRoom({ port, tries: 1 })).rejects.toThrow(`ports ${port} to ${port} are taken`)
    await new Promise((closed) => other.close(closed))
  })

  it('is open to a network only when told, by an address in digits or a name it was given', async () => {
    const club = await openWebRoom({ host: '0.0.0.0', names: ['shed.local'] })
    const status = (host: string) =>
      new Promise<number>((resolve) => {
        request({ host: '127.0.0.1', port: club.port, path: '/', headers: { host } }, (response) => {
          response.resume()
          resolve(response.statusCode ?? 0)
        }).end()
      })
    expect(await status(`192.168.1.9:${club.port}`)).toBe(200)
    expect(await status(`[fe80::1]:${club.port}`)).toBe(200)
    expect(await status(`shed.local:${club.port}`)).toBe(200)
    expect(await status(`evil.example:${club.port}`)).toBe(403)
    expect(club.url).toBe(`http://127.0.0.1:${club.port}`)
    await club.close()
  })
})
