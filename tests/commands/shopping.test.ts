import { afterAll, describe, expect, it } from 'vitest'
import { tableLines, PHONE_COLUMNS } from '../../src/bot/format.ts'
import { itemKey } from '../../src/core/quantities/shoppingPrices.ts'
import { openRoom, type Who } from '../room.ts'
import { figuresOf, textOf } from './asking.ts'

const room = await openRoom({ settings: { search: { seconds: 0.4, queue: 32 } } })
afterAll(() => room.close())

interface Item {
  readonly item: string
  readonly need: number
  readonly have: number
  readonly buy: number
  readonly price: number | null
  readonly cost: number | null
}
interface Figures {
  readonly items: readonly Item[]
  readonly cost: number | null
  readonly spareCost: number | null
  readonly currency: string
  readonly missingPrices: readonly string[]
  readonly spares: readonly { item: string; buy: number; cost: number | null }[]
}

const shopping = async (line: string, who?: Who) => (await figuresOf(room, line, who)) as unknown as Figures

/** Counts of whole things by name, whatever order their words stand in. */
const counted = (
  rows: readonly (readonly [name: string, count: number])[],
): Readonly<Record<string, number>> => {
  const sums: Record<string, number> = {}
  for (const [name, count] of rows) sums[itemKey(name)] = (sums[itemKey(name)] ?? 0) + count
  return sums
}

const PLANS = [
  ['US', '17in x 13in height=15in'],
  ['US', '29in x 18in height=40in corner=cleated braces=all'],
  ['US', '17in round height=15in corner=bracketed lid=inset bottom=feet'],
  ['UK', '430mm x 330mm height=380mm corner=butted grooves=4'],
  ['EU', '600mm x 400mm height=500mm corner=halved bottom=cleats'],
  ['AU', '900mm x 500mm height=700mm braces=ends lid=overlapping'],
] as const

describe('the amounts are those that each command gives by itself', () => {
  it.each(PLANS)('%s: %s', async (region, plan) => {
    const who = { user: region, channel: `${region} ${plan}` }
    await room.reply(`units region=${region}`, who)
    await room.reply(`project start ${plan}`, who)
    const { items, missingPrices } = await shopping('shopping list product=latex paint coats=3', who)
    const layout = await figuresOf(room, 'layout', who)
    const fasteners = await figuresOf(room, 'fasteners', who)
    const glue = await figuresOf(room, 'glue', who)
    const finish = await figuresOf(room, 'finish product=latex paint coats=3', who)
    const taken = (of: RegExp) =>
      items.filter(({ item }) => of.test(item)).reduce((sum, { need }) => sum + need, 0)
    expect(taken(/plywood \S+$/u)).toBe(layout.sheets)
    expect(taken(/^[\dx]+(?: \w+)? [\d.]+ (?:ft|m)$/u)).toBe(layout.boards)
    const need = counted(items.map(({ item, need: count }) => [item, count]))
    const boxes = fasteners.boxes as {
      name: string
      kind: string
      length: number
      size: number
      count: number
    }[]
    const inBoxes = counted(
      boxes.map(({ name, kind, size, count }) => [`${name} ${kind}s box of ${size}`, count]),
    )
    // The list names every length as well: it is left out here.
    const listed = items
      .filter(({ item }) => / box of /u.test(item))
      .map(
        ({ item, need: count }) =>
          [item.replace(/^(\S+(?: gauge)?) [\d /]+ (?:in|mm) /u, '$1 '), count] as const,
      )
    expect(counted(listed)).toEqual(inBoxes)
    const bottles = glue.bottles as { name: string; count: number }[]
    for (const { name, count } of bottles) expect(need[itemKey(`${glue.product} ${name}`)]).toBe(count)
    const cans = finish.containers as { name: string; count: number }[]
    for (const { name, count } of cans) expect(need[itemKey(`latex paint ${name}`)]).toBe(count)
    expect(need[itemKey('corner bracket')]).toBe(plan.includes('bracketed') ? 8 : undefined)
    // Common practice: 16 sq ft of bare wood to a sheet of sandpaper.
    const sheets = Math.ceil((finish.area as number) / (16 * 92_903.04))
    expect(need[itemKey('120 grit sandpaper')]).toBe(sheets)
    expect(missingPrices).toEqual([])
  })
})

