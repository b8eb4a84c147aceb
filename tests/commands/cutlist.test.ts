import { afterAll, describe, expect, it } from 'vitest'
import { PHONE_COLUMNS, tableLines } from '../../src/bot/format.ts'
import type { Reply } from '../../src/bot/reply.ts'
import { createSearch } from '../../src/search/pool.ts'
import { openRoom } from '../room.ts'

const search = createSearch({ threads: 1, queue: 8 })
afterAll(() => search.close())

const PLAN = 'project start 17in x 13in height=15in'

interface Row {
  readonly label: string
  readonly count: number
  readonly from: string
  readonly length: number
  readonly width: number | null
  readonly thickness: number | null
  readonly material: string | null
  readonly grain: boolean
  readonly later: boolean
}
const rows = (reply: Reply) => reply.figures.parts as unknown as readonly Row[]
const counts = (reply: Reply) => rows(reply).map(({ label, count }) => `${label}${count}`)

/** The reply to the last of some lines in a fresh room. */
async function say(...lines: readonly string[]): Promise<Reply> {
  const room = await openRoom({ search })
  const replies = []
  for (const line of lines) replies.push(await room.reply(line))
  await room.close()
  return replies.at(-1) as Reply
}

async function refuse(...lines: readonly string[]): Promise<string> {
  const room = await openRoom({ search })
  for (const line of lines.slice(0, -1)) await room.reply(line)
  const refusal = await room.refusal(lines.at(-1) ?? '')
  await room.close()
  return refusal
}

describe('a brace in the list', () => {
  it('has its blank rounded up, and every other part down', async () => {
    const room = await openRoom({ search })
    await room.reply(`${PLAN} braces=all`)
    const response = await room.ask('cutlist list')
    if (!response.ok) throw new Error(response.error)
    const purposes = (response.reply.tables ?? []).flatMap(({ rows }) =>
      rows.flatMap((row) => row.flatMap((cell) => (typeof cell === 'object' ? [cell.purpose] : []))),
    )
    expect(purposes.filter((purpose) => purpose === 'cover')).toHaveLength(2)
    expect(purposes.filter((purpose) => purpose === 'into').length).toBeGreaterThan(4)
    await room.close()
  })
})

