import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { describe as describeCommands } from '../../src/bot/catalogue.ts'
import { completionsOf, typedValue, wordCompletions } from '../../src/platforms/completions.ts'
import { catalogue } from '../room.ts'

const commands = describeCommands(catalogue)
const texts = (line: string) => completionsOf(line, commands).map(({ text }) => text)

describe('completions', () => {
  it('say what a command, a verb and an option are', () => {
    expect(completionsOf('/siz', commands)).toEqual([
      { from: 1, text: 'sizing', says: catalogue.get('sizing')?.summary },
    ])
    expect(completionsOf('project und', commands)).toEqual([
      { from: 8, text: 'undo', says: 'Take the last change back' },
    ])
    expect(completionsOf('sizing 17in x 13in hei', commands)).toEqual([
      { from: 19, text: 'height=', says: 'finished height of the box' },
    ])
  })

  it('put a choice behind its option', () => {
    expect(completionsOf('sizing 17in x 13in corner=clea', commands)).toEqual([
      { from: 26, text: 'cleated', says: '' },
    ])
    expect(completionsOf('sizing 17in x 13in corner = clea', commands)).toEqual([
      { from: 28, text: 'cleated', says: '' },
    ])
  })

  it('leave out what the line already holds', () => {
    expect(texts('strips ')).toContain('board=')
    expect(texts('strips 2x6 ')).not.toContain('board=')
    expect(texts('strips 2x6 ')).toContain('rip=')
    expect(texts('strips 2x6 rip=1/2in ')).not.toContain('rip=')
  })

  it('are nothing where nothing is known', () => {
    expect(texts('wat ')).toEqual([])
    expect(texts('project wat ')).toEqual([])
    expect(texts('__proto__ ')).toEqual([])
  })

  it('begin within the line and go on from what stands there', () => {
    const word = fc.oneof(fc.constantFrom(...catalogue.keys(), 'start', 'corner=', 'sheet = '), fc.string())
    fc.assert(
      fc.property(fc.array(word), (words) => {
        const line = words.join(' ')
        for (const { from, text } of completionsOf(line, commands)) {
          expect(from).toBeLessThanOrEqual(line.length)
          expect(text.startsWith(line.slice(from))).toBe(true)
        }
      }),
    )
  })
})

describe('the value that is being typed', () => {
  it.each([
    ['strips 2x', 'board', '2x', 7],
    ['strips ', 'board', '', 7],
    ['sizing 17in x 13in sheet=1/2 p', 'sheet', '1/2 p', 25],
    ['sizing 17in x 13in sheet= 1/2 p', 'sheet', '1/2 p', 26],
    ['project change sheet=18', 'sheet', '18', 21],
  ])('in %j', (line, option, typed, from) => {
    expect(typedValue(line, commands)).toMatchObject({ option: { name: option }, typed, from })
  })

  it.each(['str', 'project ch', 'wat 2x', 'strips wat=2'])('is none in %j', (line) => {
    expect(typedValue(line, commands)).toBeUndefined()
  })
})

describe('completions of the last word', () => {
  it('are whole words, for a terminal', () => {
    expect(wordCompletions('sizing 17in x 13in corner=clea', commands)).toEqual(['corner=cleated'])
    expect(wordCompletions('/siz', commands)).toEqual(['/sizing'])
  })
})
