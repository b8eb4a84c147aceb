import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ConfigError, readConfig } from '../src/config.ts'
import { inches, millimetres } from '../src/core/measure/length.ts'
import { findBoard } from '../src/core/stock/boards.ts'
import { REGIONS } from '../src/core/stock/stock.ts'
import { CONFIG, edited, inCopy, lineOf, problemsOf, problemsWith, textOf } from './config/folder.ts'

describe('the config as it stands', () => {
  const config = readConfig(CONFIG)

  it('loads, with the defaults of the trade', () => {
    expect(config.bot).toMatchObject({
      region: 'US',
      units: undefined,
      tape: 16,
      jointTape: 32,
    })
    expect(config.bot).toMatchObject({
      millimetreStep: 1,
      fineMillimetreStep: 0.5,
      mitreMax: 50,
      dataFolder: '.data',
    })
    expect(config.bot).toMatchObject({ safeRip: inches(2) })
    expect(config.bot.usual.US).toMatchObject({
      kerf: inches(1, 8),
      clearance: inches(1, 2),
      fit: inches(1, 32),
      board: '2x4',
    })
    expect(config.bot.search).toEqual({ seconds: 2, queue: 32 })
  })

  it('has every setting of bot.yaml explained by a comment above it', () => {
    const lines = textOf('bot.yaml').split('\n')
    const settings = lines.flatMap((line, index) =>
      /^ *(?!US|UK|AU|EU)\w+:/.test(line) ? [lines[index - 1]] : [],
    )
    expect(settings.length).toBeGreaterThan(18)
    for (const above of settings) expect(above).toMatch(/^ *# +\S/)
  })

  it.each(['lumber', 'sheets', 'finishes'] as const)(
    'has a source for every group of rows of %s.yaml',
    (name) => {
      const text = textOf(`${name}.yaml`)
      const sources = text.match(/^ *(?:- )?source: ".+"\n/gm) ?? []
      expect(sources.length).toBeGreaterThan(4)
      for (const source of sources) {
        const without = text.replace(source, source.replace(/source: ".+"/, 'sauce: ""'))
        expect(problemsOf(name, without).join()).toContain('source: expected text, found nothing')
      }
    },
  )

  it('sells boards, lengths, sheets, sheet sizes and cans in every region, and a board called 2x4', () => {
    for (const region of REGIONS) {
      for (const rows of [
        config.stock.boards,
        config.stock.lengths,
        config.stock.labels,
        config.stock.sizes,
        config.containers,
      ])
        expect(rows.filter((row) => row.region === region).length).toBeGreaterThan(3)
      expect(findBoard('2x4', region, config.stock)).toBeDefined()
    }
  })

  it('reads every board, sheet and can as something that could be sold', () => {
    for (const { thickness, width } of config.stock.boards) {
      expect(thickness).toBeGreaterThanOrEqual(millimetres(15))
      expect(width).toBeGreaterThanOrEqual(thickness)
      expect(width).toBeLessThanOrEqual(millimetres(300))
    }
    for (const { label, actual } of config.stock.labels)
      expect(Math.abs(label - actual)).toBeLessThanOrEqual(inches(1, 32))
    for (const { length, width } of config.stock.sizes) expect(length).toBeGreaterThanOrEqual(width)
    for (const { smooth, rough } of config.finishes) expect(rough?.high ?? 0).toBeLessThanOrEqual(smooth.high)
  })
})

describe('a mistake in a config file', () => {
  it.each([
    ['safeRip: 2in', 'safeRip: abc', 'safeRip: expected a length such as "1/8in" or "3mm", read "abc"'],
    ['safeRip: 2in', 'safeRip: 3', 'safeRip: expected a length such as "1/8in" or "3mm", read 3'],
    ['safeRip: 2in', 'safeRip: 1/3in', 'safeRip: expected a length such as "1/8in" or "3mm", read "1/3in"'],
    ['safeRip: 2in', 'safeRip: 0in', 'safeRip: expected a length such as "1/8in" or "3mm", read "0in"'],
    ['safeRip: 2in', 'safeRip: -1/8in', 'safeRip: expected a length such as "1/8in" or "3mm", read "-1/8in"'],
    ['safeRip: 2in', 'safeRip:', 'safeRip: expected a length such as "1/8in" or "3mm", found nothing'],
    ['safeRip: 2in', 'safeRp: 1/8in', 'safeRp: no such key. Did you mean safeRip?'],
    [
      'safeRip: 2in',
      'safeRip: { wide: 1 }',
      'safeRip: expected a length such as "1/8in" or "3mm", read {"wide":1}',
    ],
    ['tape: 1/16in', 'tape: 1/10in', 'tape: expected 1/16in, 1/32in or 1/64in, read "1/10in"'],
    ['region: US', 'region: CA', 'region: expected US, UK, AU or EU, read "CA"'],
    ['units: ask', 'units: feet', 'units: expected ask, inch or metric, read "feet"'],
    ['grooves: 0', 'grooves: 1.5', 'grooves: expected a whole number, read 1.5'],
    ['grooves: 0', 'grooves: -1', 'grooves: expected a number of at least 0, read -1'],
    ['mitreMax: 50', 'mitreMax: 100', 'mitreMax: expected a number of at most 89, read 100'],
    [
      'logLevel: info',
      'logLevel: loud',
      'logLevel: expected silent, fatal, error, warn, info, debug or trace, read "loud"',
    ],
    ['  queue: 32', '  queue: many', 'search.queue: expected a number, read "many"'],
    ['  queue: 32', '  que: 32', 'search.que: no such key. Did you mean queue?'],
    ['  queue: 32', '  zzzzzz: 1', 'search.zzzzzz: no such key. The keys here are seconds and queue.'],
  ])('%s written as %s is told with its line', (from, to, sentence) => {
    const text = edited('bot.yaml', new RegExp(`^${from}$`, 'm'), to)
    const line = lineOf(text, new RegExp(`^${to.replace(/[{}.?+]/g, '\\$&')}$`, 'm'))
    expect(problemsOf('bot', text)).toContain(`bot.yaml line ${line}: ${sentence}`)
  })

  it('a board that lumber.yaml does not have in the region is told with its line', () => {
    const text = edited('bot.yaml', /board: 2x4/, 'board: 2x5')
    const [problem] = problemsWith({ 'bot.yaml': text })
    expect(problem).toContain(
      `bot.yaml line ${lineOf(text, 'board: 2x5')}: usual.US.board: expected a board sold in US, read "2x5".`,
    )
    expect(problem).toMatch(/ Did you mean .*\?$/)
  })

  it('tells the missing key beside the misspelt one', () => {
    const problems = problemsOf('bot', edited('bot.yaml', /^safeRip:/m, 'safeRp:'))
    expect(problems).toHaveLength(2)
    expect(problems.join()).toContain(
      'bot.yaml line 1: safeRip: expected a length such as "1/8in" or "3mm", found nothing',
    )
  })

  it('keeps to one line when a key or a value breaks over several', () => {
    const text = edited('bot.yaml', /^safeRip: 2in$/m, 'safeRip: "1\\n8"\n"a\\n\\u2028b\\e[31m": 1')
    const problems = problemsOf('bot', text)
    expect(problems).toHaveLength(2)
    expect(problems[0]).toMatch(/^bot\.yaml line \d+: safeRip: .* read "1\\n8"$/)
    expect(problems[1]).toMatch(/^bot\.yaml line \d+: a b \[31m: no such key\./)
  })

  it('tells the problems of every file at once, one a line', () => {
    const problems = problemsWith({
      'bot.yaml': edited('bot.yaml', /^safeRip: 2in$/m, 'safeRip: wide').replace(
        'grooves: 0',
        'grooves: none',
      ),
      'lumber.yaml': edited('lumber.yaml', '2x4: 1 1/2 x 3 1/2 in', '2x4: 1 1/2 by 3 1/2 in'),
      'sheets.yaml': undefined,
    })
    expect(problems.map((line) => line.split(' ')[0])).toEqual([
      'bot.yaml',
      'bot.yaml',
      'lumber.yaml',
      'sheets.yaml:',
    ])
    expect(problems[2]).toBe(
      `lumber.yaml line ${lineOf(textOf('lumber.yaml'), '        2x4:')}: US.groups.0.boards.2x4: expected two lengths ` +
        'such as "1 1/2 x 3 1/2 in" or "47 x 100 mm", read "1 1/2 by 3 1/2 in"',
    )
    expect(problems[3]).toMatch(/^sheets\.yaml: there is no such file/)
  })

  it('names the very line, whichever setting is spoilt', () => {
    const keys = textOf('bot.yaml').match(/^\w+(?=: \S)/gm) ?? []
    fc.assert(
      fc.property(fc.constantFrom(...keys), fc.nat(5), (key, blank) => {
        const text = '\n'.repeat(blank) + edited('bot.yaml', new RegExp(`^${key}: .*$`, 'm'), `${key}: [no]`)
        const problems = problemsOf('bot', text)
        expect(problems).toHaveLength(1)
        expect(problems[0]).toContain(`bot.yaml line ${lineOf(text, `${key}: \\[no`)}: ${key}: expected `)
        expect(problems[0]).toMatch(/, read \["no"\]$/)
      }),
      { numRuns: 100 },
    )
  })
})

describe('what is no config at all', () => {
  it.each([
    ['nothing', '', 'bot.yaml line 1: expected a block of keys, found nothing'],
    ['a list', '- a\n- b\n', 'bot.yaml line 1: expected a block of keys, read ["a","b"]'],
    [
      'broken YAML',
      'safeRip: [1/8in\nfit: 2\n',
      /^bot\.yaml line \d: is not YAML here: check the quotes and the indentation/,
    ],
    [
      'a tab for a space',
      'search:\n\tqueue: 1\n',
      /^bot\.yaml line 2: is not YAML here: check the quotes and the indentation/,
    ],
    [
      'two documents',
      'a: 1\n---\nb: 2\n',
      /^bot\.yaml line 2: is not YAML here: check the quotes and the indentation/,
    ],
    [
      'a key twice',
      'safeRip: 1mm\nsafeRip: 2mm\n',
      /^bot\.yaml line 2: a key stands here a second time: keep one$/,
    ],
    [
      'an unknown tag',
      'safeRip: !!python/object 1mm\n',
      /^bot\.yaml line 1: is not YAML here: check the quotes and the indentation/,
    ],
    ['a bomb of aliases', bomb(), /^bot\.yaml: repeats its parts/],
    ['an alias of itself', 'a: &a [*a]\n', /^bot\.yaml/],
    ['a setting that holds itself', 'safeRip: &a [*a]\n', /^bot\.yaml line 1: /],
    ['brackets without end', '['.repeat(100_000), /^bot\.yaml/],
  ])('%s is told in one line', (_what, text, expected) => {
    const problems = problemsOf('bot', text)
    expect(problems[0]).toMatch(expected instanceof RegExp ? expected : new RegExp(`^${literal(expected)}$`))
    expect(problems.every((line) => line.startsWith('bot.yaml') && line.length < 500)).toBe(true)
  })

  it('a folder that is not there is told file by file', () => {
    expect(() => readConfig('/nowhere')).toThrow(ConfigError)
    expect(() => readConfig('/nowhere')).toThrow(/^\/nowhere\/bot\.yaml: there is no such file/)
  })

  it('text of any kind is either read or told in lines that name the file', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 80 }), (text) => {
        for (const line of problemsOf('finishes', text)) expect(line).toMatch(/^finishes\.yaml( line \d+)?: /)
      }),
      { numRuns: 300 },
    )
  })
})

