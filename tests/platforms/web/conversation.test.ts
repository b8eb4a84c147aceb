import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import type { Notice } from '../../../src/bot/reply.ts'
import { createGate } from '../../gate.ts'
import { type Caller, caller } from './caller.ts'
import { type OpenWebRoom, openWebRoom } from './webRoom.ts'

let room: OpenWebRoom
let revision = 0

/** A notice that says the line, each of a revision of its own. */
const listed = (line: string): Notice => {
  revision += 1
  return { name: 'group', revision, reply: { answer: `The list: ${line}`, figures: {} } }
}

beforeAll(async () => {
  room = await openWebRoom({
    slots: (line) =>
      line.startsWith('convert')
        ? { notice: listed(line) }
        : line === 'help strips'
          ? {
              audience: 'channel',
              pictures: [
                { name: 'front', alt: 'The front, 18 in wide', scene: { width: 8, height: 6, shapes: [] } },
              ],
              files: [
                { name: 'cut list.csv', type: 'text/csv', content: 'part,long\nA,"18½"\n' },
                { name: 'bad.html', type: 'text/html', content: '<script>alert(1)</script>' },
              ],
            }
          : undefined,
  })
}, 60_000)
afterAll(() => room.close())

/** Everything that a newcomer with this name is shown first. */
async function history(who: Caller) {
  const live = await who.live()
  const { event, body } = await live.next()
  live.close()
  expect(event).toBe('history')
  return body as {
    you: string
    channel: string
    entries: { line: string; isMine: boolean; name: string }[]
    posted: { notice: string; card: { answer: string } }[]
  }
}
const lines = async (who: Caller) => (await history(who)).entries.map(({ line }) => line)

