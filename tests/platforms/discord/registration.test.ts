import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { registerDiscord } from '../../../src/platforms/discord/register.ts'
import { commandsJson, isRegistered } from '../../../src/platforms/discord/registration.ts'
import type { OptionRow } from '../../../src/bot/option.ts'
import { formFor } from '../../../src/platforms/discord/form.ts'
import { commands } from './bot.ts'
import { checkForm } from './checkForm.ts'
import { checkCommands } from './checkCommands.ts'
import { type Loopback, openLoopback, TOKEN } from './loopback.ts'
import type { Json } from './wire.ts'

const wanted = commandsJson(commands)
const plain = wanted as unknown as readonly Json[]

const optionsOf = (command: string): readonly Json[] =>
  (plain.find(({ name }) => name === command)?.options ?? []) as readonly Json[]

describe('what Discord is told of the commands', () => {
  it('is within all its limits', () => {
    expect(checkCommands(plain)).toEqual([])
    expect(wanted.length).toBe(commands.length)
  })

  it('is for servers, direct messages and wherever a person takes the bot', () => {
    for (const command of wanted)
      expect(command).toMatchObject({ type: 1, integration_types: [0, 1], contexts: [0, 1, 2] })
  })

  it('has a verb for a command that has verbs, and typed options with choices or completion', () => {
    expect(optionsOf('project').map(({ type, name }) => [type, name])).toContainEqual([1, 'start'])
    expect(optionsOf('strips')[0]).toEqual({
      name: 'board',
      description: expect.any(String),
      required: false,
      type: 3,
      autocomplete: true,
    })
    expect(optionsOf('boardfeet')).toContainEqual(
      expect.objectContaining({ name: 'count', type: 4, min_value: 1, max_value: expect.any(Number) }),
    )
    expect(optionsOf('fasteners')).toContainEqual(expect.objectContaining({ name: 'glued', type: 5 }))
    expect(optionsOf('fasteners')).toContainEqual(
      expect.objectContaining({
        name: 'kind',
        type: 3,
        choices: [
          { name: 'brad', value: 'brad' },
          { name: 'nail', value: 'nail' },
          { name: 'screw', value: 'screw' },
        ],
      }),
    )
  })

  it('has required options first, and completes what are too many or too long choices for a list', () => {
    const row = { type: 'string', description: 'one of many', required: false, first: false } as const
    const many = Array.from({ length: 26 }, (_, index) => `choice ${index}`)
    const options: readonly OptionRow[] = [
      { ...row, name: 'many', choices: many },
      { ...row, name: 'long', choices: ['x'.repeat(101)] },
      { ...row, name: 'few', choices: many.slice(0, 25), required: true },
    ]
    const uses = (verb: string | undefined) => [{ verb, summary: 'Takes one', options }]
    const made = ['take', 'give'].map((name, index) => ({
      name,
      summary: 'Takes one',
      examples: [],
      uses: uses(index === 0 ? undefined : 'all'),
    }))
    const [plainly, withVerb] = commandsJson(made) as unknown as readonly Json[]
    expect(checkCommands([plainly as Json, withVerb as Json])).toEqual([])
    expect(
      ((plainly as Json).options as Json[]).map(({ name, autocomplete }) => [name, autocomplete]),
    ).toEqual([
      ['few', undefined],
      ['many', true],
      ['long', true],
    ])
    const given = { command: 'take', verb: undefined, options: {} }
    const form = formFor(given, { verb: undefined, summary: 'Takes one', options }, 'id')
    expect(checkForm(form as unknown as Json)).toEqual([])
    expect(form.components.map((each) => (each as unknown as { component: Json }).component.type)).toEqual([
      3, 4, 4,
    ])
  })

  it('is, to the letter, what was looked at', async () => {
    await expect(`${JSON.stringify(wanted, null, 2)}\n`).toMatchFileSnapshot('commands.snapshot')
  })
})

