import { describe, expect, it } from 'vitest'
import {
  formFor,
  givenIn,
  lacksMore,
  lineForm,
  lineSaying,
  useOf,
} from '../../../src/platforms/discord/form.ts'
import { commands } from './bot.ts'
import { checkForm } from './checkForm.ts'
import type { Json } from './wire.ts'

const lacking = (line: string) => {
  const given = givenIn(line, commands)
  return given !== undefined && lacksMore(given, commands)
}

describe('a line taken as named options', () => {
  it.each([
    ['strips 2x6 rip=1/2in', 'strips board=2x6 rip=1/2in'],
    ['/project start 17in x 13in height=15in', 'project start object=17in x 13in height=15in'],
    ['project undo', 'project undo'],
    ['help', 'help'],
  ])('%s is %s', (line, named) => {
    const given = givenIn(line, commands)
    expect(given && lineSaying(given)).toBe(named)
  })

  it('is the same again where a value holds what looks like an option', () => {
    const given = { command: 'cutlist', verb: 'add', options: { parts: '2x flap, width=3', to: 'a' } }
    expect(givenIn(lineSaying(given), commands)).toEqual(given)
  })

  it.each(['', 'nothing of ours', 'project fly'])('%j is none', (line) => {
    expect(givenIn(line, commands)).toBeUndefined()
  })
})

describe('a line lacks something', () => {
  it.each(['sizing', 'convert', 'spacing 36in', 'project start', 'project change', 'grooves'])(
    '%s',
    (line) => {
      expect(lacking(line)).toBe(true)
    },
  )

  it.each(['strips', 'help', 'units', 'strips 2x6', 'project undo', 'sizing height=15in', 'no such command'])(
    'but not: %s',
    (line) => {
      expect(lacking(line)).toBe(false)
    },
  )
})

describe('every form', () => {
  it.each(
    commands.flatMap(({ name, uses }) =>
      uses
        .filter(({ options }) => options.length > 0)
        .map(
          ({ verb }) =>
            [[name, verb].filter(Boolean).join(' '), { command: name, verb, options: {} }] as const,
        ),
    ),
  )('%s is one that Discord takes', (_, given) => {
    const use = useOf(given, commands)
    if (!use) throw new Error('no such use')
    const form = formFor(given, use, `1:ask:${lineSaying(given)}`)
    expect(checkForm(form as unknown as Json)).toEqual([])
    const asked = form.components.map((each) => ('label' in each ? each.label : ''))
    for (const { name } of use.options.filter(({ required }) => required).slice(0, 5))
      expect(asked).toContain(name)
  })

  it('for a line is one too, however long the line', () => {
    expect(checkForm(lineForm('x'.repeat(5000), '1:edit:') as unknown as Json)).toEqual([])
  })
})
