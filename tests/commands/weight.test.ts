import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Asker, asker } from './asker.ts'
import { cautionsOf } from './asking.ts'

let bench: Asker
beforeAll(async () => {
  bench = await asker()
})
afterAll(() => bench.room.close())

const POUND = 453.59237

describe('weight of sheets and boards', () => {
  // Birch plywood manufacturer's data sheet: thickness, kg a sheet of 1220 x 2440 mm.
  it.each([
    ['18mm', 36.7],
    ['12mm', 24.8],
    ['9mm', 19.0],
    ['24mm', 48.6],
    ['6.5mm', 13.0],
    ['15mm', 30.8],
    ['21mm', 42.5],
    ['30mm', 60.0],
  ])('birch plywood of %s: %d kg', async (label, printed) => {
    const each = await bench.number(`weight 1220mm x 2440mm sheet=${label} birch ply`, 'each')
    expect(Math.abs(each / 1000 - printed)).toBeLessThanOrEqual(0.06)
  })

  it.each([
    ['18mm', 57.3],
    ['30mm', 93.8],
    ['12mm', 38.8],
  ])('birch plywood of %s, 1525 x 3050 mm: %d kg', async (label, printed) => {
    const each = await bench.number(`weight 1525mm x 3050mm sheet=${label} birch ply`, 'each')
    expect(Math.abs(each / 1000 - printed)).toBeLessThanOrEqual(0.06)
  })

  // Sheet weight charts: 3 lb to the square foot for each inch of plywood; panel weight guide: 1/2 in MDF 66.7 lb, particleboard
  // 61 lb a 4 x 8 ft sheet. MDF goes by its maker's density, which differs from the guide's by a few percent.
  it.each([
    ['1in plywood', 96, 0.01],
    ['1/2in particleboard', 61, 0.01],
    ['1/2in MDF', 66.7, 0.06],
  ])('4 x 8 ft of %s: about %d lb', async (sheet, printed, off) => {
    const each = await bench.number(`weight 4ft x 8ft sheet=${sheet}`, 'each')
    expect(Math.abs(each / POUND / printed - 1)).toBeLessThanOrEqual(off)
  })

  // Weights of dry lumber (retail guide): 2x4 1.3 lb a foot, 2x6 2.0, 2x8 2.7, 2x10 3.3, 2x12 4.0. They name no wood: SPF and
  // southern pine lie on either side.
  it.each([
    ['2x4', 1.3],
    ['2x6', 2.0],
    ['2x8', 2.7],
    ['2x10', 3.3],
    ['2x12', 4.0],
  ])('a foot of %s is about %d lb', async (board, printed) => {
    const foot = (wood: string) =>
      bench.number(`weight board=${board} length=1ft wood=${wood} moisture=12%`, 'each')
    expect((await foot('SPF')) / POUND).toBeLessThan(printed * 1.05)
    expect((await foot('southern pine')) / POUND).toBeGreaterThan(printed * 0.95)
  })

  // OSU Extension: weight of air-dry wood, lb/ft3: Douglas-fir 34, western larch 36, western hemlock 31.
  it.each([
    ['Douglas-fir', 34],
    ['western larch', 36],
    ['western hemlock', 31],
  ])('a cubic foot of %s at 12 %% is about %d lb', async (wood, printed) => {
    const each = await bench.number(
      `weight board=12in x 12in measured length=12in wood=${wood} moisture=12%`,
      'each',
    )
    expect(Math.abs(each / POUND - printed)).toBeLessThan(0.7)
  })

  it('counts up, and is heavier the wetter it is', async () => {
    const line = 'weight board=2x4x8 wood=SPF'
    const { each, total } = await bench.figures(`${line} count=24`)
    expect(total).toBeCloseTo(24 * (each as number), 6)
    expect(await bench.number(`${line} moisture=19%`, 'each')).toBeGreaterThan(each as number)
  })

  // HSE, Manual handling at work (INDG143): 25 kg for a man, 16 kg for a woman.
  it.each([
    ['weight 1220mm x 2440mm sheet=18mm birch ply', 'lift-two', 'a lift for 2 or 3'],
    ['weight 1220mm x 2440mm sheet=9mm birch ply', 'lift-help', 'a lift for 1 or 2'],
    ['weight 600mm x 400mm sheet=9mm birch ply', undefined, 'a lift for 1 ('],
  ])('%s: %s', async (line, caution, words) => {
    const answer = await bench.reply(line)
    expect(cautionsOf(answer)[0]).toBe(caution)
    expect(answer.notes?.join('\n')).toContain(words)
  })

  it('asks for what is missing', async () => {
    expect(await bench.room.refusal('weight')).toMatch(/^invalid: what is weighed\?/u)
    expect(await bench.room.refusal('weight 4ft x 8ft')).toMatch(/^invalid: how thick is the panel\?/u)
    expect(await bench.room.refusal('weight board=2x4')).toMatch(/^invalid: how long is the board\?/u)
    expect(await bench.room.refusal('weight 17in round sheet=1/2in')).toMatch(
      /^invalid: a panel has two sides/u,
    )
  })
})

