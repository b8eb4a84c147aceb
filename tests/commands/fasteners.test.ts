import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Asker, asker } from './asker.ts'
import { cautionsOf } from './asking.ts'

/** Newtons of a pound of force. */
const POUND = 4.4482216

let bench: Asker
beforeAll(async () => {
  bench = await asker()
})
afterAll(() => bench.room.close())

describe('fasteners', () => {
  // Wood screw pilot hole table after the American Wood Council: pilot 70 % of the root in softwood, 90 % in hardwood, in
  // inches; clear hole.
  it.each([
    ['1/4in', '1in', 'SPF', '#4', 3 / 64, 7 / 64],
    ['1/2in', '3in', 'SPF', '#6', 1 / 16, 9 / 64],
    ['3/4in', '3in', 'SPF', '#8', 5 / 64, 11 / 64],
    ['3/4in', '3in', 'red oak', '#8', 3 / 32, 11 / 64],
    ['1 1/2in', '4in', 'SPF', '#10', 3 / 32, 3 / 16],
    ['1 1/2in', '4in', 'red oak', '#10', 7 / 64, 3 / 16],
  ])(
    'screw through %s into %s of %s: %s, its pilot and clear hole',
    async (held, into, wood, name, pilot, clear) => {
      const figures = await bench.figures(
        `fasteners ${held} receiver=${into} kind=screw wood=${wood} length=24in`,
      )
      expect(figures.name).toBe(name)
      expect(figures.pilot).toBeCloseTo(pilot * 25.4, 6)
      expect(figures.clearance).toBeCloseTo(clear * 25.4, 6)
    },
  )

  // Engineering ToolBox, nail withdrawal: 1380 G^2.5 D of FPL-093, gravity .5 (Douglas fir-larch, NDS Table 12.3.3A).
  it('a 10d nail in gravity .5 is allowed 108 lb for 3 in, so much less as it goes in less', async () => {
    const figures = await bench.figures('fasteners 1in receiver=4in kind=nail wood=DF-L length=24in')
    expect(figures).toMatchObject({ name: '10d' })
    expect(Math.abs((figures.withdrawal as number) / POUND - 108 * (2 / 3))).toBeLessThan(0.5)
  })

  // The same page, metric: 50 x 2.2 mm, gravity .5: 185 N for its whole length.
  it('a 50 x 2.2 nail in gravity .5 is allowed 185 N for 50 mm', async () => {
    const uk = await asker('units region=UK')
    const figures = await uk.figures('fasteners 15mm receiver=60mm kind=nail wood=DF-L length=600mm')
    expect(figures.name).toBe('50 x 2.2')
    expect(Math.abs((figures.withdrawal as number) - 185 * (35 / 50))).toBeLessThan(0.5)
    await uk.room.close()
  })

  // Engineering ToolBox, wood screws: 2850 G^2 D, 109 lb for each inch of .190 in thread in gravity .45; here .50 by G^2.
  it('a #10 screw is allowed by the thread that is in the wood', async () => {
    const figures = await bench.figures('fasteners 1 1/2in receiver=4in kind=screw wood=DF-L length=24in')
    const thread = Math.min(
      (figures.length as number) / 25.4 - 1.5,
      ((figures.length as number) / 25.4) * (2 / 3),
    )
    const printed = 109.65 * (0.5 / 0.45) ** 2
    expect((figures.withdrawal as number) / POUND / thread / printed).toBeCloseTo(1, 3)
  })

  // US Navy, Patternmaker: a nail three times as long as the held piece.
  it('is as long as the rule asks where there is room', async () => {
    expect(
      await bench.number('fasteners 3/4in receiver=6in kind=nail length=24in', 'length'),
    ).toBeGreaterThanOrEqual(2.25 * 25.4)
  })

  it('never comes through the far face, nor nearer than 1/8 in to it, whatever the joint', async () => {
    const millimetres = (most: number) => fc.integer({ min: 3, max: most })
    await fc.assert(
      fc.asyncProperty(
        millimetres(60),
        millimetres(110),
        fc.integer({ min: 40, max: 1500 }),
        fc.constantFrom('brad', 'nail', 'screw'),
        fc.constantFrom('face', 'edge', 'end'),
        fc.constantFrom('yes', 'no'),
        async (held, receiver, length, kind, into, glued) => {
          const line = `fasteners ${held}mm receiver=${receiver}mm length=${length}mm kind=${kind} into=${into} glued=${glued}`
          const response = await bench.room.ask(line)
          if (!response.ok) return void expect(response.kind, `${line}: ${response.error}`).toBe('invalid')
          const { figures } = response.reply
          const stack = held + receiver
          expect(figures.length, line).toBeLessThanOrEqual(stack - 25.4 / 8 + 1e-6)
          expect(figures.length, line).toBeGreaterThan(held)
          const [count, spacing, end] = [figures.count, figures.spacing, figures.end] as [
            number,
            number,
            number,
          ]
          expect((count - 1) * spacing + 2 * end, line).toBeLessThanOrEqual(length + 1e-3)
          expect(figures.tipShort, line).toBeCloseTo(stack - (figures.length as number), 5)
        },
      ),
      { numRuns: 300 },
    )
  })

  it('takes more for more load, and boxes for all the joints with a tenth to spare', async () => {
    const line = 'fasteners 3/4in receiver=3in kind=screw wood=SPF length=30in'
    const one = await bench.number(line, 'withdrawal')
    const kilograms = (7.5 * one) / 9.80665
    expect(await bench.number(`${line} load=${kilograms.toFixed(2)}kg`, 'count')).toBe(8)
    const many = await bench.figures(`${line} joints=40`)
    const bought = (many.boxes as readonly { size: number; count: number }[]).reduce(
      (sum, box) => sum + box.size * box.count,
      0,
    )
    expect(many.count).toBe(40 * (await bench.number(line, 'count')))
    expect(bought).toBeGreaterThanOrEqual((many.count as number) * 1.1)
  })

  it('says what would do where nothing does', async () => {
    const refusal = (line: string) => bench.room.refusal(line)
    expect(await refusal('fasteners 3/4in receiver=1/2in kind=screw')).toBe(
      'invalid: no screw does here: what bites enough comes out of the far face; it takes a receiver of 5/8 in, or glue as well (glued=yes)',
    )
    expect(
      await bench.number('fasteners 3/4in receiver=5/8in kind=screw', 'tipShort'),
    ).toBeGreaterThanOrEqual(25.4 / 8)
    expect(await refusal('fasteners 6in receiver=6in kind=brad')).toMatch(
      /too thick for any that is sold; at most/u,
    )
    expect(await refusal('fasteners 3/4in receiver=3in kind=screw width=3/8in')).toMatch(
      /at least .* wide across it, or kind=brad/u,
    )
    expect(await refusal('fasteners 3/4in receiver=3in kind=screw length=1in')).toMatch(
      /must be at least .* long/u,
    )
    expect(await refusal('fasteners 3/4in receiver=3in kind=screw load=20t')).toMatch(
      /do not bear that load/u,
    )
    expect(await refusal('fasteners 3/4in receiver=3in into=end load=20kg')).toMatch(
      /no load is answered for in end grain/u,
    )
    expect(await refusal('fasteners')).toMatch(/how thick is the piece that the head sits in\?/u)
    expect(await refusal('fasteners 3/4in')).toMatch(/Add receiver=/u)
  })

  it('claims no strength in an edge or in end grain', async () => {
    for (const into of ['edge', 'end']) {
      const { figures, notes = [] } = await bench.reply(
        `fasteners 1/2in receiver=8in kind=screw into=${into}`,
      )
      expect(figures.withdrawal).toBeNull()
      expect(notes.join()).toContain('no strength is claimed')
    }
  })

  it('warns of the nail gun with brads alone', async () => {
    expect(cautionsOf(await bench.reply('fasteners 1/2in receiver=2in kind=brad'))).toEqual(['nail-gun'])
    expect(cautionsOf(await bench.reply('fasteners 1/2in receiver=2in kind=screw'))).toEqual([])
  })
})