describe('adding parts', () => {
  it('takes one', async () => {
    const reply = await say('cutlist add 4x 24in x 12in x 3/4 ply')
    // 3/4 plywood is 23/32 in thick in the US (PS 1; config/sheets.yaml).
    expect(rows(reply)).toEqual([
      {
        label: 'A',
        count: 4,
        from: 'sheet',
        name: null,
        material: 'plywood',
        length: 609.6,
        width: 304.8,
        thickness: 18.25625,
        grain: false,
        later: false,
      },
    ])
    expect(reply.answer).toBe('Added: 4 parts in 1 row')
  })

  it('says one part and one row', async () =>
    expect((await say('cutlist add 24in x 12in')).answer).toBe('Added: 1 part in 1 row'))

  it.each([
    ['lines', 'cutlist add side 2 @ 24in x 12in\nend 2 @ 12in x 12in\n3 @ 4 ft'],
    ['semicolons', 'cutlist add side 2 @ 24in x 12in; end 2 @ 12in x 12in; 3 @ 4 ft'],
    ['semicolons and a last one', 'cutlist add side 2 @ 24in x 12in; end 2 @ 12in x 12in;3 @ 4 ft;'],
  ])('takes a pasted list, parted by %s', async (_, line) => {
    const reply = await say(line)
    expect(counts(reply)).toEqual(['side2', 'end2', 'A3'])
    expect(rows(reply).map(({ from }) => from)).toEqual(['sheet', 'sheet', 'board'])
  })

  it.each([
    ['commas', 'label,qty,length,width\nside,2,24in,12in\nend,3,12in,10in'],
    ['semicolons', 'label;qty;length;width\nside;2;24in;12in\nend;3;12in;10in'],
  ])('takes a table with %s', async (_, table) => {
    const reply = await say(`cutlist add ${table}`)
    expect(counts(reply)).toEqual(['side2', 'end3'])
    expect(rows(reply).map(({ length, width }) => [length, width])).toEqual([
      [609.6, 304.8],
      [304.8, 254],
    ])
  })

  it('takes one row of a table on one line', async () => {
    expect(rows(await say('cutlist add side;2;24in;12in'))).toMatchObject([
      { label: 'side', count: 2, length: 609.6, width: 304.8 },
    ])
  })

  it.each([['cutlist add 5x 30in 2x6'], ['cutlist add 2x6 30in (x5)'], ['cutlist add 5 @ 30in 2x6']])(
    'takes a board by its name, wherever that stands: %s',
    async (line) => {
      // A 2x6 is dressed to 1 1/2 x 5 1/2 in (PS 20, American Softwood Lumber Standard).
      expect(rows(await say(line))).toMatchObject([
        { count: 5, from: 'board', length: 762, width: 139.7, thickness: 38.1 },
      ])
    },
  )

  it('takes strips, which have the board’s thickness as their face', async () => {
    const [row] = rows(await say('cutlist add 5x 30in 2x6 strip=1/2in'))
    expect(row).toMatchObject({ from: 'strip', length: 762, width: 38.1, thickness: 12.7 })
    expect(await refuse('cutlist add 5x 30in x 12in strip=1/2in')).toMatch(
      /^invalid: nothing was added: part A has a width/u,
    )
  })

  it('keeps grain and what waits for the day, and says so once', async () => {
    const reply = await say('cutlist add 2x 24in x 12in; 3x 12in x 10in grain=yes later=yes')
    expect(rows(reply).every(({ grain, later }) => grain && later)).toBe(true)
    expect(reply.notes).toContain('A and B: grain along the length, not turned')
    expect(reply.notes).toContain('A and B: cut to fit on the day')
  })

  it('keeps materials apart', async () => {
    const reply = await say('cutlist add 2x 24in x 12in x 18mm mdf; 1x 24in x 12in x 18mm osb')
    expect(rows(reply).map(({ material }) => material)).toEqual(['MDF', 'OSB'])
    expect(reply.tables?.map(({ title }) => title)).toHaveLength(2)
  })

  it('shows a list in the units that it was written in', async () => {
    const [table] = (await say('cutlist add 2x 600mm x 300mm', 'cutlist')).tables ?? []
    expect(table?.title).toBe('From sheets (mm)')
    expect(table?.rows).toEqual([['A', 2, '600', '300']])
    const settled = await say('units inch', 'cutlist add 2x 600mm x 300mm', 'cutlist')
    expect(settled.tables?.[0]?.title).toBe('From sheets (in)')
  })

  it('takes ten thousand parts, and no more', async () => {
    const reply = await say('cutlist add 10000x 24in x 12in')
    expect(reply.answer).toBe('Added: 10000 parts in 1 row')
    expect(await refuse('cutlist add 9999x 24in x 12in', 'cutlist add 2x 24in x 12in')).toBe(
      'invalid: nothing was changed: with 2 of part B there are more than 10000 parts, the most that a cut list takes',
    )
  })
})

describe('labels', () => {
  it('are kept where they are free, and the change is said where not', async () => {
    const reply = await say('cutlist add shelf 2 @ 24in x 12in', 'cutlist add Shelf 3 @ 20in x 10in')
    expect(counts(reply)).toEqual(['shelf2', 'Shelf23'])
    expect(reply.notes).toContain('"Shelf" is called Shelf2')
  })

  it('are never given twice, not even by a later line', async () => {
    const reply = await say('cutlist add 2 @ 24in x 12in\nA 3 @ 20in x 10in\n1 @ 5in x 5in')
    expect(counts(reply)).toEqual(['B2', 'A3', 'C1'])
  })

  it('that are too long are shortened and told apart', async () => {
    const reply = await say(
      'cutlist add left side of the box 1 @ 24in x 12in\nleft side of the bin 1 @ 20in x 10in',
    )
    const labels = rows(reply).map(({ label }) => label)
    expect(new Set(labels).size).toBe(2)
    for (const label of labels) expect(label.length).toBeLessThanOrEqual(12)
  })

  it('run on past Z', async () => {
    const lines = Array.from({ length: 28 }, (_, index) => `1 @ ${index + 2}in x 2in`)
    expect(counts(await say(`cutlist add ${lines.join('\n')}`)).slice(-3)).toEqual(['Z1', 'AA1', 'AB1'])
  })
})

