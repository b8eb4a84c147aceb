import { afterAll, describe, expect, it } from 'vitest'
import { TASKS } from '../../src/core/checks/caution.ts'
import { config, openRoom } from '../room.ts'
import { cautionsOf, textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

describe('cautions', () => {
  it.each(TASKS)('of %s are those of the config, in its order, with the fuller advice', async (task) => {
    const reply = await room.reply(`cautions ${task}`)
    const rules = config.cautions.filter(({ tasks }) => tasks.includes(task))
    expect(rules.length).toBeGreaterThan(0)
    expect(cautionsOf(reply)).toEqual(rules.map(({ id }) => id))
    for (const { text, more } of rules) expect(textOf(reply)).toContain(`${text}${more ? ` ${more}` : ''}`)
    expect(reply.answer).toMatch(/^Before you [a-z ]+:$/u)
  })

  it('of every task where something is sawn end with the manual', async () => {
    for (const task of ['rip', 'crosscut', 'groove', 'steep'])
      expect(cautionsOf(await room.reply(`cautions ${task}`)).at(-1)).toBe('manual')
  })

  it('name the tasks where none is given, and take capitals', async () => {
    const reply = await room.reply('cautions')
    for (const task of TASKS) expect(reply.answer).toContain(task)
    expect(reply.figures.tasks).toEqual([...TASKS])
    expect(await room.reply('cautions RIP')).toEqual(await room.reply('cautions rip'))
  })

  it('say what there is for an unknown task', async () => {
    expect(await room.refusal('cautions ripp')).toMatch(/^invalid: .*Did you mean rip\?$/u)
  })
})