describe('the sums', () => {
  it('are those of their rows, to the cent', async () => {
    const who = { channel: 'sums' }
    await room.reply('project start 17in x 13in height=15in corner=cleated', who)
    await room.reply('shopping price 1/2 in plywood 4x8 price=37.99', who)
    await room.reply('shopping price yellow glue 4oz price=$3.49', who)
    const { items, cost, spareCost, currency, spares } = await shopping('shopping list product=varnish', who)
    const cents = (amount: number | null) => Math.round((amount ?? Number.NaN) * 100)
    for (const each of items) expect(cents(each.cost)).toBe(each.buy * cents(each.price))
    expect(cents(cost)).toBe(items.reduce((sum, each) => sum + cents(each.cost), 0))
    expect(cents(spareCost)).toBe(spares.reduce((sum, each) => sum + cents(each.cost), 0))
    expect(items.find(({ item }) => item === '1/2 in plywood 4x8')).toMatchObject({ price: 37.99 })
    expect(items.find(({ item }) => item === 'yellow glue 4 oz')).toMatchObject({ price: 3.49, cost: 3.49 })
    expect(currency).toBe('USD')
    const { answer } = await room.reply('shopping list product=varnish', who)
    expect(answer).toContain(
      `Buy for $${(cost ?? 0).toFixed(2)}: ${items.length} things; $${(spareCost ?? 0).toFixed(2)}`,
    )
  })

  it('keep spares apart, which are rounded up to whole ones and may be none', async () => {
    const who = { channel: 'spares' }
    await room.reply('project start 17in x 13in height=15in', who)
    const before = await shopping('shopping', who)
    expect(before.spares.map(({ buy }) => buy)).toEqual([1, 1])
    await room.reply('shopping spare 0%', who)
    const after = await shopping('shopping', who)
    expect(after).toMatchObject({ cost: before.cost, spareCost: 0, spares: [] })
  })

  it('are lower for what is on hand, which the list names', async () => {
    const who = { channel: 'hand' }
    await room.reply('project start 17in x 13in height=15in', who)
    let least = (await shopping('shopping list product=paint coats=2', who)).cost ?? 0
    for (const line of [
      'shopping have 1/2 in plywood 4x8',
      'shopping have half-pint of paint count=1',
      'shopping have 18 gauge 3/4 in brads count=2000',
      'shopping have 120 grit sandpaper count=1',
      'stock add 2x4x8 count=9',
    ]) {
      await room.reply(line, who)
      const { cost, items } = await shopping('shopping list product=paint coats=2', who)
      expect(cost, line).toBeLessThanOrEqual(least)
      for (const { need, have, buy } of items) expect(need).toBe(have + buy)
      least = cost ?? 0
    }
    const { items } = await shopping('shopping list product=paint coats=2', who)
    expect(items.find(({ item }) => item === '1/2 in plywood 4x8')).toMatchObject({
      need: 1,
      have: 1,
      buy: 0,
      cost: 0,
    })
    expect(items.find(({ item }) => item.endsWith('2x4x8'))).toMatchObject({ buy: 0 })
    await room.reply('shopping have 1/2 in plywood 4x8 count=0', who)
    expect((await shopping('shopping list product=paint coats=2', who)).cost).toBeGreaterThan(least)
  })

  it('take the price of the stock list, in the same money, before any example', async () => {
    const who = { channel: 'stock' }
    await room.reply('project start 17in x 13in height=15in', who)
    await room.reply('stock add 4ft x 8ft sheet=1/2 ply price=$31.25', who)
    const { items } = await shopping('shopping', who)
    expect(items[0]).toMatchObject({ item: 'S1 plywood 4ft x 8ft', buy: 1, price: 31.25 })
    await room.reply('shopping price S1 price=30', who)
    expect((await shopping('shopping', who)).items[0]).toMatchObject({ price: 30 })
    await room.reply('shopping currency EUR', who)
    expect((await shopping('shopping', who)).items[0]).toMatchObject({ price: null, cost: null })
  })
})

describe('what has no price', () => {
  it('is listed and said, and in no sum', async () => {
    const who = { channel: 'missing' }
    await room.reply('project start 17in x 13in height=15in', who)
    await room.reply('shopping currency CAD', who)
    await room.reply('shopping price 1/2 in plywood 4x8 price=60 CAD', who)
    const { items, cost, spareCost, currency, missingPrices } = await shopping('shopping', who)
    expect(currency).toBe('CAD')
    expect(cost).toBeNull()
    expect(spareCost).toBeNull()
    expect(missingPrices).toEqual(items.filter(({ price }) => price === null).map(({ item }) => item))
    expect(missingPrices).toHaveLength(items.length - 1)
    const reply = await room.reply('shopping', who)
    expect(reply.answer).toMatch(/^Buy for at least 60\.00 CAD: \d+ things, \d+ of them without a price/u)
    expect(textOf(reply)).toContain('no price, so in no sum')
    expect(textOf(reply)).not.toContain('example prices')
    await room.reply('shopping undo', who)
    expect((await room.reply('shopping', who)).answer).toMatch(
      /^Buy \d+ things; no price is known for any of them$/u,
    )
  })
})

