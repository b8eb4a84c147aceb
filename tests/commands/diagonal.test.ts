import { afterAll, describe, expect, it } from 'vitest'
import { openRoom } from '../room.ts'
import { cautionsOf, expectFigures, figuresOf, inch, textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

const degrees = (radians: number): number => (radians * 180) / Math.PI

/** The figure, which must be a number. */
async function number(line: string, figure: string): Promise<number> {
  const found = (await figuresOf(room, line))[figure]
  if (typeof found !== 'number') throw new Error(`${line}: no number ${figure}`)
  return found
}

describe('published braces', () => {
  // US Navy Builder 14044, pp. 2-8 and 2-9: brace table and Essex board.
  it.each([
    [24, 24, 33.94],
    [27, 27, 38.18],
    [30, 30, 42.43],
    [8, 8, 11.31],
    [40, 40, 56.57],
    [18, 24, 30],
  ])('US Navy Builder 14044: runs of %s and %s give %s', async (rise, run, printed) => {
    const long = await number(`diagonal ${run}in x ${rise}in strip=1/2in ends=pointed`, 'length')
    expect(Math.abs(long / 25.4 - printed)).toBeLessThanOrEqual(0.005)
  })

  // instructables.com, rafter step 4: length per 12 in of run.
  it.each([
    [5, 13],
    [7, 13.89],
    [9, 15],
    [16, 20],
  ])('unit length table: rise %s per 12 gives %s', async (rise, printed) => {
    const long = await number(`diagonal 12in x ${rise}in strip=1/2in ends=pointed`, 'length')
    expect(Math.abs(long / 25.4 - printed)).toBeLessThanOrEqual(0.005)
  })

  it('sawmillcreek.org t-110061: 24 x 36 in is 43.27 in across', async () => {
    expect(
      Math.abs((await number('diagonal 36in x 24in strip=1/2in ends=pointed', 'length')) / 25.4 - 43.27),
    ).toBeLessThan(0.005)
  })

  it('a builder’s press-fit: 39 7/16 x 20 11/16 in, strip 1 17/32, lies at 25.71 degrees', async () => {
    const saw = await number('diagonal 39 7/16in x 20 11/16in strip=1 17/32in ends=stiles', 'saw')
    expect(Math.abs(saw - 25.71)).toBeLessThan(0.005)
  })
})

// Recomputed values from questions people ask.
describe('recomputed braces', () => {
  it.each([
    ['46in x 29in strip=3 1/2in ends=stiles', 28.54, 54.27],
    ['46in x 29in strip=3 1/2in ends=rails', 54.08, 54.27],
    ['39 7/16in x 20 11/16in strip=1 17/32in ends=rails', 60.35, 44.51],
    ['39in x 46in strip=3 1/2in ends=stiles', 46.38, 60.21],
    ['39in x 46in strip=3 1/2in ends=rails', 36.97, 60.21],
    ['46in x 29in strip=3 1/2in ends=pointed', 32.23, 54.38],
  ])('%s', async (line, saw, blank) => {
    const figures = await figuresOf(room, `diagonal ${line}`)
    expect(Math.abs((figures.saw as number) - saw)).toBeLessThan(0.006)
    expect(Math.abs((figures.length as number) / 25.4 - blank)).toBeLessThan(0.006)
  })
})

describe('the ends', () => {
  it.each([
    ['46in x 29in strip=3 1/2in', 28.54, 'flush with the stiles'],
    ['39in x 46in strip=3 1/2in', 36.97, 'flush with the rails'],
  ])('of %s are chosen within the saw’s range', async (line, saw, ends) => {
    const reply = await room.reply(`diagonal ${line}`)
    expect(Math.abs((reply.figures.saw as number) - saw)).toBeLessThan(0.006)
    expect(textOf(reply)).toContain(ends)
    expect(cautionsOf(reply)).not.toContain('steep-angle')
  })

  it('past the saw are told with a jig, the saw scale first', async () => {
    const reply = await room.reply('diagonal 46in x 29in strip=3 1/2in ends=rails')
    expect(reply.answer).toMatch(/^Set the saw to 54\.1° from square \(35\.9° to the edge\)/u)
    expect(textOf(reply)).toContain('square jig and set 35.9°')
    expect(cautionsOf(reply)).toContain('steep-angle')
  })

  it('of a point at 60 degrees need the jig for one of the two cuts', async () => {
    // tan 60 = 1.732: 1000 x 1732 mm.
    const reply = await room.reply('diagonal 1000mm x 1732mm strip=40mm ends=pointed')
    expect((reply.figures.saw as number) + (reply.figures.secondSaw as number)).toBeCloseTo(90, 9)
    expect(reply.answer).toMatch(/^Set the saw to 60° from square \(30° to the edge\) and 30° from square/u)
    expect(textOf(reply)).toContain('square jig and set 30°')
  })

  it('go by the labels of an opening', async () => {
    const plain = await figuresOf(room, 'diagonal 46in x 29in strip=3in')
    expect(await figuresOf(room, 'diagonal 29in high x 46in wide strip=3in')).toEqual(plain)
    expect(await figuresOf(room, 'diagonal 46in wide x 29in high strip=3in')).toEqual(plain)
  })

  it('of a very flat opening are still right', async () => {
    // The strip's edges run into opposite corners: slope = atan(H / W) - asin(w / D).
    const [wide, high, strip] = [90, 4, 1.5]
    const slope = degrees(Math.atan2(high, wide) - Math.asin(strip / Math.hypot(wide, high)))
    expect(await number('diagonal 90in x 4in strip=1 1/2in', 'saw')).toBeCloseTo(slope, 6)
    expect(await number('diagonal 90in x 4in strip=1 1/2in', 'length')).toBeCloseTo(
      Math.sqrt(wide ** 2 + high ** 2 - strip ** 2) * 25.4,
      5,
    )
  })
})

describe('an X', () => {
  it('in a square opening crosses at 90 degrees; the halves end square', async () => {
    // D / 2 = 30 sqrt(2) / 2; less half the strip, and nothing back, for 1 / tan 90 is 0.
    expectFigures(await figuresOf(room, 'diagonal 30in x 30in strip=1 1/2in cross=cut'), {
      crossing: 90,
      innerSaw: 0,
      halfLength: Math.round(((30 * Math.SQRT2) / 2 - 0.75) * 25_400_000) / 1_000_000,
      notchWidth: null,
      notchDepth: null,
    })
  })

  it('halved takes a notch as wide as the strip, half as deep as it is thick', async () => {
    expectFigures(await figuresOf(room, 'diagonal 30in x 30in strip=1 1/2in cross=halving thickness=1/2in'), {
      crossing: 90,
      notchWidth: inch(3 / 2),
      notchDepth: inch(1 / 4),
      halfLength: null,
      innerSaw: null,
    })
  })

  it('has points unless it is told otherwise', async () => {
    const { slope, crossing, secondSaw } = await figuresOf(
      room,
      'diagonal 900mm x 600mm strip=38mm cross=halving',
    )
    expect(slope).toBeCloseTo(degrees(Math.atan2(600, 900)), 9)
    expect(crossing).toBeCloseTo(2 * degrees(Math.atan2(600, 900)), 9)
    expect(secondSaw).toBeCloseTo(degrees(Math.atan2(900, 600)), 9)
  })

  it('has a notch w / sin g wide', async () => {
    // 3-4-5: sin 2p = 2 x 3/5 x 4/5 = 24/25, so 24 mm of strip takes 25.
    expectFigures(await figuresOf(room, 'diagonal 400mm x 300mm strip=24mm cross=halving'), {
      notchWidth: 25,
    })
  })

  it('does not guess how deep a notch is', async () => {
    const reply = await room.reply('diagonal 30in x 30in strip=1 1/2in cross=halving')
    expect(reply.figures.notchDepth).toBeNull()
    expect(textOf(reply)).toContain('add thickness=')
  })

  it('is refused where the strips do not cross inside', async () => {
    // 3-4-5: W H / D = 2.4 in.
    expect(await room.refusal('diagonal 4in x 3in strip=2 1/2in cross=cut')).toMatch(/do not cross inside/u)
    expect(await number('diagonal 4in x 3in strip=2 3/8in cross=cut', 'crossing')).toBeGreaterThan(0)
  })
})

describe('with the channel’s plan', () => {
  it('crosses the end frame, or the side frame when asked, with the plan’s strip', async () => {
    const who = { channel: 'plan' }
    await room.reply('project start 17in x 13in height=15in', who)
    // Openings: 14 15/16 - 3 and 19 15/16 - 3 wide, 15 - 3 high, strip 1 1/2.
    const blank = (wide: number) => Math.sqrt(wide ** 2 + 12 ** 2 - 1.5 ** 2) * 25.4
    expect((await figuresOf(room, 'diagonal', who)).length).toBeCloseTo(blank(11 + 15 / 16), 5)
    expect((await figuresOf(room, 'diagonal face=side', who)).length).toBeCloseTo(blank(16 + 15 / 16), 5)
  })

  it('takes the depth of a notch from strips like the plan’s, and from no others', async () => {
    const who = { channel: 'depth' }
    await room.reply('project start 17in x 13in height=15in strip=5/8in', who)
    const asked = 'diagonal 30in x 30in cross=halving'
    expectFigures(await figuresOf(room, asked, who), { notchDepth: inch(5 / 16) })
    expectFigures(await figuresOf(room, `${asked} strip=1 1/2in`, who), { notchDepth: inch(5 / 16) })
    expectFigures(await figuresOf(room, `${asked} strip=2in`, who), { notchDepth: null })
  })
})

describe('what cannot be', () => {
  it.each([
    ['diagonal', /which opening does it cross/u],
    ['diagonal 46in x 29in', /how wide is the strip/u],
    ['diagonal 46in strip=3in', /a width and a height/u],
    ['diagonal 46in x 29in x 3in strip=3in', /a width and a height/u],
    ['diagonal 46in round strip=3in', /a width and a height/u],
    ['diagonal 46in x 29in strip=30in', /too wide for the opening; narrower than 29 in/u],
  ])('%s is told in one sentence', async (line, sentence) => {
    expect(await room.refusal(line)).toMatch(sentence)
  })
})
