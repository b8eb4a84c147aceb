import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { PassThrough, Readable } from 'node:stream'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { showIn } from '../../../src/bot/show.ts'
import { ask } from '../../../src/platforms/ask/client.ts'
import { keepBoard } from '../../../src/platforms/board.ts'
import { createBoards } from '../../../src/platforms/web/boards.ts'
import { createLive } from '../../../src/platforms/web/live.ts'
import { createKeeping } from '../../../src/store/keeping.ts'
import { openSqlite } from '../../../src/store/sqlite.ts'
import { createGate } from '../../gate.ts'
import { openRoom } from '../../room.ts'
import { enter, hasBrowser, inBrowser, openBrowser, PATIENT } from './browser.ts'
import { type Caller, caller } from './caller.ts'
import { type OpenWebRoom, openWebRoom } from './webRoom.ts'

const settings = { units: 'inch', tape: 16, millimetreStep: 1 } as const

let room: OpenWebRoom

beforeAll(async () => {
  room = await openWebRoom()
}, 60_000)
afterAll(() => room.close())

/** Types lines in a terminal, over the same data folder with a store of its own. */
async function inTerminal(channel: string, ...lines: readonly string[]): Promise<string> {
  const store = await openSqlite(join(room.folder, 'battenbot.sqlite'))
  const terminal = await openRoom({ store })
  const log = { error: () => undefined, warn: () => undefined, info: () => undefined }
  const keeping = createKeeping(store, 'room', () => new Date())
  const output = new PassThrough()
  const options = { line: undefined, json: false, channel, user: 'Tess' }
  const input = Readable.from([lines.join('\n')])
  await ask(options, keepBoard(terminal.answer, { keeping, log }), input, output)
  await terminal.close()
  return String(output.read())
}

const GROUP = [
  'project start 17in x 13in height=15in',
  'group open Spring planters',
  'group join',
  'group post',
]

interface Posted {
  readonly notice: string
  readonly card: { readonly answer: string; readonly files: readonly { content: string; name: string }[] }
}
interface History {
  readonly entries: readonly { readonly line: string }[]
  readonly posted: readonly Posted[]
}

/** What a page is shown first. */
async function opened(who: Caller): Promise<History> {
  const live = await who.live()
  const { body } = await live.next()
  live.close()
  return body as History
}

/** What was said in all channels, as it lies on the disk. */
const onDisk = () => readFile(join(room.folder, 'room/transcript.jsonl'), 'utf8')

describe('what is put up in a terminal', () => {
  it('stands in the browser, comes to pages that are open, and has its file', async () => {
    const ann = await caller(room.url, 'Ann', 'club')
    const live = await ann.live()
    expect((await live.next()).body).toMatchObject({ posted: [] })
    expect(await inTerminal('club', ...GROUP)).toContain('Version 1 is up')
    expect(await live.nextOf('posted')).toMatchObject({
      notice: 'group',
      card: { ok: true, answer: expect.stringMatching(/^Spring planters\. Cut .* for 1 kit, version 1$/u) },
    })
    await inTerminal('club', 'group change height=16in')
    expect(await live.nextOf('posted')).toMatchObject({
      card: { answer: expect.stringMatching(/version 2$/u) },
    })
    live.close()

    const { posted } = await opened(await caller(room.url, 'Ben', 'club'))
    expect(posted.map(({ card }) => card.answer)).toEqual([expect.stringMatching(/version 2$/u)])
    const [file] = posted[0]?.card.files ?? []
    const csv = await ann.get(`/kept/${file?.content}/${file?.name}`)
    expect([csv.status, await csv.text()]).toEqual([200, expect.stringMatching(/^part,what,from,/u)])
  })

  it('is changed from the browser, and back', async () => {
    await inTerminal('both', ...GROUP)
    const ann = await caller(room.url, 'Ann', 'both')
    const live = await ann.live()
    expect(((await live.next()).body as History).posted).toHaveLength(1)
    await ann.ask('group join height=12in')
    expect(await live.nextOf('posted')).toMatchObject({
      card: { answer: expect.stringContaining('for 2 kits, version 2') },
    })
    await inTerminal('both', 'group close sure=yes')
    expect(await live.nextOf('posted')).toMatchObject({
      card: { answer: 'Spring planters is closed. Its list, last version 2, is kept no more' },
    })
    live.close()
  })

  it('is nothing that the record of what was said holds', async () => {
    const ann = await caller(room.url, 'Ann', 'apart')
    await inTerminal('apart', ...GROUP)
    await ann.ask('group join height=12in')
    expect((await opened(ann)).posted).toHaveLength(1)
    const lines = (await onDisk()).split('\n').filter((line) => line.includes('"channel":"apart"'))
    expect(lines.map((line) => (JSON.parse(line) as { entry: { line: string } }).entry.line)).toEqual([
      'group join height=12in',
    ])
    expect(lines.join()).not.toContain('Spring planters. Cut')
  })
})