describe('what is kept', () => {
  it('can be undone and done again, and a change of money takes the prices off that were in another', async () => {
    const who = { channel: 'kept' }
    await room.reply('shopping price quart of varnish price=21', who)
    await room.reply('shopping price quart of varnish price=22', who)
    expect(await figuresOf(room, 'shopping kept', who)).toMatchObject({
      prices: [{ item: 'oil polyurethane quart', price: 22 }],
      currency: 'USD',
    })
    expect((await figuresOf(room, 'shopping undo', who)).prices).toEqual([
      { item: 'oil polyurethane quart', price: 21 },
    ])
    expect((await figuresOf(room, 'shopping redo', who)).prices).toEqual([
      { item: 'oil polyurethane quart', price: 22 },
    ])
    const changed = await room.reply('shopping currency £', who)
    expect(changed.figures).toMatchObject({ prices: [], currency: 'GBP' })
    expect(changed.answer).toContain('1 in other money taken off ("shopping undo" brings them back)')
    expect(await figuresOf(room, 'shopping undo', who)).toMatchObject({
      prices: [{ price: 22 }],
      currency: 'USD',
    })
  })

  it('stays in its money, whatever region somebody asks from', async () => {
    const who = { channel: 'two regions' }
    await room.reply('shopping price latex paint quart price=20', who)
    await room.reply('project start 430mm x 330mm height=380mm', who)
    const british = { ...who, user: 'british' }
    await room.reply('units region=UK', british)
    const { currency, missingPrices, items } = await shopping('shopping', british)
    expect(currency).toBe('USD')
    expect(missingPrices).toHaveLength(items.length)
  })
})

