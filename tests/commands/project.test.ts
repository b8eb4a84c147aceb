import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { openRoom, type Room } from '../room.ts'
import { cautionsOf, expectFigures, figuresOf, inch, textOf } from './asking.ts'

const rooms: Room[] = []
let room: Room
beforeEach(async () => {
  room = await openRoom()
  rooms.push(room)
})
afterAll(async () => {
  for (const each of rooms) await each.close()
})

const START = 'project start 17in x 13in height=15in'

describe('project start', () => {
  it('keeps what sizing would answer, figure for figure', async () => {
    const sized = await figuresOf(room, 'sizing 17in x 13in height=15in')
    expect(await figuresOf(room, START)).toEqual(sized)
    expect(await figuresOf(room, 'project')).toEqual(sized)
    expect(await figuresOf(room, 'project show')).toEqual(sized)
    expect(await figuresOf(room, 'project parts')).toEqual(sized)
  })

  it('is of this channel alone', async () => {
    await room.reply(START)
    expect(await room.refusal('project', { channel: 'other' })).toMatch(/this channel has no project yet/u)
  })

  it('takes the place of a plan before, and undo brings that back', async () => {
    await room.reply(START)
    const again = await room.reply('project start 10in x 10in x 10in')
    expect(textOf(again)).toContain('takes the place of the plan before')
    expectFigures(await figuresOf(room, 'project undo'), { insideLength: inch(18) })
  })

  it('goes on to sizing, where what is left out comes from the plan', async () => {
    await room.reply(`${START} clearance=1in`)
    const reply = await room.reply('sizing height=20in')
    expectFigures(reply.figures, { insideLength: inch(19), panelHeight: inch(20) })
    expect(reply.buttons).toEqual([
      { label: 'Change the plan so', line: 'project change height=20in' },
      { label: '2 more cautions', line: 'cautions named=full-sheet, manual' },
    ])
    expectFigures(await figuresOf(room, 'project'), { panelHeight: inch(15) })
  })
})

