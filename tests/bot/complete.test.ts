import { afterAll, describe, expect, it } from 'vitest'
import { describe as described } from '../../src/bot/catalogue.ts'
import { createComplete } from '../../src/bot/complete.ts'
import { readValue } from '../../src/bot/kind.ts'
import type { OptionRow } from '../../src/bot/option.ts'
import { REGIONS } from '../../src/core/stock/stock.ts'
import { createSearch } from '../../src/search/pool.ts'
import { catalogue, config, openRoom } from '../room.ts'

const search = createSearch({ threads: 1, queue: 8 })
afterAll(() => search.close())

const commands = described(catalogue)

/** A channel in which the lines were said, and what is offered there. */
async function saidThere(...lines: readonly string[]) {
  const room = await openRoom({ search })
  for (const line of lines) await room.reply(line)
  const complete = createComplete({
    store: room.store,
    commands,
    reference: config,
    settings: config.bot,
  })
  const place = { platform: 'room', workspace: 'local', channel: 'bench' }
  const offered = (words: string, typed = '', user = 'me') => {
    const [command = '', second = '', third] = words.split(' ')
    const [verb, option] = third === undefined ? [undefined, second] : [second, third]
    return complete(
      { place, user, at: new Date(0) },
      { command, option, typed, ...(verb !== undefined && { verb }) },
    )
  }
  return { offered, close: room.close }
}

const optionsOfKind = (kind: string): readonly (readonly [string, OptionRow])[] =>
  commands.flatMap(({ name, uses }) =>
    uses.flatMap(({ verb, options }) =>
      options
        .filter((option) => option.kind === kind)
        .map((option) => [[name, verb, option.name].filter(Boolean).join(' '), option] as const),
    ),
  )

describe('what is offered', () => {
  it.each(['board', 'sheet', 'species', 'product', 'adhesive'])('for a %s can be read', async (kind) => {
    const options = optionsOfKind(kind)
    expect(options.length).toBeGreaterThan(0)
    for (const region of REGIONS) {
      const { offered, close } = await saidThere(`units region=${region}`)
      for (const [words, option] of options) {
        const values = await offered(words)
        expect(values.length).toBeGreaterThan(2)
        expect(values.length).toBeLessThanOrEqual(25)
        const settled = { units: 'inch', tape: 16, kerf: config.bot.usual[region].kerf, region } as const
        for (const value of values)
          expect(
            readValue(value, { ...config, ...settled, adhesives: config.glue.adhesives }, option),
            `${region} ${words}=${value}`,
          ).toMatchObject({ status: 'read' })
      }
      await close()
    }
  })

  it('begins with what was typed, then holds it', async () => {
    const { offered, close } = await saidThere()
    expect((await offered('strips board', '2x'))[0]).toMatch(/^2x/u)
    const woods = await offered('glue wood', 'fir')
    expect(woods.length).toBeGreaterThan(0)
    for (const wood of woods) expect(wood.toLowerCase()).toContain('fir')
    expect(await offered('glue wood', 'no such wood')).toEqual([])
    await close()
  })

  it('is what is sold where the person buys', async () => {
    const { offered, close } = await saidThere('units region=UK')
    expect(await offered('strips board', '38x')).toContain('38x89 CLS')
    expect(await offered('strips board', '38x', 'somebody else')).not.toContain('38x89 CLS')
    await close()
  })

  it('is the labels of the cut list and of the stock', async () => {
    const { offered, close } = await saidThere(
      'cutlist add 4x 23 15/16in x 18in ply',
      'stock add 2x4x8 price=4.20',
      'stock add 22in x 40in sheet=1/2 ply label=OFF1',
    )
    expect(await offered('cutlist remove label')).toContain('A')
    expect((await offered('stock remove label')).slice(0, 2)).toEqual(['L1', 'OFF1'])
    expect(await offered('stock remove label', 'of')).toEqual(['OFF1'])
    await close()
  })

  it('is what was typed in the channel before, newest first', async () => {
    const { offered, close } = await saidThere(
      'project start 17in x 13in height=15in sheet=1/2 ply',
      'project change height=16in',
    )
    expect((await offered('sizing height')).slice(0, 2)).toEqual(['16in', '15in'])
    expect((await offered('sizing object'))[0]).toBe('17in x 13in')
    expect((await offered('fit sheet'))[0]).toBe('1/2 ply')
    await close()
  })

  it('is the example where nothing else is known, the choices where there are some, and commands for help', async () => {
    const { offered, close } = await saidThere()
    expect(await offered('sizing height')).toEqual(['15in'])
    expect(await offered('sizing braces', 'si')).toEqual(['sides'])
    expect(await offered('help command', 'str')).toEqual(['strips'])
    expect(await offered('sizing colour')).toEqual([])
    await close()
  })
})