describe('the checker', () => {
  const option = { type: 3, name: 'a', description: 'b', required: false }
  const command = { type: 1, name: 'a', description: 'b', options: [option] }
  it.each<[string, Json]>([
    [
      'characters in all',
      {
        ...command,
        options: Array.from({ length: 25 }, (_, index) => ({
          ...option,
          name: `n${index}`,
          choices: Array.from({ length: 25 }, () => ({ name: 'x'.repeat(20), value: 'y' })),
        })),
      },
    ],
    ['no name', { ...command, name: 'Two Words' }],
    ['is described in 0 characters', { ...command, description: '' }],
    ['required after optional', { ...command, options: [option, { ...option, name: 'c', required: true }] }],
    [
      '26 options',
      { ...command, options: Array.from({ length: 26 }, (_, index) => ({ ...option, name: `n${index}` })) },
    ],
    ['twice', { ...command, options: [option, option] }],
    ['verbs beside options', { ...command, options: [option, { type: 1, name: 'c', description: 'd' }] }],
    [
      'cannot be completed',
      { ...command, options: [{ ...option, autocomplete: true, choices: [{ name: 'x', value: 'x' }] }] },
    ],
    [
      '26 choices',
      {
        ...command,
        options: [{ ...option, choices: Array.from({ length: 26 }, () => ({ name: 'x', value: 'x' })) }],
      },
    ],
  ])('finds %s', (fault, broken) => {
    expect(checkCommands([broken]).join('\n')).toContain(fault)
  })

  it('finds more than a hundred commands', () => {
    const many = Array.from({ length: 101 }, (_, index) => ({ ...command, name: `n${index}` }))
    expect(checkCommands(many)).toEqual(['101 commands, 100 allowed'])
  })
})

describe('registering', () => {
  let loopback: Loopback
  beforeAll(async () => {
    loopback = await openLoopback()
  })
  afterAll(() => loopback.close())
  const written = () => loopback.calls.filter(({ method }) => method === 'PUT')
  const options = () => ({ token: TOKEN, api: loopback.api })

  it('writes them once, and not again while they are the same', async () => {
    expect(await registerDiscord(commands, options())).toEqual({
      status: 'written',
      commands: commands.length,
    })
    expect(written()).toHaveLength(1)
    expect(written()[0]?.body).toEqual(JSON.parse(JSON.stringify(wanted)))
    expect(await registerDiscord(commands, options())).toEqual({
      status: 'unchanged',
      commands: commands.length,
    })
    expect(written()).toHaveLength(1)
  })

  it('writes them again when a word of them changes', async () => {
    const [first, ...others] = commands
    const changed = [{ ...(first as (typeof commands)[number]), summary: 'Something else' }, ...others]
    expect(await registerDiscord(changed, options())).toMatchObject({ status: 'written' })
    expect(written()).toHaveLength(2)
  })

  it('writes those of one server without the places they are for', async () => {
    await registerDiscord(commands, { ...options(), server: '1200000000000000001' })
    expect(written().at(-1)?.path).toBe(
      '/applications/1100000000000000001/guilds/1200000000000000001/commands',
    )
    expect(loopback.faults).toEqual([])
    const [first] = (written().at(-1)?.body ?? []) as readonly Json[]
    expect(first).toHaveProperty('name')
    expect(first).not.toHaveProperty('contexts')
  })

  it('says why it was refused, without the token', async () => {
    await expect(registerDiscord(commands, { ...options(), token: 'not.the.token' })).rejects.toThrow(
      /^Discord did not take the commands: the token is not valid; [^.]*$/u,
    )
  })

  it('tells a difference in any part, and none in what Discord adds', () => {
    const held = plain.map((command) => ({ id: '1', version: '2', nsfw: false, ...command }))
    expect(isRegistered(wanted, held.toReversed())).toBe(true)
    expect(isRegistered(wanted, held.slice(1))).toBe(false)
    const [first, ...others] = held
    expect(isRegistered(wanted, [{ ...first, contexts: [0] }, ...others])).toBe(false)
    const moved = { ...first, options: ((first as Json).options as Json[]).toReversed() }
    expect(isRegistered(wanted, [moved, ...others])).toBe(false)
  })
})
