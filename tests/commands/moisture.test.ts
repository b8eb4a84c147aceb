import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Asker, asker } from './asker.ts'

let bench: Asker
beforeAll(async () => {
  bench = await asker()
})
afterAll(() => bench.room.close())

const HUMIDITIES = [5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95]

// USDA Forest Products Laboratory, Wood Handbook (GTR-190, 2010), Table 4-2: percent moisture by temperature and humidity.
const TABLE: readonly (readonly [fahrenheit: number, row: string])[] = [
  [30, '1.4 2.6 3.7 4.6 5.5 6.3 7.1 7.9 8.7 9.5 10.4 11.3 12.4 13.5 14.9 16.5 18.5 21.0 24.3'],
  [50, '1.4 2.6 3.6 4.6 5.5 6.3 7.1 7.9 8.7 9.5 10.3 11.2 12.3 13.4 14.8 16.4 18.4 20.9 24.3'],
  [70, '1.3 2.5 3.5 4.5 5.4 6.2 6.9 7.7 8.5 9.2 10.1 11.0 12.0 13.1 14.4 16.0 17.9 20.5 23.9'],
  [90, '1.2 2.3 3.4 4.3 5.1 5.9 6.7 7.4 8.1 8.9 9.7 10.5 11.5 12.6 13.9 15.4 17.3 19.8 23.3'],
  [140, '0.9 1.9 2.8 3.6 4.3 5.0 5.7 6.3 7.0 7.7 8.4 9.1 10.0 11.0 12.1 13.6 15.3 17.7 21.0'],
]

describe('moisture that wood settles at', () => {
  it.each(TABLE)('at %d F is the handbook’s, cell by cell', async (fahrenheit, row) => {
    for (const [column, printed] of row.split(' ').entries()) {
      const line = `moisture ${HUMIDITIES[column]}% temperature=${fahrenheit}F`
      expect(Math.abs((await bench.number(line, 'moisture')) - Number(printed)), line).toBeLessThanOrEqual(
        0.07,
      )
    }
  })

  it('is the same however the temperature is typed, and rises with humidity', async () => {
    const humidity = fc.integer({ min: 0, max: 100 })
    await fc.assert(
      fc.asyncProperty(humidity, humidity, fc.integer({ min: 0, max: 12 }), async (one, other, tens) => {
        const [celsius, fahrenheit] = [tens * 5, tens * 9 + 32]
        const at = (air: number, degrees: string) =>
          bench.number(`moisture ${air}% temperature=${degrees}`, 'moisture')
        expect(await at(one, `${celsius}C`)).toBeCloseTo(await at(one, `${fahrenheit}F`), 9)
        expect(await at(Math.min(one, other), `${celsius}C`)).toBeLessThanOrEqual(
          await at(Math.max(one, other), `${celsius}C`),
        )
      }),
      { numRuns: 50 },
    )
  })

  // Wood panel makers' guide: MDF and particleboard at 65 % humidity, 9 to 11 %.
  it('is lower for MDF, and unknown where the makers print nothing', async () => {
    expect(await bench.number('moisture 65% material=mdf', 'moisture')).toBe(10)
    expect(await bench.room.refusal('moisture 20% material=mdf')).toMatch(
      /^invalid: no source says .* write 30% to 90%$/u,
    )
  })
})