describe('names that stand twice or mean nothing', () => {
  it('a board name in two groups of a region', () => {
    const text = edited('lumber.yaml', '        2x3: 1 1/2 x 2 1/2 in', '        2X4: 1 1/2 x 2 1/2 in')
    expect(problemsOf('lumber', text)).toEqual([
      `lumber.yaml line ${lineOf(text, '2X4')}: US.groups.1.boards.2X4: expected a name that nothing else in US has, ` +
        'read "1 1/2 x 2 1/2 in"',
    ])
  })

  it('an alias of a board that is not there', () => {
    const text = edited('lumber.yaml', '        2x1: 25x50\n', '        2x1: 25x51\n')
    expect(problemsOf('lumber', text)).toEqual([
      `lumber.yaml line ${lineOf(text, '2x1: 25x51')}: UK.groups.1.alsoCalled.2x1: expected a name that stands in the same ` +
        'group, read "25x51"',
    ])
  })

  it('a board written width first', () => {
    const text = edited('lumber.yaml', '2x6: 1 1/2 x 5 1/2 in', '2x6: 5 1/2 x 1 1/2 in')
    expect(problemsOf('lumber', text)[0]).toContain('expected the thickness first, no more than the width')
  })

  it('a label that a material has twice in a region', () => {
    const text = edited('sheets.yaml', '{ label: 11/32in,', '{ label: 3/8in,')
    expect(problemsOf('sheets', text)[0]).toContain('label: expected a name that nothing else in US has')
  })

  it('limits that a mean does not lie between', () => {
    const text = edited('sheets.yaml', 'mean: 17.7mm, low: 17.1mm', 'mean: 17.0mm, low: 17.1mm')
    expect(problemsOf('sheets', text)[0]).toContain(
      'expected low, then the mean or the actual thickness, then high',
    )
  })

  it('a finish that has the name of another', () => {
    const text = edited('finishes.yaml', 'alsoCalled: [eggshell, satin paint]', 'alsoCalled: [Primer]')
    expect(problemsOf('finishes', text)[0]).toContain('("Primer" is taken)')
  })
})

