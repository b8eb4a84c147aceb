import { afterAll, describe, expect, it } from 'vitest'
import { openRoom } from '../room.ts'
import { expectFigures, figuresOf, inch, textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

describe('every kind of measure', () => {
  it.each([
    ['23 7/8 in', 'length', inch(23, 7, 8)],
    ['606.4mm', 'length', 606.4],
    ['two foot three and a half', 'length', inch(27, 1, 2)],
    ['1,5 cm', 'length', 15],
    ["2' 6", 'length', inch(30)],
  ])('%s is a %s', async (line, kind, millimetres) => {
    expectFigures(await figuresOf(room, `convert ${line}`), {
      kind,
      millimetres,
      inches: Math.round((millimetres / 25.4) * 1e9) / 1e9,
      degrees: null,
    })
  })

  it('a size is a list in the order given', async () => {
    expectFigures(await figuresOf(room, 'convert 24 by 12 in'), {
      kind: 'size',
      millimetres: [inch(24), inch(12)],
      inches: [24, 12],
    })
  })

  it('an angle is told from square first', async () => {
    const reply = await room.reply('convert 22 1/2 degrees')
    expect(reply.figures).toEqual({ kind: 'angle', millimetres: null, inches: null, degrees: 22.5 })
    expect(reply.answer).toBe('22.5° on the saw scale (67.5° between edge and cut)')
  })

  it('an angle past square is cut from the other side', async () => {
    expect((await room.reply('convert 120°')).answer).toBe(
      '30° on the saw scale, for 120° between edge and cut',
    )
    expect((await room.reply('convert 90°')).answer).toContain('set the saw to 0°')
  })

  // Hartford Lumber, table of lumber dimensions: nominal, dressed dry, in whole mm.
  it.each([
    ['2x4', [38, 89]],
    ['1x6', [19, 140]],
    ['2x12', [38, 286]],
    ['4x4', [89, 89]],
  ])('published: %s is dressed to that', async (name, printed) => {
    const { kind, millimetres } = await figuresOf(room, `convert ${name}`)
    expect(kind).toBe('lumber')
    for (const [at, each] of (millimetres as number[]).entries())
      expect(Math.abs(each - (printed[at] ?? 0))).toBeLessThanOrEqual(0.5)
  })

  // Recomputed values from questions people ask.
  it('recomputed: three 2x8 stacked are 21 3/4 high, and two 4x4 posts add 7 to the rails between', async () => {
    const [, high = 0] = (await figuresOf(room, 'convert 2x8')).inches as number[]
    expect(3 * high).toBe(21.75)
    const [wide = 0] = (await figuresOf(room, 'convert 4x4')).inches as number[]
    expect(34 + 2 * wide).toBe(41)
  })
})

describe('the answer', () => {
  it.each([
    ['convert 23 7/8 in', '23 7/8 in = 606.425 mm'],
    ['convert 606.4mm', '23 7/8 in (+0.001) = 606.4 mm'],
    ['convert 606.4mm to=inch', '23 7/8 in (+0.001)'],
    ['convert 1in to=metric', '25.4 mm'],
    ['convert 12in to=mm', '304.8 mm'],
    ['convert 12in to=cm', '30.48 cm'],
    ['convert 12in to=in', '12 in'],
    ['convert 14in to=ft', '1 ft 2 in'],
    ['convert 95 7/8in to=feet', '7 ft 11 7/8 in'],
    ['convert 35.99in to=feet', '3 ft (+0.010)'],
    ['convert 5.995in', '6 in (+0.005) = 152.273 mm'],
    // A thickness that a mark of a fine tape shows is never said as the next sixteenth.
    ['convert 15/32in', '15/32 in = 11.906 mm'],
    ['convert 1/2 ply', '15/32 in = 11.906 mm'],
    ['convert 15/32in tape=1/16', '1/2 in (+0.031) = 11.906 mm'],
    ['convert 600mm tape=1/64', '23 5/8 in (+0.003) = 600 mm'],
  ])('to %s', async (line, answer) => {
    expect((await room.reply(line)).answer).toBe(answer)
  })

  it('says of how many it gives the size', async () => {
    expect(textOf(await room.reply('convert 3 2x4x8'))).toContain('you wrote 3 of them')
  })

  it.each([
    ['convert 24', /^ambiguous: "24" could be 24 in or 24 mm/u],
    ['convert hello', /no number in it/u],
    ['convert 0', /cannot read "0"/u],
    ['convert -5in', /cannot be negative/u],
    ['convert 40 sq ft', /not a length/u],
    ['convert', /value is missing/u],
    [
      'convert 1in to=furlong',
      /^(?:invalid: )?to="furlong" is not one of inch, metric, feet, in, mm, cm or ft\.?$/u,
    ],
  ])('%s is told in one sentence', async (line, sentence) => {
    expect(await room.refusal(line)).toMatch(sentence)
  })
})
