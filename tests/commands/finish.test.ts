import { afterAll, describe, expect, it } from 'vitest'
import { openRoom } from '../room.ts'
import { cautionsOf, expectFigures, figuresOf, textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

const GALLON = 231 * 16.387064
const SQUARE_FOOT = 92_903.04
const uk = { user: 'uk', channel: 'uk' }
await room.reply('units region=UK', uk)

describe('published coverage: one coat on the area that a can is said to cover takes the can', () => {
  it.each([
    // Wood Handbook (GTR-190), ch. 16: oil semitransparent stain, 200 ft2/gal smooth at the least, 100 rough.
    ['finish 200 sq ft product=oil stain coats=1', GALLON],
    ['finish 100 sq ft product=oil stain coats=1 surface=rough', GALLON],
    // A paint maker's sheet for exterior latex: 300 ft2/gal at the least on primed smooth wood.
    ['finish 300 sq ft product=latex paint coats=1', GALLON],
    // A paint maker's sheet for stain-block primer: about 400 ft2/gal.
    ['finish 400 sq ft product=primer coats=1', GALLON],
    // Finish retailers' guides: 125 ft2 of varnish to the quart at the least.
    ['finish 125 sq ft product=varnish coats=1', GALLON / 4],
  ])('%s', async (line, perCoat) => {
    expect(Math.abs(((await figuresOf(room, line)).perCoat as number) - perCoat)).toBeLessThan(0.01)
  })

  // UK answers on paint cans: 2.5 L is 30 m2 of gloss or 32 m2 of eggshell.
  it.each([
    ['finish 30 m2 product=gloss coats=1', 2500],
    ['finish 32 m2 product=eggshell coats=1', 2500],
  ])('%s', async (line, perCoat) => {
    expect((await figuresOf(room, line, uk)).perCoat).toBeCloseTo(perCoat, 6)
  })
})

describe('what to buy', () => {
  it('is coats times the area with a tenth for tray and rag, in cans that hold it', async () => {
    // 40 / 300 gal x 2 x 1.1 = 0.2933 gal: a quart and the smallest can for the rest, half a pint.
    const figures = await figuresOf(room, 'finish 40 sq ft product=latex paint coats=2')
    expectFigures(figures, { area: 40 * SQUARE_FOOT, coats: 2 })
    expect(figures.volume as number).toBeCloseTo((40 / 300) * 2 * 1.1 * GALLON, 2)
    expect(figures.containers).toMatchObject([
      { name: 'quart', count: 1 },
      { name: 'half-pint', count: 1 },
    ])
    const held = (figures.containers as { millilitres: number; count: number }[]).map(
      (can) => can.millilitres * can.count,
    )
    expect(held.reduce((sum, each) => sum + each)).toBeGreaterThanOrEqual(figures.volume as number)
  })

  it.each([
    [
      'finish 40 sq ft product=latex paint coats=2',
      'Buy 1 quart and 1 half-pint of latex paint: 1.17 qt for 2 coats on 40 sq ft',
    ],
    ['finish 40 sq ft product=stain surface=rough', 'Buy 2 quarts of oil stain: 2 qt for 1 coat on 40 sq ft'],
  ])('%s is asked for at the counter so', async (line, answer) => {
    expect((await room.reply(line)).answer).toBe(answer)
  })

  it('is in mL where the cans are, for a fluid ounce is not the same everywhere', async () => {
    const { answer, notes = [] } = await room.reply('finish 40 sq ft product=oil stain', uk)
    expect(answer).toMatch(/^Buy 1 x 1 L of oil stain: 8\d\d mL for 1 coat on 40 sq ft$/u)
    expect(notes.join()).not.toContain('fl oz')
  })

  it.each([
    ['40 square feet', 40 * SQUARE_FOOT],
    ['40ft2', 40 * SQUARE_FOOT],
    ['40 sqft', 40 * SQUARE_FOOT],
    ['3.5m2', 3_500_000],
    ['3,5 m²', 3_500_000],
    ['3.5 square metres', 3_500_000],
    ['4ft x 8ft', 32 * SQUARE_FOOT],
    ['144 sq in', SQUARE_FOOT],
  ])('%s is read', async (area, expected) => {
    expect((await figuresOf(room, `finish ${area} product=latex paint`)).area as number).toBeCloseTo(
      expected,
      3,
    )
  })

  it.each([
    ['paint', 'latex paint'],
    ['varnish', 'oil polyurethane'],
    ['deck stain', 'oil stain'],
    ['oil', 'boiled linseed oil'],
  ])('a product called %s is %s', async (called, name) => {
    expect((await figuresOf(room, `finish 40 sq ft product=${called}`)).product).toBe(name)
  })
})

describe('with the channel’s plan', () => {
  it('covers every face and edge of the parts, or the outside alone', async () => {
    const who = { channel: 'plan' }
    await room.reply(
      'project start 500mm x 300mm height=400mm clearance=0 sheet=10mm strip=10mm width=30mm fit=0',
      who,
    )
    // End panels 320 x 400, side panels 500 x 400, each with edges 10 thick; strips of 320, 540, 340, 340 show their sides.
    const [faces, edges] = [320 * 400 + 500 * 400, 10 * (320 + 400 + 500 + 400)].map((each) => 2 * each) as [
      number,
      number,
    ]
    const strips = [320, 540, 340, 340].reduce((sum, long) => sum + 4 * 2 * (long + 30) * 10, 0)
    const all = 2 * faces + 2 * edges + strips
    expect((await figuresOf(room, 'finish', who)).area as number).toBeCloseTo(all, 3)
    expect((await figuresOf(room, 'finish faces=all', who)).area as number).toBeCloseTo(all, 3)
    expect((await figuresOf(room, 'finish faces=outside', who)).area as number).toBeCloseTo(all - faces, 3)
    expect(textOf(await room.reply('finish faces=outside', who))).toContain('outside faces and all edges')
  })
})

describe('the reply', () => {
  it('warns of oily rags and fumes, and only where there are any', async () => {
    expect(cautionsOf(await room.reply('finish 40 sq ft product=oil stain'))).toEqual(['oily-rags', 'fumes'])
    expect(cautionsOf(await room.reply('finish 40 sq ft product=latex paint'))).toEqual([])
    expect(cautionsOf(await room.reply('finish 40 sq ft product=shellac'))).toEqual(['fumes'])
  })

  it('says what nobody said, and that faces= means nothing for a typed area', async () => {
    const text = textOf(await room.reply('finish 40 sq ft faces=outside'))
    for (const said of [
      '(product=)',
      '(coats=)',
      '(surface=rough)',
      'faces= counts for the parts of a plan only',
    ])
      expect(text).toContain(said)
  })

  it.each([
    ['finish', /how much area/u],
    ['finish 0 sq ft', /"0 sq ft" is no area at all/u],
    ['finish 10000000 sq ft', /more than is reckoned with; write less than 100000 of that unit/u],
    ['finish 40', /^ambiguous: "40" could be 40 sq ft or 40 m2; write 40 sq ft or 40 m2$/u],
    ['finish 40in', /"40in" is one length, and an area has two; write 4ft x 8ft/u],
    ['finish 4ft x 8ft x 2in', /as an area/u],
    ['finish 40 sq ft product=unicorn', /no finish "unicorn"; there is oil stain/u],
    ['finish 40 sq ft coats=0', /from 1 to 10$/u],
    ['finish 40 sq ft coats=99', /coats="99" is out of range; write a whole number from 1 to 10$/u],
    ['finish 4ft by coats 2', /; write coats=2$/u],
    ['finish 40 sq ft product=varnish surface=rough', /no source says how far .*surface=smooth/u],
  ])('%s is told in one sentence', async (line, sentence) => {
    expect(await room.refusal(line)).toMatch(sentence)
  })
})