describe('project change', () => {
  it('answers with what changed, by how much, and what still fits', async () => {
    await room.reply(START)
    const reply = await room.reply('project change sheet=18mm')
    // End panel and rail grow by twice 18 - 11.90625 mm, side rail as well; the panels are thicker.
    const more = 2 * (18 - 11.90625)
    expect(reply.answer).toMatch(/^4 parts change; outside length now /u)
    expect(reply.figures.changedParts).toMatchObject([
      { label: 'A', change: { count: 0, length: more, width: 0, thickness: more / 2 } },
      { label: 'B', change: { count: 0, length: 0, width: 0, thickness: more / 2 } },
      { label: 'C', change: { length: more } },
      { label: 'D', change: { length: more } },
    ])
    // 12.1875 mm is 0.48 in: the answer stays in the units of the plan.
    expect(reply.notes).toEqual(
      expect.arrayContaining([
        'A, C, D longer by 0.48 in',
        'A, B now 0.709 in thick, not 15/32 in',
        expect.stringMatching(/^still fits: inside 18 x 14 in, lip 9\/32 in/u),
      ]),
    )
    expectFigures(reply.figures, { endPanelLength: inch(14) + 2 * 18, lip: inch(1) - 18 })
    expect(cautionsOf(reply)).toContain('more')
    expect(reply.buttons?.at(-1)?.line).toMatch(/^cautions named=.*manual$/u)
  })

  it('of a label says what it is taken as, and nothing of what stays assumed', async () => {
    await room.reply(START)
    const { notes = [] } = await room.reply('project change sheet=3/4 ply')
    expect(notes).toContain('3/4 in plywood taken as 23/32 in thick (measure yours: sheet=)')
    expect(notes.join()).not.toContain('clearance=')
  })

  it.each([
    ['grooves=5', 'grooves in each panel now 5', '5 grooves in each panel: side panels first fence'],
    ['braces=all', '2 parts are new', 'G end brace: blank'],
    ['corner=cleated', '2 parts change, 2 parts are new, 1 part goes', 'still fits'],
    ['clearance=1/2in', 'Nothing changes: every part stays as it is', 'still fits'],
    ['height=16in', '4 parts change; height now 16 in', 'A, B wider by 1 in'],
    ['object=20in round', '4 parts change; inside length now 21 in', 'B, D longer by 3 in'],
  ])('%s says so in the first line', async (change, answer, note) => {
    await room.reply(START)
    const reply = await room.reply(`project change ${change}`)
    expect(reply.answer.startsWith(answer), reply.answer).toBe(true)
    expect(reply.notes?.join('\n')).toContain(note)
  })

  it('says which letters move, apart from what is cut otherwise', async () => {
    await room.reply('project start 17in x 13in height=15in')
    const { answer, notes } = await room.reply('project change lid=inset')
    expect(answer).toBe('3 parts are new, 4 have other letters')
    expect(notes).toContain('other letters: C is D now, D is E now, E is F now, F is G now')
  })

  it('that cannot be built is refused, and nothing is lost', async () => {
    const kept = await figuresOf(room, START)
    expect(await room.refusal('project change height=1in')).toMatch(/leaves no stile/u)
    expect(await room.refusal('project change object=generator 24in x 18in')).toMatch(/^unsafe/u)
    expect(await room.refusal('project change board=1x2')).toMatch(/no captured corner/u)
    expect(await room.refusal('project change clearance=10ft')).toMatch(/is no surround/u)
    expect(await room.refusal('project change')).toMatch(/what changes\?/u)
    expect(await figuresOf(room, 'project')).toEqual(kept)
    expect((await figuresOf(room, 'project history')).revisions).toHaveLength(1)
  })

  it('works on what is kept at that moment: two at once are both kept, or the second is refused', async () => {
    await room.reply(START)
    await Promise.all([
      room.reply('project change sheet=12mm', { user: 'ann' }),
      room.reply('project change height=20in', { user: 'bob' }),
    ])
    expectFigures(await figuresOf(room, 'project'), { endPanelLength: inch(14) + 24, panelHeight: inch(20) })
    // Either alone can be built; with both there is no lip: 7/8 + 23/32 is over 1 1/2.
    const both = await Promise.all([
      room.ask('project change sheet=23/32in', { user: 'ann' }),
      room.ask('project change strip=7/8in', { user: 'bob' }),
    ])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect((await room.ask('project')).ok).toBe(true)
  })

  it('of the width lets go of the board', async () => {
    await room.reply(`${START} board=2x6`)
    expectFigures(await figuresOf(room, 'strips'), { width: inch(11 / 2) })
    // A board as thick as the strips are wide now, which is what the layout takes.
    await room.reply('project change width=1 1/4in')
    expect((await figuresOf(room, 'strips')).board).toBe('6/4x6 8 ft')
    expect((await room.reply('layout')).answer).toContain('6/4x6 8 ft')
    await room.reply('project change width=1 3/8in')
    expect(await room.refusal('strips')).toMatch(/which board/u)
    await room.reply('project change board=1 3/8in x 6in')
    expect(await room.refusal('strips')).toMatch(/which board/u)
  })
})

