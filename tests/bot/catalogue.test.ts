import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { actionOf, describe as describeAll, loadCatalogue } from '../../src/bot/catalogue.ts'
import { catalogue, ROOT } from '../room.ts'

const SOUND = {
  summary: `'What it does'`,
  examples: `['plane 2x4']`,
  options: `{ board: first(words('the board', '2x4')), depth: words('how deep', '1/16in').optional() }`,
}

const source = ({ name = 'plane', ...parts }: Partial<typeof SOUND> & { name?: string }): string => {
  const { summary, examples, options } = { ...SOUND, ...parts }
  return `${IMPORTS}
export default defineCommand({
  name: '${name}', summary: ${summary}, examples: ${examples}, options: z.strictObject(${options}),
  run: () => ({ answer: 'planed', figures: {} }),
})`
}

const withVerbs = (verb: string, fallback: string, summary = 'Planes'): string => `${IMPORTS}
export default defineVerbs({
  name: 'plane', summary: 'What it does', examples: ['plane'], fallback: '${fallback}',
  verbs: { '${verb}': defineAction({ summary: '${summary}', options: z.strictObject({}), run: () => ({ answer: '', figures: {} }) }) },
})`

const IMPORTS = `import { z } from 'zod'
import { defineAction, defineCommand, defineVerbs } from '${ROOT}src/bot/command.ts'
import { choice, count, first, words } from '${ROOT}src/bot/option.ts'`

/** Loads a folder with one command file, `plane.ts`. */
async function load(text: string) {
  const folder = mkdtempSync(join(tmpdir(), 'battenbot-commands-'))
  try {
    symlinkSync(`${ROOT}node_modules`, join(folder, 'node_modules'))
    writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
    writeFileSync(join(folder, 'plane.ts'), text)
    return await loadCatalogue(folder)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

describe('loadCatalogue', () => {
  it('takes a sound definition, and leaves other files alone', async () => {
    expect([...(await load(source({}))).keys()]).toEqual(['plane'])
    expect([...(await load(withVerbs('start', 'start'))).keys()]).toEqual(['plane'])
  })

  it.each([
    [
      'a name that is not its file’s',
      source({ name: 'plain', examples: `['plain 2x4']` }),
      'its name is plain',
    ],
    ['no example', source({ examples: '[]' }), 'it has no example'],
    ['the example of another', source({ examples: `['plan 2x4']` }), '"plan 2x4" is not its own'],
    ['no summary', source({ summary: `''` }), 'plane needs a summary of 1 to 100 characters'],
    [
      'a long summary',
      source({ summary: `'x'.repeat(101)` }),
      'plane needs a summary of 1 to 100 characters',
    ],
    [
      'an option with capitals',
      source({ options: `{ Board: words('the board', '2x4') }` }),
      'Board is no name',
    ],
    [
      'an option with a long name',
      source({ options: `{ ['b'.repeat(33)]: words('b', '2') }` }),
      'is no name',
    ],
    [
      'an option that is not described',
      source({ options: `{ board: words('', '2x4') }` }),
      'board needs a summary',
    ],
    [
      'a required option behind an optional one',
      source({ options: `{ a: words('a', '1').optional(), b: words('b', '2') }` }),
      'a required option after an optional one',
    ],
    [
      'two options that stand first',
      source({ options: `{ a: first(words('a', '1')), b: first(words('b', '2')) }` }),
      'two options that stand first',
    ],
    [
      'too many options',
      source({
        options: `Object.fromEntries([...'abcdefghijklmnopqrstuvwxyz'].map((a) => [a, words(a, a)]))`,
      }),
      'over 25 options',
    ],
    [
      'too many choices',
      source({ options: `{ a: choice('a', Array.from({ length: 26 }, (_, at) => 'a' + at)) }` }),
      'a has over 25 choices',
    ],
    ['a fallback that there is not', withVerbs('start', 'show'), 'it does nothing'],
    ['a fallback that every object has', withVerbs('start', 'toString'), 'it does nothing'],
    ['a verb with capitals', withVerbs('Start', 'Start'), 'Start is no name'],
    ['a verb without a summary', withVerbs('start', 'start', ''), 'start needs a summary'],
  ])('stops at %s', async (_, text, fault) => {
    const loading = load(text)
    await expect(loading).rejects.toThrow(/^commands\/plane\.ts: /u)
    await expect(loading).rejects.toThrow(fault)
  })

  it('tells every fault of a file at once', async () => {
    await expect(load(source({ examples: '[]', summary: `''` }))).rejects.toThrow(
      'commands/plane.ts: it has no example; plane needs a summary of 1 to 100 characters',
    )
  })
})

describe('the commands as they stand', () => {
  it('have a name, a summary and a description of every option', () => {
    for (const { name, summary, uses } of describeAll(catalogue)) {
      expect(catalogue.get(name)?.summary).toBe(summary)
      expect(uses.length).toBeGreaterThan(0)
      for (const option of uses.flatMap((use) => use.options))
        expect(option.description, `${name} ${option.name}`).not.toBe('')
    }
  })

  it('never take a name that every object has for a verb', () => {
    const project = catalogue.get('project')
    expect(project && actionOf(project, 'start')).toBeDefined()
    for (const name of ['constructor', 'toString', '__proto__', 'hasOwnProperty'])
      expect(project && actionOf(project, name)).toBeUndefined()
  })
})
