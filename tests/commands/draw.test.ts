import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { sceneOf } from '../../src/drawing/drawing.ts'
import { faultsOf } from '../drawing/legible.ts'
import { openRoom, type Room } from '../room.ts'

let room: Room
let empty: Room
beforeAll(async () => {
  room = await openRoom({ settings: { units: 'inch' } })
  empty = await openRoom({ settings: { units: 'inch' } })
  await room.ask('project start 17in x 13in height=15in sheet=1/2in braces=ends grooves=5')
})
afterAll(() => Promise.all([room.close(), empty.close()]))

/** Names of the pictures of a line; each is looked at for faults. */
async function shown(line: string): Promise<readonly string[]> {
  const { pictures = [] } = await room.reply(line)
  for (const { scene, alt } of pictures) {
    expect(faultsOf(sceneOf(scene))).toEqual([])
    expect(alt).toMatch(/\d/u)
  }
  return pictures.map(({ name }) => name)
}

describe('draw', () => {
  it.each([
    ['draw', ['box']],
    ['draw box', ['box']],
    ['draw end', ['end-panel']],
    ['draw side', ['side-panel']],
    ['draw corner', ['corner']],
    ['draw brace', ['end-brace']],
    ['draw strips', ['rips']],
    ['draw grooves', ['side-grooves', 'end-grooves']],
    ['draw layout', ['sheet-1', 'strips']],
  ])('%s', async (line, names) => {
    expect(await shown(line)).toEqual(names)
    expect((await room.reply(line)).figures).toEqual({ pictures: names })
  })

  it('tells all that the picture shows: its first sentence in the first line, the rest below', async () => {
    for (const what of ['box', 'end', 'corner', 'strips', 'layout']) {
      const { answer, notes = [], pictures } = await room.reply(`draw ${what}`)
      const [also, ...told] = [...notes].reverse()
      expect(also).toMatch(/^also: draw /u)
      const rest = told.reverse()
      expect(`${answer}.`).not.toMatch(/\. [\p{L}\d]/u)
      if (what !== 'box') expect(told).not.toEqual([])
      const said = rest.length > 0 ? `${answer}. ${rest.join(' ')}` : answer
      expect(said.replace(/\.$/u, '')).toBe(pictures?.[0]?.alt.replace(/\.$/u, ''))
    }
    expect((await room.reply('draw corner')).pictures?.[0]?.alt).toContain('1/2 in thick')
  })

  it('says how to begin where there is nothing to draw', async () => {
    expect(await empty.refusal('draw box')).toMatch(/^invalid: this channel has no project to draw yet/u)
    await empty.ask('project start 17in x 13in height=15in')
    expect(await empty.refusal('draw brace')).toContain('project change braces=ends')
    expect(await empty.refusal('draw grooves')).toContain('project change grooves=5')
    expect(await empty.refusal('draw lid')).toContain(
      'this plan has no lid; add one with: project change lid=inset',
    )
    expect(await empty.refusal('draw bottom')).toContain('project change bottom=cleats')
    expect(await empty.refusal('draw pudding')).toContain('pudding')
  })
})

describe('draw lid, draw bottom and the corner of a plan that has them', () => {
  it('show what the plan has, as the refusal says to add it', async () => {
    const own = await openRoom({ settings: { units: 'inch' } })
    await own.ask('project start 17in x 13in height=15in sheet=1/2in corner=bracketed')
    await own.ask('project change lid=inset handle=notch')
    await own.ask('project change bottom=cleats drain=1/2in')
    const lid = await own.reply('draw lid')
    expect(lid.answer).toMatch(/^The lid from above, \d/u)
    expect(lid.notes?.join()).toContain('A finger notch 4 x')
    const bottom = await own.reply('draw bottom')
    expect(bottom.figures).toEqual({ pictures: ['bottom'] })
    expect(bottom.notes?.join()).toMatch(
      /\d drain holes 1\/2 in across, their middles from the left end at \d/u,
    )
    const corner = await own.reply('draw corner')
    expect(corner.pictures?.[0]?.alt).toContain('steel bracket')
    for (const { pictures = [] } of [lid, bottom, corner])
      for (const { scene } of pictures) expect(faultsOf(sceneOf(scene))).toEqual([])
    await own.close()
  })

  it('has the screws that the plan is fastened with', async () => {
    const own = await openRoom({ settings: { units: 'inch' } })
    await own.ask('project start 17in x 13in height=15in sheet=1/2in corner=cleated strip=3/4in')
    const { figures } = await own.reply('fasteners')
    const { joints } = figures as unknown as {
      joints: readonly { kind: string; name: string; length: number }[]
    }
    const [screw] = joints.filter(({ kind }) => kind === 'screw')
    if (!screw) throw new Error('no screw')
    const { pictures } = await own.reply('draw corner')
    expect(pictures?.[0]?.scene).toMatchObject({
      asked: { screw: { name: screw.name, length: screw.length * 1_000_000 } },
    })
    await own.close()
  })
})

describe('replies with pictures', () => {
  it.each([
    ['sizing 17in x 13in height=15in', ['box']],
    ['project', ['box']],
    ['project parts', ['side-panel', 'end-panel']],
    ['diagonal 46in x 29in strip=3 1/2in', ['brace']],
    ['grooves 23 7/8in count=5 thickness=15/32in', ['grooves']],
    ['strips 2x6 rip=1/2in', ['rips']],
    ['spacing 36in piece=3 1/2in count=6', ['spacing']],
    ['square 24in x 18in rising=30in falling=30 1/8in', ['square']],
    ['fit 1/32in', ['fit']],
    ['layout', ['sheet-1', 'strips']],
    ['cutorder', ['sheet-1']],
  ])('%s', async (line, names) => {
    expect(await shown(line)).toEqual(names)
  })
})