describe('fasteners of the plan', () => {
  const plan = 'project start 17in x 13in height=15in sheet=1/2 ply'

  it('drives every joint so that nothing comes through, and buys for all', async () => {
    const channel = await asker(plan)
    const { figures, answer, notes = [] } = await channel.reply('fasteners')
    expect(answer).toBe(
      'Buy 1 box of 1000 18 gauge 3/4 in brads (44 to drive) + 1 box of 1000 18 gauge 1 1/2 in brads (24 to drive)',
    )
    const joints = figures.joints as readonly Record<string, number>[]
    expect(joints.length).toBe(5)
    for (const { tipShort } of joints) expect(tipShort).toBeGreaterThanOrEqual(25.4 / 8)
    expect(joints.reduce((sum, { count = 0 }) => sum + count, 0)).toBe(figures.count)
    expect(notes.join('\n')).toContain('end rail, side rail, end stile: through the panel, from behind')
    await channel.room.close()
  })

  it('goes with every change of the plan', async () => {
    const channel = await asker(plan)
    const before = await channel.number('fasteners', 'count')
    await channel.reply('project change height=40in braces=all')
    expect(await channel.number('fasteners', 'count')).toBeGreaterThan(before)
    await channel.reply('project change strip=5/16in')
    expect(await channel.number('fasteners', 'length')).toBeLessThan(0.75 * 25.4)
    await channel.room.close()
  })

  it('screws what has to come apart, and says where no screw does', async () => {
    const channel = await asker(`${plan} corner=cleated strip=7/8in width=1 1/2in`)
    const { joints } = await channel.figures('fasteners')
    const screwed = (joints as readonly Record<string, unknown>[]).filter(({ kind }) => kind === 'screw')
    expect(screwed.map(({ part, onto }) => `${part} on ${onto}`)).toEqual(['corner block on end panel'])
    // Wood screw pilot hole table after the American Wood Council: #6 clears 9/64 in, 1/16 in into softwood.
    expect((await channel.reply('fasteners')).notes?.join('\n')).toMatch(
      /^#6 x 1 1\/4 in screws: drill 9\/64 in through the held piece, then a 1\/16 in pilot .* deep; each holds \d+ lb/mu,
    )
    await channel.reply('project change strip=1/2in')
    const { notes = [] } = await channel.reply('fasteners')
    const said = notes.join('\n')
    // What would do is what the plan says, and no brad, which would never let the corner come apart.
    expect(said).toContain('no screw for corner block on end panel\n')
    expect(said).toMatch(/no screw holds corner blocks .* take strip=\d\/\d+in or more, or another corner=/u)
    expect(said).not.toContain('kind=brad')
    expect((await channel.reply('sizing')).notes).toContain(
      notes.find((note) => note.startsWith('no screw holds corner blocks')),
    )
    expect((await channel.reply('fasteners kind=nail')).notes).toContain(
      'nails stay in: corners held so do not come apart again',
    )
    await channel.room.close()
  })

  it('lists the brackets to buy, and keeps their screws inside the sheet wherever no rail is behind', async () => {
    const channel = await asker('project start 17in x 13in height=15in sheet=12mm corner=bracketed')
    expect((await channel.reply('fasteners')).notes?.join('\n')).toMatch(
      /screws: drill a .* pilot .* deep, or it splits; no strength is claimed in a sheet/u,
    )
    const bracketed = async () => {
      const { answer, figures } = await channel.reply('fasteners')
      const joints = figures.joints as readonly Record<string, unknown>[]
      expect(answer).toMatch(/ \+ 8 corner brackets$/u)
      expect(figures.hardware).toEqual([{ name: 'corner bracket', count: 8 }])
      return joints.filter(({ part }) => part === 'corner bracket')
    }
    // A screw of 5/8 in behind 2 mm of steel goes 13.9 mm in: through 12 mm of sheet, into the rail behind it.
    expect((await bracketed()).map(({ length }) => length)).toEqual([15.875, 15.875])
    for (const bottom of ['feet', 'cleats']) {
      await channel.reply(`project change bottom=${bottom}`)
      expect(await bracketed()).toEqual([])
      const { notes = [] } = await channel.reply('project')
      expect(notes.join('\n')).toMatch(
        /no screw bites enough behind the corner brackets .* bolt them through/u,
      )
    }
    await channel.reply('project change bottom=none lid=inset')
    expect(await bracketed()).toEqual([])
    await channel.room.close()
  })

  it('are warned of with the plan where no screw holds its corners, and the strip advised is the least that does', async () => {
    const channel = await asker(`${plan} corner=cleated strip=1/2in width=1 1/2in`)
    const warned = async () =>
      ((await channel.reply('project')).notes ?? []).find((note) => note.startsWith('no screw'))
    expect(await warned()).toMatch(/^no screw holds corner blocks 1\/2 in thick.* take strip=3\/4in or more/u)
    await channel.reply('project change strip=5/8in')
    expect(await warned()).toMatch(/take strip=3\/4in/u)
    await channel.reply('project change strip=3/4in')
    expect(await warned()).toBeUndefined()
    expect((await channel.reply('fasteners')).notes?.join('\n')).not.toContain('no screw')
    await channel.room.close()
  })

  it('says every size to buy in one short line, and keeps every brad inside, whatever the box', async () => {
    const channel = await asker()
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('captured', 'cleated', 'butted'),
        fc.constantFrom('5/16in', '1/2in', '3/4in', '1in'),
        fc.constantFrom('1/4 ply', '1/2 ply', '3/4 ply', '18mm'),
        fc.constantFrom('brad', 'nail', 'screw', undefined),
        async (corner, strip, sheet, kind) => {
          await channel.room.reply(
            `project start 17in x 13in height=15in corner=${corner} strip=${strip} sheet=${sheet} width=2 1/2in braces=ends`,
          )
          const line = `fasteners${kind ? ` kind=${kind}` : ''}`
          const response = await channel.room.ask(line)
          if (!response.ok) return void expect(response.kind).toBe('invalid')
          const { joints, boxes } = await channel.figures(line)
          for (const { tipShort } of joints as readonly Record<string, number>[])
            expect(tipShort).toBeGreaterThanOrEqual(25.4 / 8 - 1e-6)
          expect((boxes as readonly unknown[]).length).toBeGreaterThan(0)
        },
      ),
      { numRuns: 40 },
    )
    await channel.room.close()
  })
})
