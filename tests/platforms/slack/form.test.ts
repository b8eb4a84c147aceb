import type { InputBlock } from '@slack/types'
import { describe, expect, it } from 'vitest'
import type { OptionRow } from '../../../src/bot/option.ts'
import { describe as describeCommands } from '../../../src/bot/catalogue.ts'
import { fieldAt, filledForm, filledLine, formOf, formView } from '../../../src/platforms/slack/form.ts'
import { catalogue, examples } from '../../room.ts'
import { checkView } from './checkMessage.ts'

const commands = describeCommands(catalogue)
const uses = commands.flatMap(({ name, uses }) =>
  uses.filter(({ options }) => options.length > 0).map(({ verb }) => [name, verb].filter(Boolean).join(' ')),
)

describe('the form of a line', () => {
  it.each(uses)('is within the limits of Slack for %s', (line) => {
    const form = formOf(line, commands)
    expect(form && checkView(formView(form, { command: form.command, channel: 'C1' }))).toEqual([])
  })

  it.each(examples)('of an example of %s is one: %s', (name, line) => {
    const form = formOf(line, commands)
    if (!form)
      return expect(
        commands.find((each) => each.name === name)?.uses.some(({ options }) => options.length === 0),
      ).toBe(true)
    expect(checkView(formView(form, { command: form.command, channel: 'C1' }))).toEqual([])
  })

  it('has what was typed first, and by name', () => {
    expect(formOf('project start 17in x 13in height=15in', commands)).toMatchObject({
      command: 'project',
      use: { verb: 'start' },
      typed: { object: '17in x 13in', height: '15in' },
    })
  })

  it('is none for what takes nothing, or is no command', () => {
    expect(formOf('project undo', commands)).toBeUndefined()
    expect(formOf('stirps 2x6', commands)).toBeUndefined()
  })
})

describe('choices', () => {
  const row = (choices: readonly string[]): OptionRow => ({
    name: 'of',
    type: 'string',
    description: 'which one',
    required: false,
    first: false,
    choices,
  })
  const elementFor = (choices: readonly string[], typed?: string) => {
    const use = { verb: undefined, summary: 'Takes one', options: [row(choices)] }
    const form = { command: 'take', use, typed: typed === undefined ? {} : { of: typed } }
    const view = formView(form, { command: 'take', channel: 'C1' })
    expect(checkView(view)).toEqual([])
    return (view.blocks[0] as InputBlock).element
  }

  it('are a list, each with as many of its words as Slack shows', () => {
    const long = `the ${'long '.repeat(20)}one`
    expect(elementFor(['short', long], long)).toMatchObject({
      type: 'static_select',
      options: [
        { value: 'short' },
        { value: long, text: { text: expect.stringMatching(/^the .*\.\.\.$/u) } },
      ],
      initial_option: { value: long },
    })
  })

  it.each([
    ['too long for one of a list', ['short', 'x'.repeat(151)]],
    ['too many for a list', Array.from({ length: 101 }, (_, index) => `choice ${index}`)],
  ])('%s are typed', (_, choices) => {
    expect(elementFor(choices)).toMatchObject({ type: 'plain_text_input' })
  })
})

describe('a form that was filled in', () => {
  const ticket = { command: 'project', verb: 'start', channel: 'C1' }

  it('is a command with its options named; what is empty is left out', () => {
    const invocation = filledForm(ticket, {
      object: { value: { value: ' 17in x 13in ' } },
      height: { value: { value: null } },
      corner: { value: { selected_option: { value: 'cleated' } } },
      braces: { value: { selected_option: null } },
    })
    expect(invocation).toEqual({
      command: 'project',
      verb: 'start',
      options: { object: '17in x 13in', corner: 'cleated' },
    })
    expect(filledLine(invocation)).toBe('project start object=17in x 13in corner=cleated')
  })

  it('is the same again where a value holds what looks like an option', () => {
    const options = { parts: '2x flap, width=3', to: 'a' }
    const line = filledLine({ command: 'cutlist', verb: 'add', options })
    expect(formOf(line, commands)?.typed).toEqual(options)
  })

  it.each([
    ['height is 3 ft; 1 in to 10 ft will do', 'height'],
    ['cannot read "x"; write height=15in', 'height'],
    ['the box is too tall', 'object'],
    ['heights differ', 'object'],
  ])('%s is about %s', (error, field) => {
    expect(fieldAt(error, ['object', 'height', 'corner'])).toBe(field)
  })
})
