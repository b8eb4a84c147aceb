import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Asker, asker } from './asker.ts'
import { cautionsOf } from './asking.ts'

let bench: Asker
beforeAll(async () => {
  bench = await asker()
})
afterAll(() => bench.room.close())

const SQUARE_FOOT = 92_903.04
const GALLON = 3785.411784

describe('glue', () => {
  // General article on how much glue: 200 to 300 square feet a gallon; a tenth is lost.
  it('buys for 200 square feet to the gallon and a tenth', async () => {
    const { volume, area } = await bench.figures('glue 200 sq ft temperature=70F')
    expect(area).toBeCloseTo(200 * SQUARE_FOOT, 3)
    expect(volume).toBeCloseTo(1.1 * GALLON, 3)
  })

  // Woodworkers' rule: 1 h in the clamps at 70 F, double for every 15 F colder; full strength after 24 h (maker's guide).
  it.each([
    ['70F', 60, 24],
    ['90F', 60, 24],
    ['55F', 120, 48],
    ['40F', 240, 96],
  ])('at %s clamps for %d min and is strong after %d h', async (temperature, minutes, hours) => {
    const { clampMinutes, fullHours } = await bench.figures(`glue 2 sq ft temperature=${temperature}`)
    expect(clampMinutes).toBeCloseTo(minutes, 9)
    expect(fullHours).toBeCloseTo(hours, 9)
  })

  // Wood glue maker's gluing guide: clamps 8 to 12 in apart, 1 1/2 to 2 in from the ends; softwood 100 to 150 psi.
  it('clamps a joint of 24 in with 3 to 4, at 100 to 150 psi', async () => {
    const { clamps, pressure, force, area } = await bench.figures('glue joint=24in x 1 1/2in temperature=70F')
    expect(clamps).toEqual({ low: 3, high: 4 })
    const psi = 6894.757
    expect((pressure as { low: number }).low / psi).toBeCloseTo(100, 3)
    expect((pressure as { high: number }).high / psi).toBeCloseTo(150, 3)
    expect(area).toBeCloseTo(36 * 645.16, 6)
    // 36 in2 at 100 psi are 3600 lb, shared by three.
    expect((force as { low: number }).low / 4.4482216).toBeCloseTo(1200, 2)
  })

  it('presses hardwood harder', async () => {
    const { pressure } = await bench.figures('glue joint=24in x 1 1/2in wood=red oak temperature=70F')
    expect((pressure as { low: number }).low / 6894.757).toBeCloseTo(200, 3)
  })

  // Article on glue and temperature: yellow glue chalks below about 40 F, white below about 55 F.
  it.each([
    [
      '39F',
      'yellow glue',
      /^invalid: yellow glue does not hold at 39°F: it dries to chalk below 40°F\. Warm .* until full strength$/u,
    ],
    [
      '50F',
      'white glue',
      /^invalid: white glue .* below 55°F\. .*, or use yellow glue or waterproof glue \(product=\)$/u,
    ],
    ['4C', 'yellow glue', /^invalid: yellow glue does not hold at 4°C: .* below 4\.4°C/u],
  ])('gives no number at %s for %s, but what would do', async (temperature, product, sentence) => {
    expect(
      await bench.room.refusal(
        `glue ${temperature.endsWith('C') ? '0.2m2' : '2 sq ft'} product=${product} temperature=${temperature}`,
      ),
    ).toMatch(sentence)
  })

  it('takes longer the colder it is, and holds at no temperature below its lowest', async () => {
    const degrees = fc.integer({ min: -20, max: 110 })
    await fc.assert(
      fc.asyncProperty(degrees, degrees, async (one, other) => {
        const [cold, warm] = await Promise.all(
          [Math.min(one, other), Math.max(one, other)].map((each) =>
            bench.room.ask(`glue 2 sq ft temperature=${each}F`),
          ),
        )
        expect(cold!.ok).toBe(Math.min(one, other) >= 40)
        if (cold!.ok && warm!.ok)
          expect(cold!.reply.figures.clampMinutes).toBeGreaterThanOrEqual(
            warm!.reply.figures.clampMinutes as number,
          )
      }),
      { numRuns: 60 },
    )
  })

  it('warns of the cold where it is cold, and of the label where nobody said', async () => {
    expect(cautionsOf(await bench.reply('glue 2 sq ft temperature=45F'))).toEqual(['glue-cold'])
    expect(cautionsOf(await bench.reply('glue 2 sq ft temperature=60F'))).toEqual([])
    expect(cautionsOf(await bench.reply('glue 2 sq ft'))).toEqual(['glue-label'])
  })

  it('asks what is glued where nothing is known', async () => {
    expect(await bench.room.refusal('glue')).toMatch(/^invalid: what is glued\?/u)
    expect(await bench.room.refusal('glue joint=24in round')).toMatch(
      /^invalid: a joint has a length and a width/u,
    )
  })
})

describe('glue for the plan', () => {
  it('spreads every glued joint, which grow with the frames', async () => {
    const channel = await asker('project start 17in x 13in height=15in sheet=1/2in')
    const { area } = await channel.figures('glue')
    // By hand, in2: rails 2 x 1.5 x 15 and 18 on each of two panels, two stiles 12 x 1.5 on each end, corner stiles on edges
    // 11 15/16 x 1/2 and on the stile beside it as much.
    const byHand = 4 * 1.5 * 15 + 4 * 1.5 * 18 + 4 * 1.5 * 12 + 4 * 11.9375 * (0.5 + 0.5)
    expect((area as number) / 645.16).toBeCloseTo(byHand, 6)
    await channel.reply('project change braces=all')
    expect(await channel.number('glue', 'area')).toBeGreaterThan(area as number)
    await channel.room.close()
  })

  it('leaves screwed joints dry', async () => {
    const channel = await asker('project start 17in x 13in height=15in sheet=1/2in corner=cleated')
    const { area } = await channel.figures('glue')
    const byHand = 4 * 1.5 * 15 + 4 * 1.5 * 18 + 4 * 12 * 1 + 4 * 12 * 1 + 4 * 12 * 1.5
    expect((area as number) / 645.16).toBeCloseTo(byHand, 6)
    await channel.room.close()
  })
})