describe('two looks at once', () => {
  it('show the newer board, whichever comes first', async () => {
    const store = await openSqlite(':memory:')
    const keeping = createKeeping(store, 'room', () => new Date())
    const log = { error: () => undefined, warn: () => undefined, info: () => undefined }
    const pictures = [{ name: 'front', alt: 'The front', scene: { width: 1, height: 1, shapes: [] } }]
    const list = (revision: number) =>
      keepBoard(
        async () => ({
          ok: true,
          reply: {
            answer: 'Done',
            figures: {},
            notice: { name: 'group', revision, reply: { answer: `List ${revision}`, figures: {}, pictures } },
          },
          show: showIn(settings, settings),
        }),
        { keeping, log },
      )({
        place: { platform: 'room', workspace: 'local', channel: 'race' },
        user: 'Ann',
        invocation: { line: 'group post' },
        at: new Date(),
      })
    const painting = [createGate(), createGate()]
    let painted = 0
    const heard: unknown[] = []
    const live = createLive()
    const visitor = { channel: 'race', name: 'Ann', owner: 'a', locale: undefined }
    live.join({ visitor, send: (event, body) => heard.push([event, body]), close: () => undefined })
    const boards = createBoards({
      keeping,
      paint: async () => {
        painted += 1
        await painting[painted - 1]?.promise
        return new Uint8Array()
      },
      log,
      live,
      channels: async () => [],
      forget: async () => undefined,
    })
    await boards.look('race')
    await list(1)
    const older = boards.look('race')
    await vi.waitFor(() => expect(painted).toBe(1))
    await list(2)
    painting[1]?.release()
    const newer = await boards.look('race')
    painting[0]?.release()
    const answers = [newer, await older].map((posted) => posted.map(({ card }) => card.ok && card.answer))
    expect(answers).toEqual([['List 2'], ['List 2']])
    expect(heard).toMatchObject([['posted', { card: { answer: 'List 2' } }]])
    await store.close()
  })
})

describe('a plan that is deleted in a terminal', () => {
  it('takes along what was asked of it in the browser before, at once where a page is open', async () => {
    const [ann, ben] = [await caller(room.url, 'Ann', 'plan'), await caller(room.url, 'Ben', 'plan')]
    const { id } = await ann.ask('project start 17in x 13in height=15in')
    await ben.ask('convert 1in')
    const elsewhere = await caller(room.url, 'Ann', 'kept')
    await elsewhere.ask('units')
    const live = await ann.live()
    await live.next()
    await inTerminal('plan', 'project forget')
    await inTerminal('plan', 'project forget sure=yes')
    expect(((await live.nextOf('forgotten')) as { ids: string[] }).ids).toContain(id)
    await live.nextOf('changed')
    await ben.ask('units')
    live.close()
    expect((await opened(ann)).entries).toEqual([])
    expect((await opened(ben)).entries.map(({ line }) => line)).toEqual(['units'])
    expect((await opened(elsewhere)).entries).toHaveLength(1)
    expect(await onDisk()).not.toContain('convert 1in')
  })

  it('is followed at the next start, though nobody opens a page', async () => {
    const ann = await caller(room.url, 'Ann', 'alone')
    await ann.ask('convert 77in')
    await room.close()
    await inTerminal('alone', 'project forget sure=yes')
    expect(await onDisk()).toContain('convert 77in')
    room = await openWebRoom({ folder: room.folder })
    await vi.waitFor(async () => expect(await onDisk()).not.toContain('convert 77in'), PATIENT)
  })
})

describe.skipIf(!hasBrowser)(inBrowser('a page that is open'), { timeout: 90_000 }, () => {
  let browser: Browser
  beforeAll(async () => {
    browser = await openBrowser()
  }, PATIENT.timeout * 4)
  afterAll(() => browser.close())

  it('shows what is put up in a terminal', async () => {
    const { page, complaints } = await enter(browser, room.url, 'Ann', 'page', {
      width: 1280,
      isTouched: false,
    })
    await inTerminal('page', ...GROUP)
    await page.locator('#board h3').filter({ hasText: 'version 1' }).waitFor()
    await inTerminal('page', 'group change height=16in')
    await page.locator('#board h3').filter({ hasText: 'version 2' }).waitFor()
    expect(await page.locator('#board .posted').count()).toBe(1)
    expect(complaints).toEqual([])
  })
})
