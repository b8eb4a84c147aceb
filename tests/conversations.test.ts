import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { render } from '../src/platforms/room/render.ts'
import { openSqlite } from '../src/store/sqlite.ts'
import { isAnswer, readConversation } from './conversations/conversation.ts'
import { openRoom, ROOT } from './room.ts'

const FOLDER = `${ROOT}tests/conversations`
const files = readdirSync(FOLDER).filter((file) => file.endsWith('.txt'))
const stores = mkdtempSync(join(tmpdir(), 'battenbot-conversations-'))
afterAll(() => rmSync(stores, { recursive: true }))

/** Says every line in turn, and gives each with what was answered and what was expected. */
async function holdConversation(name: string) {
  const open = async () => openRoom({ store: await openSqlite(join(stores, `${name}.sqlite`)) })
  const held = []
  let room = await open()
  for (const step of readConversation(readFileSync(join(FOLDER, name), 'utf8'))) {
    if (step.kind === 'restart') {
      await room.close()
      room = await open()
    } else held.push({ ...step, actual: render(await room.ask(step.line, step)).split('\n') })
  }
  await room.close()
  return held
}

describe('conversations', () => {
  it('are there', () => {
    expect(files.length).toBeGreaterThanOrEqual(8)
  })

  it.each(files)('%s is true', async (name) => {
    const held = await holdConversation(name)
    expect(held.length).toBeGreaterThan(0)
    for (const { user, line, at, expected, actual } of held)
      if (!isAnswer(expected, actual)) expect(actual, `line ${at}, ${user}: ${line}`).toEqual(expected)
  })
})

describe('a conversation file', () => {
  it('is read as who says what where, and what is answered', () => {
    const text = '# remark\n> maria: help\n\nfirst\n...\n\n= restart\n> jo lin #shed: units\nlast\n'
    expect(readConversation(text)).toEqual([
      { kind: 'said', user: 'maria', channel: 'bench', line: 'help', expected: ['first', '...'], at: 2 },
      { kind: 'restart' },
      { kind: 'said', user: 'jo lin', channel: 'shed', line: 'units', expected: ['last'], at: 8 },
    ])
    expect(() => readConversation('> help')).toThrow('line 1: nobody says "> help"')
  })

  it.each([
    [['a', 'b'], ['a', 'b'], true],
    [['a'], ['a', 'b'], false],
    [['a', '...'], ['a', 'b', 'c'], true],
    [['a', '...'], ['a'], true],
    [['...', 'c'], ['a', 'b', 'c'], true],
    [['...', 'c'], ['a', 'b'], false],
    [['a', '...', 'c', '...'], ['a', 'c', 'b', 'c', 'd'], true],
    [[], ['a'], false],
  ])('%j answers %j: %s', (expected, actual, yes) => {
    expect(isAnswer(expected, actual)).toBe(yes)
  })
})
