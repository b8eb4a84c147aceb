import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Who } from '../../room.ts'
import {
  blocksOf,
  labelNames,
  openPrintingRoom,
  type PrintingRoom,
  tablesOf,
  textsOf,
  titlesOf,
} from '../printing.ts'

const ANN: Who = { user: 'u1', name: 'Ann' }
const BOB: Who = { user: 'u2', name: 'Bob' }
const CY: Who = { user: 'u3', name: 'Cy' }

let printing: PrintingRoom
beforeAll(async () => {
  printing = await openPrintingRoom()
  const { room } = printing
  await room.reply('project start 17in x 13in height=15in sheet=1/2in', ANN)
  await room.reply('group open Spring planters date=Saturday 9 May places=4', ANN)
  await room.reply('group join', BOB)
  await room.reply('group join object=14in x 12in height=12in braces=ends', CY)
  await room.reply('group set spare=10', ANN)
  await room.reply('group need clamps count=8', ANN)
  await room.reply('group claim clamps count=2', BOB)
})
afterAll(() => printing.room.close())

describe('group handout', () => {
  it('is for members and organisers', async () => {
    expect(await printing.room.refusal('group handout', { user: 'stranger' })).toMatch(/you have not joined/u)
    expect((await printing.room.reply('group handout labels', BOB)).files).toHaveLength(1)
    expect(await printing.room.refusal('group handout', { channel: 'elsewhere' })).toMatch(
      /no group in this channel/u,
    )
  })

  it('prints every row once with its owners, a page for each kit, and a label for each piece', async () => {
    const { room, last } = printing
    const reply = await room.reply('group handout', BOB)
    const { handout, pages } = last()
    const rows = tablesOf(handout, 'Cut list').flatMap((table) => table.rows)
    const labels = rows.map(([, label]) => String(label))
    expect(new Set(labels).size).toBe(labels.length)
    expect(labels).toHaveLength(Number(reply.figures.rows))
    const counted = rows.reduce((sum, [, , count]) => sum + Number(count), 0)
    expect(counted).toBe(reply.figures.parts)
    expect(reply.figures.labels).toBe(counted)
    const names = labelNames(handout)
    expect(names).toHaveLength(counted)
    expect(new Set(names).size).toBe(counted)
    expect(names).toEqual(expect.arrayContaining(['K01-A1', 'K01-B2', 'K02-C4']))
    // What the owners of a row have, with its spares, is the count of the row.
    for (const [, label, count, ...others] of rows) {
      const whose = String(others.at(-1)).split(', ')
      const sum = whose.reduce((total, each) => total + Number(/^(\d+) /u.exec(each)?.[1] ?? 1), 0)
      expect(sum, String(label)).toBe(Number(count))
    }
    const texts = textsOf(pages)
    expect(texts).toEqual(expect.arrayContaining(['K01 Bob', 'K02 Cy']))
    for (const name of names) expect(texts.filter((text) => text === name)).toHaveLength(1)
    expect(reply.figures.pages).toBe(pages.length)
    expect(reply.audience).toBe('channel')
  })

  it('has the list, layouts and order of all, and who brings what', async () => {
    const { room, last } = printing
    await room.reply('group handout paper=a4', ANN)
    const { handout } = last()
    expect(titlesOf(handout)).toEqual([
      'Cut list',
      'Before you start',
      'Layouts',
      'Whose each piece of a sheet is',
      'Cut order',
      'Stations',
      'Who brings what',
      'K01  Bob',
      'K02  Cy',
      'Part labels',
    ])
    expect(tablesOf(handout, 'Who brings what')[0]?.rows).toEqual([[{ boxes: 1 }, '6', 'clamps', 'Bob 2']])
    expect(blocksOf(handout, 'K01  Bob').find(({ block }) => block === 'points')).toMatchObject({
      items: expect.arrayContaining(['brings: 2 clamps']),
    })
    // Each part of a kit names the row of the list that it is cut with.
    const kit = tablesOf(handout, 'K02  Cy').flatMap(({ rows }) => rows)
    const listed = new Set(
      tablesOf(handout, 'Cut list').flatMap(({ rows }) => rows.map(([, label]) => label)),
    )
    expect(kit.length).toBeGreaterThan(5)
    for (const row of kit) expect(listed.has(row.at(-1) ?? '')).toBe(true)
  })

  it('says of every piece of every sheet whose it is, as the labels do', async () => {
    const { room, last } = printing
    await room.reply('group handout', ANN)
    const { handout } = last()
    const rows = tablesOf(handout, 'Whose each piece of a sheet is').flatMap((table) => table.rows)
    const printed = rows.flatMap((row) => String(row.at(-1)).split(', '))
    const panels = labelNames(handout).filter((name) => /^K0[12]-[AB]\d?$/u.test(name))
    expect([...printed].sort()).toEqual([...panels].sort())
    const { files = [], figures } = await room.reply('group layout', ANN)
    expect(files[0]?.name).toBe('group-layout.csv')
    const [heading = '', ...pieces] = String(files[0]?.content).trim().split('\r\n')
    expect(heading).toBe('from,thickness in,way,number,stock,part,whose')
    expect(pieces.map((line) => line.split(',').at(-1)).sort()).toEqual([...labelNames(handout)].sort())
    expect(rows).toHaveLength(Number(figures.sheets))
  })

  it('has the day by station, with a box for each kit that is ticked where it is done', async () => {
    const { room, last } = printing
    await room.reply('group tick break down kits=K02', CY)
    const { answer } = await room.reply('group stations', ANN)
    await room.reply('group handout', ANN)
    const { handout } = last()
    const [work, ticks] = tablesOf(handout, 'Stations')
    expect(blocksOf(handout, 'Stations')[0]).toMatchObject({ block: 'words', text: answer })
    expect(work?.columns.map(({ heading }) => heading)).toEqual([
      'Station',
      'Pieces',
      'Saw settings',
      'Minutes',
      'People',
    ])
    const places = ['break down', 'rip', 'crosscut', 'assemble', 'finish']
    expect(work?.rows.map(([station]) => station)).toEqual(places)
    expect(ticks?.rows).toEqual([
      ['K01', ...places.map(() => ({ boxes: 1 }))],
      ['K02', { boxes: 1, ticked: 1 }, ...places.slice(1).map(() => ({ boxes: 1 }))],
    ])
  })

  it('has the fences of what is grooved, which the cut order does not', async () => {
    const { room, last } = printing
    const there = { ...ANN, channel: 'grooved' }
    await room.reply('project start 17in x 13in height=15in sheet=1/2in grooves=2', there)
    await room.reply('group open Grooved', there)
    await room.reply('group join', there)
    await room.reply('group handout', there)
    const table = tablesOf(last().handout, 'Stations')[1]
    expect(table?.title).toMatch(/^Groove\. /u)
    expect(table?.rows.length).toBeGreaterThan(0)
  })

  it('is named by the version that is posted', async () => {
    const { room } = printing
    expect((await room.reply('group handout parts', ANN)).answer).toMatch(/, draft \d+, not posted$/u)
    await room.reply('group post', ANN)
    await room.reply('group lock', ANN)
    const { answer, files } = await room.reply('group handout labels', ANN)
    expect(answer).toMatch(/, list version 1, locked$/u)
    expect(files?.[0]?.name).toBe('group-labels-v1.pdf')
    const csv = await room.reply('group handout parts', ANN)
    expect([csv.files?.[0]?.name, csv.files?.[0]?.type]).toEqual(['group-parts-v1.csv', 'text/csv'])
  })
})