describe('what somebody asks', () => {
  it('is answered, and stays theirs until they show it', async () => {
    const [ann, ben] = [await caller(room.url, 'Ann', 'own'), await caller(room.url, 'Ben', 'own')]
    const live = await ben.live()
    await live.next()
    const entry = await ann.ask('strips 2x6 rip=1/2in')
    expect(entry).toMatchObject({ name: 'Ann', isMine: true, isShared: false, card: { ok: true } })
    expect(entry.card.answer).toMatch(/^9 strips of 1\/2 in/u)
    expect(await lines(ann)).toEqual(['strips 2x6 rip=1/2in'])
    expect(await lines(ben)).toEqual([])

    expect((await ben.post('/room/shared', { id: entry.id })).status).toBe(404)
    const shared = (await (await ann.post('/room/shared', { id: entry.id })).json()) as object
    expect(shared).toMatchObject({ id: entry.id, isShared: true })
    const shown = await live.nextOf('entry')
    live.close()
    expect(shown).toMatchObject({ id: entry.id, name: 'Ann', isMine: false, isShared: true })
    expect(JSON.stringify(shown)).not.toMatch(/owner/u)
    expect(await lines(ben)).toEqual(['strips 2x6 rip=1/2in'])
  })

  it('is not for whoever takes the same name in another browser', async () => {
    const [ann, other] = [await caller(room.url, 'Ann', 'name'), await caller(room.url, 'Ann', 'name')]
    await ann.ask('units')
    expect(await lines(ann)).toEqual(['units'])
    expect(await lines(other)).toEqual([])
  })

  it('stays in its channel', async () => {
    const ann = await caller(room.url, 'Ann', 'here')
    await ann.ask('units')
    expect(await lines(await caller(room.url, 'Ann', 'there'))).toEqual([])
  })

  it('is for everybody at once where the reply says so', async () => {
    const [ann, ben] = [await caller(room.url, 'Ann', 'all'), await caller(room.url, 'Ben', 'all')]
    const live = await ben.live()
    await live.next()
    await ann.ask('help strips')
    expect(await live.nextOf('entry')).toMatchObject({
      line: 'help strips',
      isMine: false,
      isShared: true,
    })
    live.close()
  })

  it('comes to each of their own pages', async () => {
    const ann = await caller(room.url, 'Ann', 'tabs')
    const live = await ann.live()
    await live.next()
    await ann.ask('units')
    expect(await live.nextOf('entry')).toMatchObject({ line: 'units', isMine: true })
    live.close()
  })

  it('can be deleted by them, and nothing else with it', async () => {
    const [ann, ben] = [await caller(room.url, 'Ann', 'gone'), await caller(room.url, 'Ben', 'gone')]
    const entry = await ann.ask('units')
    await ann.post('/room/shared', { id: entry.id })
    await ben.ask('help')
    const live = await ben.live()
    await live.next()
    expect(await (await ann.post('/room/forgotten', {})).json()).toEqual({ count: 1 })
    expect(await live.nextOf('forgotten')).toEqual({ ids: [entry.id] })
    live.close()
    expect(await lines(ben)).toEqual(['help'])
    expect(await lines(ann)).toEqual([])
  })

  it('goes with the plan of the channel, whoever asked it, but for what stands for everybody', async () => {
    const [ann, ben] = [await caller(room.url, 'Ann', 'plan'), await caller(room.url, 'Ben', 'plan')]
    const elsewhere = await caller(room.url, 'Ann', 'other-plan')
    await ann.ask('project start 17in x 13in height=15in')
    await elsewhere.ask('units')
    await ben.ask('convert 1in')
    const live = await ben.live()
    await live.next()
    await ann.ask('project forget')
    expect(await lines(ben)).toEqual(['convert 1in'])
    await ann.ask('project forget sure=yes')
    expect(((await live.nextOf('forgotten')) as { ids: string[] }).ids).toHaveLength(3)
    live.close()
    expect(await lines(ann)).toEqual(['project forget sure=yes'])
    expect(await history(ben)).toMatchObject({ entries: [], posted: [{ notice: 'group' }] })
    expect(await lines(elsewhere)).toEqual(['units'])
  })

  it('goes with who asked it, in every channel, and with nobody else', async () => {
    const [ann, ben] = [await caller(room.url, 'Cleo', 'first'), await caller(room.url, 'Ben', 'first')]
    const elsewhere = await caller(room.url, 'Cleo', 'second', ann)
    await ann.ask('units')
    await elsewhere.ask('help')
    await ben.ask('units')
    await ann.ask('forget me sure=yes')
    expect(await lines(ann)).toEqual(['forget me sure=yes'])
    expect(await lines(elsewhere)).toEqual([])
    expect(await lines(ben)).toEqual(['units'])
  })

  it('is kept over a restart, with who may see it', async () => {
    const first = await openWebRoom()
    const ann = await caller(first.url, 'Ann')
    await ann.ask('strips 2x6 rip=1/2in')
    await ann.ask('stripes')
    await first.close()
    const again = await openWebRoom({ folder: first.folder, port: first.port })
    expect(await lines(ann)).toEqual(['strips 2x6 rip=1/2in', 'stripes'])
    expect(await lines(await caller(again.url, 'Ben'))).toEqual([])
    await again.close()
  })

  it('is answered to the end when the room closes', async () => {
    const closing = await openWebRoom()
    const ann = await caller(closing.url)
    const asked = ann.ask('project start 17in x 13in height=15in')
    await new Promise((soon) => setTimeout(soon, 50))
    await Promise.all([closing.close(), asked.catch(() => {})])
    const again = await openWebRoom({ folder: closing.folder, port: closing.port })
    const plan = await (await ann.get('/room/project?name=Ann&channel=bench')).json()
    expect(plan).toMatchObject({ ok: true, answer: expect.stringContaining('Cut 2 end panels') })
    await again.close()
  })
})

describe('the project of a channel', () => {
  it('is told to all when somebody changes it, and not when it stays', async () => {
    const [ann, ben] = [await caller(room.url, 'Ann', 'plan'), await caller(room.url, 'Ben', 'plan')]
    await ann.ask('project start 17in x 13in height=15in')
    const live = await ben.live()
    await live.next()
    await ann.ask('units')
    await ann.ask('project change height=16in')
    expect(await live.next()).toEqual({ event: 'changed', body: {} })
    await ann.ask('project undo')
    expect(await live.next()).toEqual({ event: 'changed', body: {} })
    live.close()
  })

  it('is a sentence where there is none', async () => {
    const ann = await caller(room.url)
    const plan = await (await ann.get('/room/project?name=Ann&channel=empty')).json()
    expect(plan).toMatchObject({ ok: false, error: expect.stringContaining('no project yet') })
  })
})

