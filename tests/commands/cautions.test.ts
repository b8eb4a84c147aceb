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

  it('by name are those named, gravest first, with the fuller advice', async () => {
    const reply = await room.reply('cautions named=manual, nail-gun')
    expect(cautionsOf(reply)).toEqual(['nail-gun', 'manual'])
    const nailGun = config.cautions.find(({ id }) => id === 'nail-gun')
    expect(textOf(reply)).toContain(`${nailGun?.text} ${nailGun?.more}`)
    expect(await room.refusal('cautions named=manual, nobody')).toMatch(/no caution is called "nobody"/u)
  })

  // NIOSH recommended limit: 85 dBA for 8 hours, half the time for every 3 dB more.
  it('names the minutes that NIOSH allows at the level of a saw', () => {
    const text = config.cautions.find(({ id }) => id === 'noise')?.text ?? ''
    const [, level, minutes] = /At (\d+) dBA.* in (\d+) minutes/u.exec(text) ?? []
    expect(Math.round((8 * 60) / 2 ** ((Number(level) - 85) / 3))).toBe(Number(minutes))
  })
})
