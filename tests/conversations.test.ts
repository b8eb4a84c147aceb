import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { isAnswer, readConversation } from './conversations/conversation.ts'
import { holdConversation } from './conversations/hold.ts'
import { ROOT } from './room.ts'

const FOLDER = `${ROOT}tests/conversations`
const files = readdirSync(FOLDER).filter((file) => file.endsWith('.txt'))

describe('conversations', () => {
  it('are there', () => {
    expect(files.length).toBeGreaterThanOrEqual(8)
  })

  it.each(files)('%s is true', async (name) => {
    const held = await holdConversation(readConversation(readFileSync(join(FOLDER, name), 'utf8')))
    expect(held.length).toBeGreaterThan(0)
    for (const step of held) {
      if (step.kind === 'restart' || isAnswer(step.expected, step.actual)) continue
      expect(step.actual, `line ${step.at}, ${step.user}: ${step.line}`).toEqual(step.expected)
    }
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