describe('growth across the grain', () => {
  /** The humidity at 70 F in which wood comes to `moisture` percent, to the thousandth that can be typed. */
  async function airFor(moisture: number): Promise<number> {
    let [low, high] = [0, 99]
    for (let step = 0; step < 25; step += 1) {
      const middle = (low + high) / 2
      const came = await bench.number(`moisture ${middle.toFixed(3)}% temperature=70F`, 'moisture')
      if (came < moisture) low = middle
      else high = middle
    }
    return Number(high.toFixed(3))
  }

  // Wood Handbook (GTR-190), Table 13-5: change for each 1 % of moisture, flat-sawn then quarter-sawn.
  it.each([
    ['red alder', 0.00256, 0.00151],
    ['black cherry', 0.00248, 0.00126],
    ['American beech', 0.00431, 0.0019],
    ['black walnut', 0.00274, 0.0019],
    ['red oak', 0.00369, 0.00158],
    ['white oak', 0.00365, 0.0018],
    ['sugar maple', 0.00353, 0.00165],
    ['white ash', 0.00274, 0.00169],
    ['yellow birch', 0.00338, 0.00256],
    ['paper birch', 0.00304, 0.00219],
  ])('%s: %d flat-sawn, %d quarter-sawn', async (wood, flat, quarter) => {
    const line = `moisture 60% temperature=70F measured=8% width=1000mm wood=${wood}`
    for (const [cut, printed] of [
      ['flat', flat],
      ['quarter', quarter],
    ] as const) {
      const { change, moisture } = await bench.figures(`${line} cut=${cut}`)
      expect((change as number) / 1000 / ((moisture as number) - 8)).toBeCloseTo(printed, 7)
    }
  })

  // Wood Handbook, ch. 13, worked example: white fir 232 mm, flat-sawn, 8 to 11 %: 1.705 mm, so 233.7 mm.
  it('white fir of 232 mm from 8 to 11 % grows 1.7 mm', async () => {
    const line = `moisture ${await airFor(11)}% temperature=70F measured=8% width=232mm wood=white fir`
    expect(Math.abs((await bench.number(line, 'change')) - 1.705)).toBeLessThan(0.005)
    expect(Math.abs((await bench.number(line, 'size')) - 233.7)).toBeLessThan(0.01)
  })

  // Woodworking page on wood movement: red alder 8 in wide, 6 % of moisture: .1248 in by .0026, here by the table's .00256.
  it('red alder of 8 in gains about 1/8 in for 6 %', async () => {
    const line = `moisture ${await airFor(13)}% temperature=70F measured=7% width=8in wood=red alder`
    expect((await bench.number(line, 'change')) / 25.4).toBeCloseTo(0.1248 * (0.00256 / 0.0026), 3)
  })

  it('grows as it shrinks, and more the wider it is', async () => {
    const air = fc.integer({ min: 30, max: 70 })
    await fc.assert(
      fc.asyncProperty(air, air, async (one, other) => {
        const go = (from: number, to: number) =>
          bench.number(`moisture ${to}% before=${from}% width=8in`, 'change')
        const [there, back, wide] = [
          await go(one, other),
          await go(other, one),
          await bench.number(`moisture ${other}% before=${one}% width=16in`, 'change'),
        ]
        expect(there + back).toBeCloseTo(0, 4)
        expect(wide).toBeCloseTo(2 * there, 4)
        expect(Math.sign(there)).toBe(Math.sign(other - one))
      }),
      { numRuns: 40 },
    )
  })

  it('says where it is not sure, and refuses a wood that nobody measured', async () => {
    expect((await bench.reply('moisture 95% measured=20%')).notes?.join()).toMatch(/outside 6 to 14 %/u)
    expect((await bench.reply('moisture 60% wood=SPF')).notes?.join()).toMatch(/from memory/u)
    expect((await bench.reply('moisture 60% temperature=-20C')).notes?.join()).toMatch(/less sure/u)
    expect(await bench.room.refusal('moisture 60% wood=western larch')).toMatch(
      /^invalid: no source says how western larch moves/u,
    )
  })
})

describe('growth of sheets', () => {
  // Flooring fitters' page quoting APA: .0002 in/in for 10 % of humidity, so 36 in for 10 %: less than .007 in, .0072.
  it('plywood of 36 in for 10 %: .0072 in', async () => {
    expect(
      (await bench.number('moisture 50% before=40% width=36in material=plywood', 'change')) / 25.4,
    ).toBeCloseTo(0.0072, 6)
    expect(await bench.room.refusal('moisture 50% measured=9% material=plywood')).toMatch(/before=45%/u)
  })

  // MDF trade association: 600 mm for 5 % of moisture: 1.5 mm. The makers' 75 % humidity is 11 %, so from 6 %.
  it('MDF of 600 mm for 5 %: 1.5 mm', async () => {
    expect(await bench.number('moisture 75% measured=6% width=600mm material=mdf', 'change')).toBeCloseTo(
      1.5,
      6,
    )
  })
})

describe('moisture in a channel', () => {
  it('takes the strips of the plan, and reckons its corner along', async () => {
    const channel = await asker('project start 17in x 13in height=15in sheet=1/2in width=1 1/2in')
    const figures = await channel.figures('moisture 65%')
    expect((figures.size as number) - (figures.change as number)).toBeCloseTo(38.1, 6)
    const fit = await channel.figures('fit')
    for (const name of ['loosest', 'tightest', 'allowance']) expect(figures[name]).toBe(fit[name])
    await channel.reply('project change corner=butted')
    expect(await channel.figures('moisture 65%')).toMatchObject({
      loosest: null,
      tightest: null,
      allowance: null,
    })
    await channel.room.close()
  })
})