describe('the reply', () => {
  it('fits a phone, and says that examples are examples', async () => {
    const who = { channel: 'phone' }
    await room.reply(
      'project start 17in x 13in height=15in corner=cleated lid=inset bottom=feet braces=all',
      who,
    )
    const response = await room.ask('shopping', who)
    if (!response.ok) throw new Error(response.error)
    const lines = (response.reply.tables ?? []).flatMap((table) => tableLines(table, response.show))
    expect(lines.length).toBeGreaterThan(15)
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(PHONE_COLUMNS)
    expect(textOf(response.reply)).toMatch(/example prices as of \d{4}, not your shop's/u)
  })

  it('lists the wood alone for a cut list without a project', async () => {
    const who = { channel: 'cut list' }
    await room.reply('cutlist add 2x 24in x 12in; 3 @ 4ft', who)
    await room.reply('stock add 4ft x 8ft sheet=1/2 ply price=40', who)
    await room.reply('stock add 2x4x8 price=4', who)
    const reply = await room.reply('shopping', who)
    expect(reply.figures).toMatchObject({ cost: 40 + 3 * 4, spareCost: 44, missingPrices: [] })
    expect((reply.figures as unknown as Figures).items).toHaveLength(2)
    expect(textOf(reply)).toContain('the wood of the cut list only')
  })

  it('takes a name as people write it where it means one thing, of the list first', async () => {
    const who = { channel: 'short names' }
    expect(await room.refusal('shopping price 12mm ply price=40', who)).toMatch(
      /^ambiguous: "12mm ply" could be 12 mm .*plywood .* or \d+ more; write more of its name, such as/u,
    )
    await room.reply('project start 17in x 13in height=15in sheet=12mm ply', who)
    const kept = async (line: string) =>
      (await room.reply(line, who)).answer.replace(/(?: at \$|: \d+ on hand).*$/u, '')
    const { items } = await shopping('shopping', who)
    const onList = (word: RegExp) => items.map(({ item }) => item).filter((item) => word.test(item))
    expect([await kept('shopping price 12mm ply price=40')]).toEqual(onList(/plywood/u))
    expect([await kept('shopping have glue')]).toEqual(onList(/glue/u))
    expect([await kept('shopping have 2x6 count=2')]).toEqual(onList(/^2x6/u))
    expect([await kept('shopping have 3/4 brads')]).toEqual(onList(/ 3\/4 in brads/u))
    // A price by gauge stands for both lengths; on hand is one of them.
    expect(onList(/brads/u)).toHaveLength(2)
    expect(await kept('shopping price brads price=8')).toBe('18 gauge brads box of 1000')
    expect(
      (await shopping('shopping', who)).items
        .filter(({ item }) => /brads/u.test(item))
        .map(({ price }) => price),
    ).toEqual([8, 8])
    expect(await room.refusal('shopping have brads', who)).toContain(onList(/brads/u).join(' or '))
  })

  it('names a sheet that was measured as people say it, and says by which price it goes or that none is known', async () => {
    const who = { channel: 'measured' }
    // 17/32 in is 13.49375 mm, and no thickness that is on sale.
    await room.reply('project start 17in x 13in height=15in sheet=17/32in', who)
    const none = await room.reply('shopping', who)
    const { items, missingPrices } = none.figures as unknown as Figures
    expect(items[0]).toMatchObject({ item: '17/32 in plywood 4x8', price: null })
    expect(missingPrices).toEqual(['17/32 in plywood 4x8'])
    expect(textOf(none)).toContain('17/32 in plywood is no thickness that is sold here')
    await room.reply('shopping price 17/32 ply price=33', who)
    expect((await shopping('shopping', who)).items[0]).toMatchObject({ price: 33 })
    await room.reply('project change sheet=13.3mm', who)
    expect((await shopping('shopping', who)).items[0]?.item).toBe('13.3 mm plywood 4x8')
    // 12.3 mm is within 1/32 in of the 15/32 in that 1/2 in plywood is.
    await room.reply('project change sheet=12.3mm', who)
    const near = await room.reply('shopping', who)
    expect((near.figures as unknown as Figures).items[0]).toMatchObject({ item: '1/2 in plywood 4x8' })
    expect(textOf(near)).toContain('12.3 mm as measured goes by the name and the price of 1/2 in plywood')
  })

  it.each([
    ['shopping', /there is nothing to cut yet/u],
    [
      'shopping price unicorn price=3',
      /nothing on a shopping list is called "unicorn"; write its name as the list has it/u,
    ],
    [
      'shopping price latex paint price=3',
      /could be latex paint half-pint, latex paint pint, latex paint quart or 2 more; write more of its name/u,
    ],
    ['shopping price latex paint quart', /price/u],
    [
      'shopping price latex paint quart price=3 EUR',
      /this list is in USD, not EUR; .* first: shopping currency EUR/u,
    ],
    ['shopping price latex paint quort price=3', /Did you mean latex paint quart/u],
    ['shopping have latex paint quart count=-1', /count="-1" is out of range|below zero|from 0/u],
    ['shopping spare 200%', /200%/u],
    ['shopping currency xyzzy', /"xyzzy" is no currency; write a sign such as/u],
    ['shopping undo', /there is nothing to undo in this shopping list/u],
  ])('%s is told in one sentence', async (line, sentence) => {
    expect(await room.refusal(line, { channel: 'bad' })).toMatch(sentence)
  })
})

describe('prices that are examples, or that do not count', () => {
  it('names a thing of the list, so that the line in the note is taken as it is', async () => {
    for (const region of ['US', 'UK', 'AU', 'EU']) {
      const who = { channel: `example ${region}` }
      await room.reply(`units region=${region} for=channel`, who)
      await room.reply('project start 17in x 13in height=15in', who)
      for (const asked of ['shopping', 'finish']) {
        const line = /\((shopping price .*)\)/u.exec(textOf(await room.reply(asked, who)))?.[1] ?? ''
        expect((await room.reply(line, who)).answer).toContain('18.50')
        await room.reply('shopping undo', who)
      }
    }
  })

  it('says why no price is known where the list is in other money', async () => {
    const who = { channel: 'other money' }
    await room.reply('project start 17in x 13in height=15in', who)
    expect(textOf(await room.reply('shopping', who))).not.toContain('do not count')
    await room.reply('shopping currency EUR', who)
    expect((await room.reply('shopping', who)).notes).toContain(
      'prices in €: the examples, in $, do not count; nothing is converted',
    )
  })
})

it('keeps as many on hand as it says that it takes', async () => {
  const who = { channel: 'many on hand' }
  const refused = await room.refusal('shopping have yellow glue 4 oz count=20000', who)
  const most = /from 0 to (\d+)/u.exec(refused)?.[1]
  expect((await room.reply(`shopping have yellow glue 4 oz count=${most}`, who)).answer).toContain(
    `${most} on hand`,
  )
})