describe('undo, redo and history', () => {
  it('walk back and forth, with the line that was undone', async () => {
    const first = await figuresOf(room, START)
    await room.reply('project change sheet=18mm')
    const undone = await room.reply('project undo')
    expect(undone.answer).toMatch(/^Undone: "project change sheet=18mm" by me\. 4 parts change/u)
    expect(undone.figures).toMatchObject(first)
    const again = await room.reply('project redo')
    expect(again.answer).toMatch(/^Back again: "project change sheet=18mm" by me/u)
    expectFigures(again.figures, { endPanelLength: inch(14) + 36 })
    await room.reply('project undo')
    expect((await room.reply('project undo')).answer).toContain('this channel has no plan now')
    expect(await room.refusal('project undo')).toMatch(/nothing to undo/u)
    expect((await room.reply('project redo')).figures).toEqual(first)
  })

  it('ends redo with the next change', async () => {
    await room.reply(START)
    await room.reply('project change height=20in')
    await room.reply('project undo')
    await room.reply('project change height=18in')
    expect(await room.refusal('project redo')).toMatch(/nothing to bring back/u)
  })

  it('tell who did what, newest first', async () => {
    await room.reply(START, { user: 'ann' })
    await room.reply('project change sheet=18mm', { user: 'bob' })
    const { figures, notes = [] } = await room.reply('project history')
    expect(figures.revisions).toMatchObject([
      { user: 'bob', command: 'project change sheet=18mm' },
      { user: 'ann', command: START },
    ])
    expect(notes[0]).toMatch(/^2, 2026-03-06 18:\d\d UTC, bob: project change sheet=18mm$/u)
  })

  it('says in the history what was undone, and how many more there are', async () => {
    await room.reply(START)
    await room.reply('project change sheet=18mm')
    await room.reply('project undo')
    const { notes = [] } = await room.reply('project history')
    expect(notes[0]).toMatch(/: project undo \(took back 2: project change sheet=18mm\)$/u)
    for (let height = 16; height < 25; height += 1) await room.reply(`project change height=${height}in`)
    const longer = await room.reply('project history')
    expect(longer.notes).toHaveLength(11)
    expect(longer.notes?.at(-1)).toBe('2 more before these')
    expect(longer.figures.more).toBe(2)
  })
})

describe('forget', () => {
  it('asks first, then leaves nothing', async () => {
    await room.reply(START)
    const asked = await room.reply('project forget')
    expect(asked.figures.deleted).toBe(0)
    expect(asked.answer).toContain('project forget sure=yes')
    expect((await room.reply('project forget sure=no')).figures.deleted).toBe(0)
    expect((await room.ask('project')).ok).toBe(true)
    expect((await room.reply('project forget sure=yes')).answer).toMatch(/^Deleted, with 1 revision\./u)
    expect(await room.refusal('project')).toMatch(/no project yet/u)
    expect(await room.refusal('project undo')).toMatch(/nothing to undo/u)
    expect((await room.reply('project forget sure=yes')).answer).toBe('Nothing was kept in this channel')
  })
})

describe('units and regions', () => {
  it('show in the units of the plan until a person has their own', async () => {
    await room.reply(START)
    expect((await room.reply('project change sheet=18mm')).answer).toContain(' in')
    const who = { user: 'ann' }
    await room.reply('units metric', who)
    expect((await room.reply('project', who)).answer).toBe(
      'Cut 2 end panels 391 x 381 mm and 2 side panels 457 x 381 mm',
    )
    expect((await room.reply('project')).answer).toContain('15 3/8 x 15 in')
  })

  it('are the same parts for whoever asks, wherever they buy their wood', async () => {
    const kept = await figuresOf(room, START)
    await room.reply('units region=UK', { user: 'ann' })
    expect(await figuresOf(room, 'project', { user: 'ann' })).toEqual(kept)
    await room.reply('units region=AU for=channel')
    expect(await figuresOf(room, 'project')).toEqual(kept)
    expectFigures(await figuresOf(room, 'project change height=16in', { user: 'ann' }), {
      insideLength: inch(18),
    })
  })

  it.each(['UK', 'AU', 'EU'])('start from what is usual in %s', async (region) => {
    await room.reply(`units region=${region} for=channel`)
    const figures = await figuresOf(room, 'project start 430mm x 330mm height=380mm')
    expectFigures(figures, { insideLength: 454, endPanelLength: 354 + 24, sidePanelLength: 454 })
    for (const line of ['strips', 'diagonal', 'grooves count=3', 'finish', 'project parts'])
      expect((await room.ask(line)).ok, line).toBe(true)
  })
})

describe('without a plan', () => {
  it.each([
    ['project', /begin one with: project start/u],
    ['project parts', /begin one with/u],
    ['project change sheet=18mm', /begin one with/u],
    ['project undo', /nothing to undo/u],
    ['project redo', /nothing to bring back/u],
    ['project history', /nothing has been kept/u],
    ['project start', /what does it go round/u],
    ['project wibble', /cannot "wibble"; it can start, show/u],
  ])('%s is told in one sentence', async (line, sentence) => {
    expect(await room.refusal(line)).toMatch(sentence)
  })
})
