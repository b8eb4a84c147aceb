import { describe, expect, it } from 'vitest'
import { inches, millimetres } from '../../src/core/measure/length.ts'
import { type Preferences, type Settled, settle, shownIn } from '../../src/bot/preferences.ts'
import { config, openRoom } from '../room.ts'

describe('settle', () => {
  it.each<[string, Preferences, Preferences, Partial<Settled>]>([
    ['nothing said', {}, {}, { units: undefined, tape: 16, kerf: inches(1, 8), region: 'US' }],
    [
      'the channel',
      {},
      { units: 'metric', region: 'UK' },
      { units: 'metric', region: 'UK', tape: 16, kerf: millimetres(3) },
    ],
    [
      'the person over the channel',
      { units: 'inch' },
      { units: 'metric', tape: 64 },
      { units: 'inch', tape: 64 },
    ],
    [
      'one thing each',
      { kerf: millimetres(2.4) },
      { tape: 32 },
      { kerf: millimetres(2.4), tape: 32, region: 'US' },
    ],
  ])('%s', (_, person, channel, settled) => {
    expect(settle(person, channel, config.bot)).toMatchObject(settled)
  })

  it.each<[Preferences, 'inch' | 'metric' | undefined, 'inch' | 'metric']>([
    [{}, undefined, 'inch'],
    [{}, 'metric', 'metric'],
    [{ units: 'inch' }, 'metric', 'inch'],
    [{ region: 'AU' }, undefined, 'metric'],
    [{ region: 'AU' }, 'inch', 'inch'],
  ])('%j and a question in %s is shown in %s', (person, typed, units) => {
    expect(shownIn(settle(person, {}, config.bot), typed)).toBe(units)
  })
})

const MARIA = { user: 'maria' }
const JON = { user: 'jon' }
const SPACING = 'spacing 36in piece=3 1/2in count=6'

describe('units', () => {
  it('are those of the question until somebody says', async () => {
    const room = await openRoom()
    expect((await room.reply('spacing 36in piece=4in count=6')).answer).toBe(
      '6 pieces with 7 gaps of 1 11/16 in (-0.027)',
    )
    expect((await room.reply('spacing 900mm piece=70mm count=6')).answer).toBe(
      '6 pieces with 7 gaps of 69 mm (+0.43)',
    )
    await room.close()
  })

  it('of the person go before the channel’s, the channel’s before the config’s', async () => {
    const room = await openRoom({ settings: { units: 'inch' } })
    const shown = async () => {
      const answers = await Promise.all([MARIA, JON].map((who) => room.reply(SPACING, who)))
      return answers.map(({ answer }) => (/ mm\b/u.test(answer) ? 'metric' : 'inch'))
    }
    expect(await shown()).toEqual(['inch', 'inch'])
    await room.reply('units metric for=channel', JON)
    expect(await shown()).toEqual(['metric', 'metric'])
    await room.reply('units inch', MARIA)
    expect(await shown()).toEqual(['inch', 'metric'])
    const elsewhere = await room.reply(SPACING, { ...JON, channel: 'shed' })
    expect(elsewhere.answer).toMatch(/ in\b/u)
    const alongside = await room.reply(SPACING.replace('36in', '900mm'), { ...MARIA, channel: 'shed' })
    expect(alongside.answer).toMatch(/ in\b/u)
    await room.close()
  })

  it('make a bare number plain, which is a question before', async () => {
    const room = await openRoom()
    expect(await room.refusal('spacing 36 piece=3 count=6')).toMatch(/^ambiguous: .*"36".*in.*mm/u)
    await room.reply('units inch')
    expect((await room.reply('spacing 36 piece=3 count=6')).figures).toEqual(
      (await room.reply('spacing 36in piece=3in count=6')).figures,
    )
    await room.reply('units metric')
    expect((await room.reply('spacing 900 piece=70 count=6')).figures).toEqual(
      (await room.reply('spacing 900mm piece=70mm count=6')).figures,
    )
    await room.close()
  })

  it('change what is printed and never the figures', async () => {
    const room = await openRoom()
    const [line] = ['sizing 17in x 13in height=15in sheet=15/32in braces=all']
    const before = await room.ask(line)
    await room.reply('units metric')
    const after = await room.ask(line)
    expect(after.ok && after.reply.figures).toEqual(before.ok && before.reply.figures)
    expect(before.ok && before.show.units).toBe('inch')
    expect(after.ok && after.show.units).toBe('metric')
    await room.close()
  })

  it('have a tape, which the answer is given to', async () => {
    const room = await openRoom()
    const line = 'spacing 36in piece=4in count=6'
    expect((await room.reply(line)).answer).toContain('1 11/16 in')
    await room.reply('units tape=1/64')
    // 12/7 in is 1.714286, which lies between 1 45/64 (1.703125) and 1 46/64 (1.71875).
    expect((await room.reply(line)).answer).toContain('1 23/32 in')
    await room.close()
  })

  it('have a kerf, which strips and grooves are reckoned with', async () => {
    const room = await openRoom()
    // floor((5.5 + k) / (0.5 + k)): 9 with 1/8 in, 10 with 1/32 in.
    expect((await room.reply('strips 2x6 rip=1/2in')).figures.perBoard).toBe(9)
    await room.reply('units kerf=1/32in')
    expect((await room.reply('strips 2x6 rip=1/2in')).figures.perBoard).toBe(10)
    expect((await room.reply('strips 2x6 rip=1/2in kerf=1/8in')).figures.perBoard).toBe(9)
    expect((await room.reply('strips 2x6 rip=1/2in', JON)).figures.perBoard).toBe(9)
    await room.close()
  })

  it('have a region, in which a name is another board', async () => {
    const room = await openRoom()
    expect((await room.reply('strips 2x6 rip=1/2in')).figures.width).toBe(139.7)
    await room.reply('units region=uk')
    expect((await room.reply('strips 2x6 rip=12mm')).figures.width).not.toBe(139.7)
    await room.close()
  })

  it('are left alone by undo, redo and forget of the project', async () => {
    const room = await openRoom()
    await room.reply('project start 17in x 13in height=15in')
    await room.reply('units metric tape=1/32 kerf=3/32in')
    await room.reply('units inch for=channel')
    const before = await room.reply('units')
    for (const line of ['project undo', 'project redo', 'project undo', 'project forget sure=yes'])
      await room.reply(line)
    expect(await room.reply('units')).toEqual(before)
    expect(before.figures).toMatchObject({ units: 'metric', tape: 32 })
    await room.close()
  })

  it('are set one at a time, and the rest stays', async () => {
    const room = await openRoom()
    for (const line of ['units metric', 'units tape=1/64', 'units region=eu']) await room.reply(line)
    expect((await room.reply('units')).figures).toMatchObject({
      units: 'metric',
      tape: 64,
      region: 'EU',
      kerf: 3,
    })
    await room.close()
  })
})