describe('pictures and files', () => {
  it('are given out as what they are, and never as a page', async () => {
    const ann = await caller(room.url, 'Ann', 'files')
    const { card } = await ann.ask('help strips')
    const { pictures, files } = card as unknown as {
      pictures: { content: string; alt: string; width: number }[]
      files: { content: string; name: string; bytes: number }[]
    }
    expect(pictures).toMatchObject([{ alt: 'The front, 18 in wide', width: 8 }])
    const picture = await ann.get(`/kept/${pictures[0]?.content}/front.png`)
    expect(picture.headers.get('content-type')).toBe('image/png')
    expect(files.map(({ name, bytes }) => [name, bytes])).toEqual([
      ['cut list.csv', 19],
      ['bad.html', 25],
    ])
    const file = await ann.get(`/kept/${files[0]?.content}/cut%20list.csv`)
    expect(file.headers.get('content-disposition')).toBe("attachment; filename*=UTF-8''cut%20list.csv")
    expect(await file.text()).toBe('part,long\nA,"18½"\n')
    const page = await ann.get(`/kept/${files[1]?.content}/bad.html`)
    expect(page.headers.get('content-type')).toBe('application/octet-stream')
    expect(page.headers.get('content-disposition')).toMatch(/^attachment/u)
    expect((await ann.get(`/kept/${'0'.repeat(64)}/x.png`)).status).toBe(404)
    expect((await ann.get('/kept/..%2f..%2fbattenbot.sqlite/x')).status).toBe(400)
  })

  it('are said in words where they cannot be painted', async () => {
    const blind = await openWebRoom({
      paint: async () => {
        throw new Error('no paint left')
      },
      slots: () => ({ pictures: [{ name: 'a', alt: 'A box', scene: { width: 1, height: 1, shapes: [] } }] }),
    })
    const entry = await (await caller(blind.url)).ask('help')
    expect(entry.card.pictures).toEqual([{ name: 'a', alt: 'A box', width: 1, height: 1 }])
    expect(blind.logged.map(({ message }) => message)).toContain('a picture could not be painted')
    await blind.close()
  })
})

describe('what may come next', () => {
  it('is offered from the commands and the tables', async () => {
    const ann = await caller(room.url)
    const texts = async (line: string) => {
      const query = new URLSearchParams({ name: 'Ann', channel: 'bench', line })
      const found = (await (await ann.get(`/room/completions?${query}`)).json()) as { text: string }[]
      return found.map(({ text }) => text)
    }
    expect(await texts('si')).toEqual(['sizing'])
    expect(await texts('project st')).toEqual(['start'])
    expect(await texts('sizing 17in x 13in corner=ca')).toContain('captured')
    expect(await texts('sizing 17in x 13in hei')).toEqual(['height='])
    expect((await texts('sizing 17in x 13in sheet=3/4')).some((text) => /ply/u.test(text))).toBe(true)
    expect(await texts('nonsense ')).toEqual([])
  })
})

describe('a standing notice', () => {
  const standing = async (who: Caller) => (await history(who)).posted.map(({ card }) => card.answer)

  it('stands for everybody at once, one of each name, and over reloads', async () => {
    const [ann, ben] = [await caller(room.url, 'Ann', 'club'), await caller(room.url, 'Ben', 'club')]
    const live = await ben.live()
    await live.next()
    await ann.ask('convert 1in')
    expect(await live.nextOf('posted')).toMatchObject({
      notice: 'group',
      card: { ok: true, answer: 'The list: convert 1in' },
    })
    live.close()
    await ben.ask('convert 2in')
    expect(await standing(ann)).toEqual(['The list: convert 2in'])
    expect(await standing(await caller(room.url, 'Cy', 'club'))).toEqual(['The list: convert 2in'])
    expect(await standing(await caller(room.url, 'Cy', 'other-club'))).toEqual([])
  })

  it.each(['one desk', 'two desks over one store'])(
    'of an older list that comes after a newer one leaves the newer standing: %s',
    async (desks) => {
      const { promise, release } = createGate()
      const slots = (line: string) => ({ notice: listed(line) })
      const slow = await openWebRoom({
        slots,
        held: async (line) => (line === 'convert 1in' ? promise : undefined),
      })
      const quick = desks === 'one desk' ? slow : await openWebRoom({ slots, folder: slow.folder })
      const [ann, ben] = [await caller(slow.url, 'Ann'), await caller(quick.url, 'Ben')]
      const seen = revision
      const older = ann.ask('convert 1in')
      await vi.waitFor(() => expect(revision).toBeGreaterThan(seen))
      await ben.ask('convert 2in')
      release()
      await older
      if (quick !== slow) await quick.close()
      await slow.close()
      const anew = await openWebRoom({ folder: slow.folder })
      const { posted } = await history(await caller(anew.url, 'Cy'))
      await anew.close()
      expect(posted.map(({ card }) => card.answer)).toEqual(['The list: convert 2in'])
    },
  )

  it("is nobody's own: it stays when whoever put it up deletes what they asked", async () => {
    const ann = await caller(room.url, 'Ann', 'club-two')
    await ann.ask('convert 3in')
    expect(await (await ann.post('/room/forgotten', {})).json()).toEqual({ count: 1 })
    expect(await lines(ann)).toEqual([])
    expect(await standing(ann)).toEqual(['The list: convert 3in'])
  })
})