interface Weighed {
  readonly total: number
  readonly end: number
  readonly side: number
  readonly parts: readonly { readonly count: number; readonly each: number; readonly all: number }[]
}

describe('weight of the plan', () => {
  it('is the sum of its parts, and of the panels as they are carried', async () => {
    const channel = await asker()
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 12, max: 60 }),
        fc.integer({ min: 12, max: 40 }),
        fc.integer({ min: 10, max: 40 }),
        fc.constantFrom('captured', 'cleated', 'butted'),
        fc.constantFrom('none', 'all', 'ends'),
        async (length, width, height, corner, braces) => {
          await channel.room.reply(
            `project start ${length}in x ${width}in height=${height}in sheet=15/32in corner=${corner} braces=${braces}`,
          )
          const weighed = (await channel.figures('weight')) as unknown as Weighed
          const sum = weighed.parts.reduce((total, { all }) => total + all, 0)
          for (const { count, each, all } of weighed.parts) expect(all).toBeCloseTo(count * each, 6)
          expect(sum).toBeCloseTo(weighed.total, 6)
          expect(2 * weighed.end + 2 * weighed.side).toBeCloseTo(weighed.total, 6)
        },
      ),
      { numRuns: 25 },
    )
    await channel.room.close()
  })

  // Gardeners' figures for planters on decks: soaked soil 75 to 100 lb to the cubic foot, a light mix 40 to 60; decks 40 to 60
  // lb to the square foot.
  it('loads a deck with the soil of a planter, which two cubic feet make 150 to 200 lb', async () => {
    const channel = await asker('project start 24in x 12in planter height=12in sheet=1/2in')
    const { soil, planted, load, total } = await channel.figures('weight')
    const { low, high } = soil as { low: number; high: number }
    expect(low / POUND).toBeCloseTo(150, 6)
    expect(high / POUND).toBeCloseTo(200, 6)
    expect(planted).toBeCloseTo(high + (total as number), 6)
    const { outsideLength, outsideWidth } = await channel.figures('sizing')
    const squareMetres = ((outsideLength as number) * (outsideWidth as number)) / 1e6
    expect(load).toBeCloseTo((planted as number) / 1000 / squareMetres, 6)
    expect((await channel.reply('weight')).notes?.join('\n')).toMatch(
      /decks are commonly built for 40 lb\/sq ft to 60 lb\/sq ft/u,
    )
    const light = (await channel.figures('weight soil=light depth=6in')).soil as { high: number }
    expect(light.high / POUND).toBeCloseTo(60, 6)
    expect(await channel.figures('weight soil=none')).toMatchObject({ soil: null, load: null })
    expect(cautionsOf(await channel.reply('weight'))).toContain('planter-load')
    await channel.room.close()
  })

  it('asks about soil that is deeper than the box is high', async () => {
    const channel = await asker('project start 17in x 13in planter height=15in')
    expect(await channel.room.refusal('weight depth=15 1/16in')).toBe(
      'invalid: soil 15 1/16 in deep is more than the box is high: give depth=15in or less, or a taller box',
    )
    expect((await channel.reply('weight depth=15in')).answer).toContain('filled and soaked')
    expect((await channel.reply('weight soil=none depth=6in')).notes?.join()).toContain('depth= is for soil')
    await channel.room.close()
  })

  it('fills a round planter by its circle, and nothing that is no planter', async () => {
    const round = await asker('project start 12in round planter height=12in sheet=1/2in')
    const { soil } = await round.figures('weight')
    expect((soil as { high: number }).high / POUND / 100).toBeCloseTo(Math.PI / 4, 6)
    await round.room.close()
    const tree = await asker('project start 12in x 12in tree stand height=12in sheet=1/2in')
    expect((await tree.figures('weight')).soil).toBeNull()
    await tree.room.close()
  })

  it('goes with the sheet, the wood and every change of the plan, and warns of a box that tips', async () => {
    const channel = await asker('project start 17in x 13in height=15in sheet=1/2 ply')
    const before = await channel.number('weight', 'total')
    expect(await channel.number('weight sheet=3/4 ply', 'total')).toBeGreaterThan(before)
    expect(await channel.number('weight wood=red oak', 'total')).toBeGreaterThan(before)
    await channel.reply('project change height=60in')
    expect(await channel.number('weight', 'total')).toBeGreaterThan(before)
    expect(cautionsOf(await channel.reply('weight'))).toContain('tip-over')
    await channel.room.close()
  })
})