describe('a board with its length and a count', () => {
  it.each([
    '8ft 2x4 x3',
    '3x 8ft 2x4',
    '2x4x8 x3',
    "rail 2x4 8' 3x",
    '8 ft 2x4 x 3',
    'x3 2x4x8',
    '3 x 2x4x8',
  ])('is read from %s', async (typed) =>
    expect((await say(`cutlist add ${typed}`)).figures.parts).toMatchObject([
      { count: 3, from: 'board', length: 2438.4, width: 88.9, thickness: 38.1 },
    ]),
  )

  it('stays a board with a wood named, and where it is bought somewhere else', async () => {
    expect((await say('cutlist add 4x 30in 1x3 cedar')).figures.parts).toMatchObject([
      { count: 4, from: 'board', length: 762, width: 63.5, thickness: 19.05 },
    ])
    expect((await say('cutlist add 2400mm 38x89 x3')).figures.parts).toMatchObject([
      { count: 3, from: 'board', length: 2400, width: 89, thickness: 38 },
    ])
  })
})

describe('what cannot be a part', () => {
  it.each([
    ['a line without a size', '4x 24in x 12in\n8 screws', 'line 2, "8 screws"'],
    ['a count of 0', '2x 24in x 12in; 0x 4in x 5in', 'asks for 0 of them'],
    ['a count below 0', '2x 24in x 12in\n-3x 4in x 5in', 'line 2, "-3x 4in x 5in": has a number below zero'],
    ['a negative cell', 'label,qty,length,width\nside,-2,24in,12in', 'line 2'],
    ['a negative size', '2x -24in x 12in\n3x 4in x 5in', 'line 1'],
    ['more than anybody cuts', '10001x 24in x 12in', '10001'],
  ])('refuses the whole list for %s', async (_, list, said) => {
    const room = await openRoom({ search })
    const refusal = await room.refusal(`cutlist add ${list}`)
    expect(refusal).toContain('invalid: nothing was added: ')
    expect(refusal).toContain(said)
    expect((await room.reply('cutlist')).figures.parts).toEqual([])
    await room.close()
  })

  it('says how many more such lines there are', async () =>
    expect(await refuse('cutlist add 1x 2in x 2in\nx12\ny13\nz14')).toMatch(/; 2 more like it$/u))

  it('asks which unit is meant', async () =>
    expect(await refuse('cutlist add 24 x 12')).toMatch(/24 in x 12 in.* 24 mm x 12 mm/u))

  it('says what would do where there is no part at all', async () =>
    expect(await refuse('cutlist add panels')).toBe(
      'invalid: no part was found; write one as: 4x 24in x 12in ply',
    ))
})

