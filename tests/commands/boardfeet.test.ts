import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openRoom } from '../room.ts'
import { type Asker, asker } from './asker.ts'

let bench: Asker
beforeAll(async () => {
  bench = await asker()
})
afterAll(() => bench.room.close())

describe('boardfeet', () => {
  // US Navy, Engineering Aid, and lumber guides: by nominal size, and stock under an inch counts as an inch.
  it.each([
    ['2x4x14', 28 / 3],
    ['1x8x14', 28 / 3],
    ['2x6x8', 8],
    ['1x3x8', 2],
    ['1x4x6', 2],
    ['1x12x10', 10],
    ['2x4x16', 32 / 3],
  ])('%s is %d', async (board, printed) => {
    expect(await bench.number(`boardfeet ${board}`, 'nominal')).toBeCloseTo(printed, 9)
  })

  // Lumber page, as a contrast: 2x4 by 16 ft holds 192 x 1.5 x 3.5 = 1008 in3, 7 board feet by actual size.
  it('counts 7 board feet of wood in a 2x4 of 16 ft', async () => {
    expect(await bench.number('boardfeet 2x4x16', 'actual')).toBeCloseTo(7, 9)
    expect((await bench.reply('boardfeet 2x4x16')).answer).toBe(
      '10.67 board feet nominal, as lumber is sold; 16 ft in all',
    )
  })

  it('adds up pieces and their length', async () => {
    const one = await bench.figures('boardfeet 2x6x8')
    const many = await bench.figures('boardfeet 2x6 length=8ft count=24')
    expect(many.nominal).toBeCloseTo(24 * (one.nominal as number), 9)
    expect(many.actual).toBeCloseTo(24 * (one.actual as number), 9)
    expect(many).toMatchObject({ linear: 24 * 96 * 25.4, count: 24, each: one.nominal })
  })

  it('goes by actual size where no name says the nominal one, and outside the US', async () => {
    expect(await bench.figures('boardfeet 1in x 6in measured length=2ft')).toMatchObject({
      nominal: null,
      actual: 1,
    })
    const uk = await asker('units region=UK')
    // 38 x 89 mm by 2.4 m, by the board foot of 144 in3.
    expect(await uk.figures('boardfeet 38x89 length=2.4m')).toMatchObject({
      nominal: null,
      actual: expect.closeTo((38 * 89 * 2400) / 25.4 ** 3 / 144, 6),
    })
    await uk.room.close()
  })

  it('asks for what is missing', async () => {
    expect(await bench.room.refusal('boardfeet')).toMatch(/^invalid: which boards\?/u)
    expect(await bench.room.refusal('boardfeet 4/4x6x8')).toMatch(
      /^ambiguous: "4\/4x6x8" could be .*; write 4\/4 x 6in x 8ft or 4\/4 x 6in x 8in$/u,
    )
    expect((await bench.reply('boardfeet 4/4 x 6in x 8ft')).answer).toMatch(/^4 board feet;/u)
    expect((await bench.reply('boardfeet 4/4 x 6in x 8in')).answer).toMatch(/^0.33 board feet;/u)
    expect(await bench.room.refusal('boardfeet 2x4')).toMatch(/^invalid: how long is the board\?/u)
  })
})

describe('boardfeet of the plan', () => {
  it('adds up the strips by what they are for', async () => {
    const channel = await asker('project start 17in x 13in height=15in sheet=1/2in strip=1/2in width=1 1/2in')
    const found = await channel.figures('boardfeet')
    const inches = 4 * 15 + 4 * 20 + 4 * 12 + 4 * 11.9375
    expect(found.linear).toBeCloseTo(inches * 25.4, 6)
    expect(found.actual).toBeCloseTo((inches * 0.5 * 1.5) / 144, 9)
    expect(found.count).toBe(16)
    const sections = found.sections as readonly { section: string; count: number; length: number }[]
    expect(sections.map(({ section }) => section)).toEqual([
      'end rail',
      'side rail',
      'end stile',
      'corner stile',
    ])
    expect(sections.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(found.linear as number, 6)
    await channel.reply('project change braces=all')
    expect(await channel.number('boardfeet', 'linear')).toBeGreaterThan(found.linear as number)
    await channel.room.close()
  })
})

describe('sizes of stock', () => {
  it('are as a calliper reads them wherever they are said, for somebody with a metric tape too', async () => {
    const room = await openRoom()
    await room.reply('project start 17in x 13in height=15in')
    await room.reply('units metric')
    const said = async (line: string) => {
      const { answer, tables = [], notes = [] } = await room.reply(line)
      return [answer, ...tables.map(({ title }) => title), ...notes].join('\n')
    }
    expect(await said('boardfeet')).toContain('of strip 12.7 x 38.1 mm')
    expect(await said('sizing')).toContain('Strips 12.7 x 38.1 mm')
    expect(await said('layout')).toMatch(/Sheets 11\.91 mm thick\nStrips 12\.7 x 38\.1 mm/u)
    expect(await said('fit')).toMatch(/a fit of 0\.79 mm slides[\s\S]*sheet 11\.11 mm to 12\.7 mm thick/u)
    const checks = (await room.reply('steps check')).tables?.[0]?.rows ?? []
    expect(checks).toContainEqual(['0.79', 'gap at each end of a corner stile'])
    await room.close()
  })
})
