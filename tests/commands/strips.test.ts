import { afterAll, describe, expect, it } from 'vitest'
import { openRoom } from '../room.ts'
import { cautionsOf, expectFigures, figuresOf, inch, textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

describe('a slip in the line', () => {
  it.each([
    ['strips 2x6 __proto__=1', /there is no option "__proto__" here; there is board, rip/u],
    ['strips 2x6 rip 1/2in', /; write rip=1\/2in$/u],
    ['strips 2x6 rip 1/2in kerf 1/8in need=4', /; write rip=1\/2in$/u],
    [
      'strips 2x6 rip=1/2in need=1000000',
      /"1000000" is more than is reckoned with; write 1 to 10000 strips$/u,
    ],
  ])('%s is mended by its refusal', async (line, sentence) => {
    expect(await room.refusal(line)).toMatch(sentence)
  })
})

describe('strips across a board', () => {
  // n strips take n s + (n - 1) k. A 2x6 and a 1x6 are 5 1/2 in wide, a 2x4 is 3 1/2; kerf 1/8.
  it.each([
    // 9 x 1/2 + 8 x 1/8 = 5 1/2
    ['2x6 rip=1/2in', 9, 8, 0],
    // 5 x 1/2 + 4 x 1/8 = 3
    ['2x4 rip=1/2in', 5, 5, inch(1 / 2)],
    // 9 x 12 + 8 x 2.4 = 127.2 of 140
    ['38x140 rip=12mm kerf=2.4mm', 9, 9, 140 - 127.2],
    // One strip as wide as the board.
    ['2x6 rip=5 1/2in', 1, 1, 0],
  ])('%s', async (line, perBoard, safePerBoard, spare) => {
    expectFigures(
      await figuresOf(room, `strips ${line}`),
      { perBoard, safePerBoard, spare, boards: null },
      line,
    )
  })

  // Recomputed values from questions people ask.
  it.each([
    // 15 x 1/4 + 14 x 1/8 = 5 1/2, nothing spare
    ['1x6 rip=1/4in', 15, 14, 0],
    // 4 x 1 9/32 + 3 x 1/8 = 5 1/2
    ['1x6 rip=1 9/32in', 4, 3, 0],
    // 2 x 1 1/4 + 1/8 = 2 5/8; 7/8 is left, 3/4 after the cut
    ['2x4 rip=1 1/4in', 2, 2, inch(7 / 8)],
    // 2 x 1 1/8 + 1/8 = 2 3/8; 1 1/8 is left, 1 after the cut
    ['2x4 rip=1 1/8in', 2, 2, inch(9 / 8)],
    // 4 x 3/4 + 3 x 1/8 = 3 3/8; the last eighth goes as kerf
    ['2x4 rip=3/4in', 4, 4, inch(1 / 8)],
    // 6 x 3/4 + 5 x 1/8 = 5 1/8; 3/8 is left, 1/4 after the cut
    ['2x6 rip=3/4in', 6, 6, inch(3 / 8)],
    // 3 x 1 1/2 + 2 x 1/8 = 4 3/4; 3/4 is left, 5/8 after the cut
    ['2x6 rip=1 1/2in', 3, 3, inch(3 / 4)],
  ])('recomputed: %s', async (line, perBoard, safePerBoard, spare) => {
    expectFigures(await figuresOf(room, `strips ${line}`), { perBoard, safePerBoard, spare }, line)
  })

  it('published: a 30 in bat halved with a 1/8 in kerf gives 14 15/16 in each (toolboxtoday.com, kerf example)', async () => {
    const { perBoard, spare } = await figuresOf(room, 'strips 1in x 30in rip=14 15/16in kerf=1/8in')
    expect([perBoard, spare]).toEqual([2, 0])
  })

  it('takes a board that is just the strip as it is: no cut, no caution, one a board', async () => {
    const reply = await room.reply('strips 2x6 rip=5 1/2in need=4')
    expectFigures(reply.figures, { perBoard: 1, safePerBoard: 1, boards: 4 })
    expect(reply.answer).toMatch(/^Take 4 boards: 1 strip /u)
    expect(textOf(reply)).toContain('the board is the strip')
    expect(reply.cautions).toEqual([])
  })

  it('walks the fence in by a strip and a kerf, and stops at the safe piece', async () => {
    const { settings } = await figuresOf(room, 'strips 2x6 rip=1/2in')
    // 5 1/2 less 5/8 each time; after 2 3/8 the next would leave 1 3/4, under 2.
    expectFigures({ settings } as never, {
      settings: [39, 34, 29, 24, 19].map((eighths) => inch(0, eighths, 8)),
    })
    expect((await room.reply('strips 2x6 rip=1/2in safe=1/2in')).figures.settings).toHaveLength(8)
  })
})

describe('boards to buy', () => {
  it.each([
    // 40 strips at 8 a board
    ['strips 2x6x8 rip=1/2in need=40', 5],
    ['strips 2x6x8 rip=1/2in need=41', 6],
    ['strips 2x6 rip=1/2in need=40 strips', 5],
    ['strips 2x6 rip=1/2in need=1', 1],
    // 60 m / 2.4 m = 25 strips at 9 a board
    ['strips 38x140 rip=12mm kerf=2.4mm need=60m length=2.4m', 3],
    // 60 ft / 8 ft = 7.5, so 8 strips at 3 a board
    ['strips 2x6x8 rip=1 1/2in need=60ft', 3],
    // Ten boards of 8 ft at 5 strips each are 400 ft of strip
    ['strips 2x4x8 rip=1/2in need=400ft', 10],
  ])('%s', async (line, boards) => {
    expect((await figuresOf(room, line)).boards).toBe(boards)
  })

  it('counts boards on hand', async () => {
    expect(textOf(await room.reply('strips 5 2x6x8 rip=1/2in'))).toContain(
      '5 2x6 give 40 strips, at 8 a board',
    )
  })

  it('says one board and one strip in the singular', async () => {
    const { answer, notes = [] } = await room.reply('strips 2x4 rip=1 1/2in need=1')
    expect(answer).toBe('Rip 1 board: 2 strips of 1 1/2 in from each 2x4')
    expect(notes.join()).toContain('1 strip needed, 1 more comes out')
  })
})

describe('with the channel’s plan', () => {
  it('rips what the plan needs, from the boards of its layout', async () => {
    const who = { channel: 'plan' }
    await room.reply('project start 17in x 13in height=15in', who)
    // Four each of 19 15/16, 14 15/16, 12 and 11 15/16 in 96 in boards, longest first, 1/8 between: three strips.
    // First 4 x 19 15/16 + 14 15/16 = 94 11/16 and 4 kerfs; then 3 x 14 15/16 + 4 x 12 = 92 13/16; then 4 x 11 15/16.
    const usual = await room.reply('strips', who)
    expectFigures(usual.figures, { perBoard: 9, boards: 1, width: inch(11 / 2), board: '2x6 8 ft' })
    expect(textOf(usual)).toContain('3 strips needed, 5 more come out')
    expect(textOf(usual)).toContain('1 of 2x6 8 ft: the boards that "layout" and "shopping" take')
    expect(textOf(await room.reply('strips 2x4', who))).toContain('"layout" proves it')
    // From 6 ft boards: 3 x 19 15/16; 19 15/16 + 3 x 14 15/16; 14 15/16 + 4 x 12; 4 x 11 15/16: four strips.
    expect(textOf(await room.reply('strips length=6ft', who))).toContain('4 strips needed')
    expect((await figuresOf(room, 'strips 2x6 length=20in', who)).boards).toBe(Math.ceil(16 / 8))
  })

  it('counts nothing for strips that are not the plan’s', async () => {
    const who = { channel: 'other strips' }
    await room.reply('project start 17in x 13in height=15in', who)
    expect((await figuresOf(room, 'strips 1x6', who)).boards).toBeNull()
    expect((await figuresOf(room, 'strips 2x4 rip=3/4in', who)).boards).toBeNull()
    expect((await figuresOf(room, 'strips 2x4 need=10', who)).boards).toBe(2)
  })

  it('keeps to the board and the strip that were chosen', async () => {
    const who = { channel: 'chosen' }
    await room.reply('project start 17in x 13in height=15in board=2x8 strip=5/8in', who)
    // 10 x 5/8 + 9 x 1/8 = 7 3/8 is more than 7 1/4; nine take 6 5/8
    expectFigures(await figuresOf(room, 'strips', who), {
      perBoard: 9,
      width: inch(29 / 4),
      spare: inch(5 / 8),
    })
    await room.reply('project change width=1 3/8in', who)
    expect(await room.refusal('strips', who)).toMatch(/which board is ripped/u)
  })
})

describe('the reply', () => {
  it('warns where nothing is spare, and of thin strips', async () => {
    const reply = await room.reply('strips 2x6 rip=1/2in')
    expect(reply.answer).toBe('9 strips of 1/2 in from each 2x6, but count on 8: nothing is spare')
    expect(cautionsOf(reply)).toEqual(['rip-thin', 'fence-stick', 'manual'])
    expect(textOf(await room.reply('strips 2x6 rip=5 7/16in'))).toContain('tight: 1/16 in spare')
  })

  it('shows no empty table where no cut is safe', async () => {
    const reply = await room.reply('strips 2x6 rip=1/2in safe=6in')
    expect(reply.tables).toEqual([])
    expect(textOf(reply)).toContain('no cut leaves 6 in at the fence')
  })

  it.each([
    ['strips 2x6 rip=6in', /gives no strip of 6 in/u],
    ['strips 2x6 rip=0', /cannot read "0"/u],
    ['strips 2x6 rip=1in kerf=5in', /no saw blade takes 5 in/u],
    ['strips 2x6 rip=1/2in need=60ft', /how long are the boards/u],
    ['strips 2x6x8 rip=1/2in need=60ft length=10ft', /given twice/u],
    ['strips 2x6 rip=1/2in need=many', /cannot read "many"/u],
    ['strips 1/2 ply rip=1in', /as a board/u],
  ])('%s is told in one sentence', async (line, sentence) => {
    expect(await room.refusal(line)).toMatch(sentence)
  })
})