describe('changing the list', () => {
  const START = 'cutlist add side 2 @ 24in x 12in\nend 3 @ 12in x 12in'

  it('changes a part, whatever the case of its label', async () => {
    const reply = await say(START, 'cutlist change SIDE count=5 width=300mm grain=yes when=day')
    expect(rows(reply)[0]).toMatchObject({ count: 5, length: 609.6, width: 300, grain: true, later: true })
    const back = await say(START, 'cutlist change side when=day', 'cutlist change side when=now')
    expect(rows(back)[0]).toMatchObject({ later: false })
  })

  it('removes a part', async () => expect(counts(await say(START, 'cutlist remove side'))).toEqual(['end3']))

  it.each([
    ['cutlist change side', 'what changes about "side"? Add an option, such as count=4'],
    ['cutlist change sied count=4', 'no part is called "sied". Did you mean side?'],
    ['cutlist remove sied', 'no part is called "sied". Did you mean side?'],
    ['cutlist change side count=0', 'count="0" is out of range'],
    ['cutlist change side count=-2', 'count'],
    ['cutlist change side length=0in', 'length'],
    ['cutlist change side count=9998', 'more than 10000 parts'],
  ])('refuses %s', async (line, said) => expect(await refuse(START, line)).toContain(said))

  it('empties, undoes and does again', async () => {
    const room = await openRoom({ search })
    for (const line of [START, 'cutlist remove side', 'cutlist clear']) await room.reply(line)
    expect((await room.reply('cutlist')).answer).toMatch(/^The cut list is empty/u)
    const undone = await room.reply('cutlist undo')
    expect(undone.answer).toBe('Undone: "cutlist clear": 3 parts in 1 row')
    expect(counts(await room.reply('cutlist undo'))).toEqual(['side2', 'end3'])
    const redone = await room.reply('cutlist redo')
    expect(redone.answer).toBe('Done again: "cutlist remove side": 3 parts in 1 row')
    expect(await room.refusal('cutlist undo x')).toMatch(/^unknown/u)
    await room.close()
  })

  it('has nothing to undo or redo at first', async () => {
    expect(await refuse('cutlist undo')).toBe('invalid: there is nothing to undo in this cut list')
    expect(await refuse('cutlist redo')).toBe('invalid: there is nothing to redo in this cut list')
  })

  it('is one list a channel', async () => {
    const room = await openRoom({ search })
    await room.reply(START, { channel: 'shed', user: 'ana' })
    expect((await room.reply('cutlist', { channel: 'shed', user: 'ben' })).answer).toMatch(/5 parts/u)
    expect((await room.reply('cutlist')).figures.parts).toEqual([])
    await room.close()
  })
})

describe('the parts of the plan', () => {
  it('are the list until somebody makes one', async () => {
    const reply = await say(PLAN, 'cutlist')
    expect(reply.answer).toBe('The parts of this channel’s plan: 20 parts in 6 rows')
    expect(rows(reply).filter(({ from }) => from === 'strip')).toHaveLength(4)
    expect(reply.notes).toContain('F corner stile: cut to fit on the day')
  })

  it('are kept when a part is added, changed or removed', async () => {
    expect(counts(await say(PLAN, 'cutlist add shelf 1 @ 16in x 12in'))).toHaveLength(7)
    expect(counts(await say(PLAN, 'cutlist change A count=9'))[0]).toBe('A9')
    expect(counts(await say(PLAN, 'cutlist remove A'))).toHaveLength(5)
  })

  it('do not come back by themselves after the list was emptied', async () => {
    expect((await say(PLAN, 'cutlist clear', 'cutlist')).answer).toContain('cutlist plan')
    expect(counts(await say(PLAN, 'cutlist clear', 'cutlist add 2x 24in x 12in'))).toEqual(['A2'])
    expect(counts(await say(PLAN, 'cutlist clear', 'cutlist plan'))).toHaveLength(6)
    expect(await refuse(PLAN, 'cutlist clear', 'layout')).toContain('cutlist plan')
  })

  it('cannot be taken without a plan', async () =>
    expect(await refuse('cutlist plan')).toMatch(/no project yet/u))
})

describe('on a phone', () => {
  it('no line of a table is too wide', async () => {
    const room = await openRoom({ search })
    const list =
      'cutlist add longestlabel 1000 @ 107 15/16in x 47 31/32in x 3/4 birch ply\n12 @ 23 15/16in x 2in\n4 @ 95 15/16in 2x12'
    const response = await room.ask(list)
    if (!response.ok) throw new Error(response.error)
    const lines = (response.reply.tables ?? []).flatMap((table) => tableLines(table, response.show))
    expect(lines.length).toBeGreaterThan(8)
    for (const line of lines) expect([...line].length, line).toBeLessThanOrEqual(PHONE_COLUMNS)
    await room.close()
  })
})
