import { afterAll, describe, expect, it } from 'vitest'
import { openRoom } from '../room.ts'
import { expectFigures, figuresOf, inch, textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

describe('published spacings', () => {
  it.each([
    // ehow.com 6210555: 52 1/2 / 14 = 3 3/4.
    ['spacing 72in piece=1 1/2in gap=4in', 13, inch(15 / 4)],
    // ironfurnit.blogspot.com: ten pieces in 52 in leave 37 / 11 = 3.36.
    ['spacing 52in piece=1 1/2in count=10', 10, inch(37 / 11)],
  ])('%s', async (line, count, gap) => {
    expectFigures(await figuresOf(room, line), { count, gap }, line)
  })

  it('does not repeat a published slip of 3 in: 15 slats of 2 in a rail of 75 leave (75 - 30) / 16 = 2 13/16', async () => {
    // ehow.co.uk 5806309 prints 3 in; 16 gaps of 3 and 15 slats of 2 would take 78 in.
    expectFigures(await figuresOf(room, 'spacing 75in piece=2in count=15'), { gap: inch(2, 13, 16) })
    expectFigures(await figuresOf(room, 'spacing 75in piece=2in gap=3in'), {
      count: 15,
      gap: inch(2, 13, 16),
    })
  })
})

// Recomputed values from questions people ask.
describe('recomputed spacings', () => {
  it.each([
    // (36 - 6 x 3 1/2) / 7 = 15 / 7, and 15 / 5 with pieces at the ends
    ['spacing 36in piece=3 1/2in count=6', inch(15 / 7)],
    ['spacing 36in piece=3 1/2in count=6 ends=flush', inch(3)],
    // (900 - 7 x 70) / 6
    ['spacing 900mm piece=70mm count=7 ends=flush', Math.round((410 / 6) * 1e6) / 1e6],
  ])('%s', async (line, gap) => {
    expectFigures(await figuresOf(room, line), { gap }, line)
  })
})

describe('the reply', () => {
  it('says where each piece starts, from one end', async () => {
    const [table] = (await room.reply('spacing 36in piece=3 1/2in count=6 ends=flush')).tables ?? []
    const starts = table?.rows.map(([, start]) => (start as { length: number }).length / 25_400_000)
    expect(starts).toEqual([0, 6.5, 13, 19.5, 26, 32.5])
  })

  it.each([
    ['spacing 36in piece=3 1/2in count=6', '6 pieces with 7 gaps of 2 1/8 in (-0.018)'],
    ['spacing 36in piece=3 1/2in count=1', '1 piece with 2 gaps of 16 1/4 in'],
    ['spacing 36in piece=3 1/2in count=2 ends=flush', '2 pieces with 1 gap of 29 in'],
    ['spacing 36in piece=3in count=12', '12 pieces edge to edge: no gap is left'],
  ])('to %s counts in words that agree', async (line, answer) => {
    expect((await room.reply(line)).answer).toBe(answer)
  })

  it('says whether there is a gap more or a gap fewer', async () => {
    expect(textOf(await room.reply('spacing 36in piece=3in count=4'))).toContain('one gap more than pieces')
    expect(textOf(await room.reply('spacing 36in piece=3in count=4 ends=flush'))).toContain(
      'one gap fewer than pieces',
    )
  })
})

describe('what cannot be', () => {
  it.each([
    ['spacing 75in piece=2in gap=3in count=15', /keep one/u],
    ['spacing 36in piece=3 1/2in', /how many pieces, or how wide a gap/u],
    ['spacing 36in', /piece is missing/u],
    ['spacing 36in piece=3 1/2in count=11', /10 fit at most/u],
    ['spacing 36in piece=3 1/2in count=1 ends=flush', /ask for two or more/u],
    ['spacing 36in piece=40in gap=1in', /longer than the span/u],
    ['spacing 36in piece=3in gap=40in', /no piece is needed/u],
    ['spacing 36in piece=0in gap=1in', /cannot read "0in"/u],
    ['spacing 36 piece=3 count=3', /^ambiguous: "36" could be 36 in or 36 mm/u],
  ])('%s is told in one sentence', async (line, sentence) => {
    expect(await room.refusal(line)).toMatch(sentence)
  })
})
