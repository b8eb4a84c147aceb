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
    // By hand, two faces and the edges of each, less what is glued on it and the stile ends that stand against the rails.
    const skin = (long: number, wide: number) => 2 * long * wide + 2 * (long + wide) * 10
    const faces = 2 * (320 * 400 + 500 * 400)
    const all =
      2 * (skin(320, 400) - 2 * 320 * 30 - 2 * 340 * 30 - 2 * 340 * 10) +
      2 * (skin(500, 400) - 2 * 500 * 30) +
      4 * (skin(320, 30) - 320 * 30 - 2 * 30 * 10) +
      4 * (skin(540, 30) - 500 * 30) +
      4 * (skin(340, 30) - 340 * 30 - 2 * 30 * 10 - 340 * 10) +
      4 * (skin(340, 30) - 340 * 20)
    expect((await figuresOf(room, 'finish', who)).area as number).toBeCloseTo(all, 3)
    expect((await figuresOf(room, 'finish faces=all', who)).area as number).toBeCloseTo(all, 3)
    expect((await figuresOf(room, 'finish faces=outside', who)).area as number).toBeCloseTo(all - faces, 3)
    const outside = await room.reply('finish faces=outside', who)
    expect(textOf(outside)).toContain('what shows from outside')
    // The table is of what the first line is: its rows are to those of all faces as the areas are.
    const rowsOf = ({ tables }: typeof outside) => tables?.[0]?.rows.map(([, , coat]) => Number(coat)) ?? []
    const sum = (rows: readonly number[]) => rows.reduce((total, coat) => total + coat, 0)
    const whole = sum(rowsOf(await room.reply('finish faces=all', who)))
    expect(sum(rowsOf(outside)) / whole).toBeCloseTo((all - faces) / all, 1)
  })
})

describe('a plan given by options', () => {
  const BOX = 'object=17in x 13in height=15in'

  it('is the same as one that is kept, with nothing kept', async () => {
    const typed = await figuresOf(room, `finish ${BOX} grooves=3`, { channel: 'typed' })
    expect(await room.refusal('finish', { channel: 'typed' })).toMatch(/how much area/u)
    const who = { channel: 'kept' }
    await room.reply('project start 17in x 13in height=15in', who)
    expect(await figuresOf(room, 'finish grooves=3', who)).toEqual(typed)
    expect((await figuresOf(room, 'finish', who)).area as number).toBeLessThan(typed.area as number)
  })

  it('is told part by part, and the parts come to the whole', async () => {
    const { area, parts } = await figuresOf(room, `finish ${BOX} lid=inset bottom=cleats braces=all`)
    const rows = parts as { faces: number; edges: number; grooves: number; bare: number; exposed: number }[]
    expect(rows.length).toBeGreaterThan(10)
    for (const { faces, edges, grooves, bare, exposed } of rows)
      expect(exposed).toBeCloseTo(faces + edges + grooves - bare, 6)
    expect(rows.reduce((sum, { exposed }) => sum + exposed, 0)).toBeCloseTo(area as number, 3)
    const { tables = [] } = await room.reply(`finish ${BOX}`)
    expect(tables[0]?.rows.map((row) => row.at(-1))).toContain('corner stile')
  })

  it.each([
    ['finish 40 sq ft height=15in', /^invalid: an area and a box were both given/u],
    ['finish object=17in x 13in', /how tall/u],
    ['finish object=wood stove 20in x 20in height=30in', /^unsafe: /u],
  ])('%s is refused', async (line, sentence) => {
    expect(await room.refusal(line)).toMatch(sentence)
  })
})

describe('the film and the cans', () => {
  it('says how thick a coat is: 300 ft2 a gallon is 1604.17 / 300 = 5.35 mil wet (spreading-rate guides)', async () => {
    const { wetFilm, dryFilm } = await figuresOf(room, 'finish 40 sq ft product=latex paint')
    expect((wetFilm as number) / 25.4).toBeCloseTo(1604.17 / 300, 3)
    expect(dryFilm as number).toBeCloseTo(0.35 * (wetFilm as number), 9)
    expect((await figuresOf(room, 'finish 40 sq ft product=oil stain')).dryFilm).toBeNull()
  })

  it('buys the cans that cost least by the prices known, and says that examples are examples', async () => {
    const who = { channel: 'priced' }
    const line = 'finish 40 sq ft product=latex paint coats=2'
    const before = await room.reply(line, who)
    expect(before.figures.cost).toBeGreaterThan(0)
    expect(textOf(before)).toContain('example prices as of')
    await room.reply('shopping price latex paint gallon price=1', who)
    const after = await room.reply(line, who)
    expect(after.figures).toMatchObject({ cost: 1, containers: [{ name: 'gallon', count: 1 }] })
    expect(textOf(after)).not.toContain('example prices')
    expect(after.figures.left as number).toBeCloseTo(GALLON - (after.figures.volume as number), 3)
  })
})

