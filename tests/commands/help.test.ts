import { afterAll, describe, expect, it } from 'vitest'
import { catalogue, openRoom } from '../room.ts'
import { textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

describe('help', () => {
  it('names every command with what it is for', async () => {
    const reply = await room.reply('help')
    for (const { name, summary } of catalogue.values()) expect(reply.notes).toContain(`${name}: ${summary}`)
    expect(reply.figures.commands).toEqual([...catalogue.keys()])
  })

  it.each([...catalogue.keys()])('tells how %s is typed, with every example', async (name) => {
    const text = textOf(await room.reply(`help ${name}`))
    for (const example of catalogue.get(name)?.examples ?? []) expect(text).toContain(example)
    expect(text).toContain(`${name} `)
  })

  it.each(['help /strips', 'help Strips', 'help strips please'])('reads %s as it is meant', async (line) => {
    expect((await room.reply(line)).figures.command).toBe('strips')
  })

  it('tells of one verb where one is named', async () => {
    const { answer, notes = [] } = await room.reply('help project forget')
    expect(answer).toBe('project: Delete the plan and its whole history')
    expect(notes[0]).toBe('project forget [sure=yes]')
    expect(notes.join()).not.toContain('clearance')
  })

  it('says what may have been meant', async () => {
    expect(await room.refusal('help stripes')).toMatch(/^unknown: .*Did you mean strips\?$/u)
  })
})