describe('a config of one’s own', () => {
  it('is read in place of the defaults', () => {
    const text = edited('bot.yaml', /^region: US$/m, 'region: UK')
      .replace('units: ask', 'units: metric')
      .replace('safeRip: 2in', 'safeRip: 55.5mm')
      .replace('fit: 1mm', 'fit: 0mm')
    const { bot } = inCopy({ 'bot.yaml': text }, readConfig)
    expect(bot).toMatchObject({ region: 'UK', units: 'metric', safeRip: millimetres(55.5) })
    expect(bot.usual.UK.fit).toBe(0)
  })

  it('may share rows by anchors, within reason', () => {
    const text = edited('bot.yaml', /strip: 1\/2in/, 'strip: *room').replace(
      'clearance: 1/2in',
      'clearance: &room 1/2in',
    )
    expect(inCopy({ 'bot.yaml': text }, readConfig).bot.usual.US.strip).toBe(inches(1, 2))
  })
})

/** Nine levels of nine aliases each. */
function bomb(): string {
  const level = (index: number) =>
    `a${index}: &a${index} [${Array(9)
      .fill(index === 0 ? 'lol' : `*a${index - 1}`)
      .join(', ')}]`
  return Array.from({ length: 9 }, (_, index) => level(index)).join('\n')
}

function literal(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
}