describe('drying', () => {
  const hoursTo = (figures: Awaited<ReturnType<typeof figuresOf>>, what: string) =>
    (figures.drying as { what: string; coat: number; hours: number }[]).find((event) => event.what === what)
      ?.hours

  it('is a calendar from the first coat on: a paint maker allows the second after 4 h in the warm', async () => {
    const figures = await figuresOf(room, 'finish 40 sq ft product=latex paint coats=2 temperature=70F')
    expect(figures.drying).toMatchObject([
      { what: 'coat', coat: 1, hours: 0 },
      { what: 'coat', coat: 2 },
      { what: 'touch' },
      { what: 'handle' },
      { what: 'assemble' },
      { what: 'full' },
    ])
    expect(hoursTo(figures, 'touch')).toBeCloseTo(4.5, 9)
    expect(figures.recoatHours).toBeCloseTo(4, 9)
  })

  it('takes longer in the cold, and longer still in damp air, and says by what rule', async () => {
    const at = (air: string) => figuresOf(room, `finish 3 m2 product=varnish ${air}`)
    const warm = hoursTo(await at('temperature=21C'), 'full') as number
    expect(hoursTo(await at('temperature=16C'), 'full')).toBeCloseTo(warm * Math.SQRT2, 6)
    expect(hoursTo(await at('temperature=16C humidity=75%'), 'full')).toBeCloseTo(warm * Math.SQRT2 * 1.5, 6)
    expect(textOf(await room.reply('finish 3 m2 product=varnish temperature=60F'))).toContain('rule of thumb')
  })

  it.each([
    [
      'product=latex paint temperature=45F',
      /^invalid: latex paint does not dry at 45°F: .* 50°F at the least.*or use oil stain/u,
    ],
    [
      'product=latex paint temperature=95F',
      /dries before it flows at 95°F: its maker allows 90°F at the most/u,
    ],
    [
      'product=varnish temperature=20C humidity=90%',
      /does not dry in air of 90 %: its maker asks for less than 85 %/u,
    ],
  ])('%s is refused with what would do', async (asked, sentence) => {
    expect(await room.refusal(`finish 40 sq ft ${asked}`)).toMatch(sentence)
  })

  // A dew point chart for coatings: at 70 F and 65 % the dew point is 57 F (57.6), and the surface must have 62 F (62.6).
  it('says how warm the wood must be for the dew to stay off it', async () => {
    const reply = await room.reply('finish 40 sq ft temperature=70F humidity=65%')
    expect(textOf(reply)).toContain('wood no colder than 63°F: 5°F above the dew point, 58°F')
    expect(((reply.figures.dewPoint as number) * 9) / 5 + 32).toBeCloseTo(57.5, 0)
    expect(textOf(await room.reply('finish 40 sq ft temperature=70F humidity=95%'))).toContain(
      'too damp to coat',
    )
    expect((await figuresOf(room, 'finish 40 sq ft temperature=70F')).dewPoint).toBeNull()
  })

  it('cautions of cold where no maker has named a limit', async () => {
    const caution = cautionsOf(await room.reply('finish 3 m2 product=oil stain temperature=8C'))
    expect(caution).toContain('finish-cold')
  })
})

describe('the reply', () => {
  it('warns of oily rags and fumes, and only where there are any', async () => {
    expect(cautionsOf(await room.reply('finish 40 sq ft product=oil stain'))).toEqual(['oily-rags', 'fumes'])
    expect(cautionsOf(await room.reply('finish 40 sq ft product=latex paint'))).toEqual([])
    expect(cautionsOf(await room.reply('finish 40 sq ft product=shellac'))).toEqual(['fumes'])
  })

  it('says whose parts they are, of a box that was typed beside a project', async () => {
    const who = { channel: 'whose' }
    await room.reply('project start 17in x 13in height=15in', who)
    expect(textOf(await room.reply('finish', who))).toContain("the parts of this channel's project")
    expect(textOf(await room.reply('finish object=10in x 10in', who))).toContain('the parts of this box')
  })

  it('says what nobody said, and that faces= means nothing for a typed area', async () => {
    const text = textOf(await room.reply('finish 40 sq ft faces=outside'))
    for (const said of [
      '(product=)',
      '(coats=)',
      '(surface=rough)',
      'faces= is for the parts of a box: there is none here (object= in place of the area)',
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

it('shows of each part an amount that can be read, however little it is', async () => {
  const who = { channel: 'small parts' }
  await room.reply('units mm', { ...who, user: 'metric' })
  const plan = '300mm x 200mm height=200mm lid=overlapping handle=strip bottom=feet corner=cleated'
  await room.reply(`project start ${plan}`, { ...who, user: 'metric' })
  const { tables = [] } = await room.reply('finish', { ...who, user: 'metric' })
  const cells = tables[0]?.rows.flatMap(([, , coat, bare]) => [String(coat), String(bare)]) ?? []
  for (const cell of cells) expect(cell).toMatch(/^(?:<0\.01|\d+(?:\.\d{1,2})?)$/u)
  expect(cells).toContain('<0.01')
})
