import { afterAll, expect, it } from 'vitest'
import { openRoom } from '../room.ts'

const room = await openRoom()
afterAll(() => room.close())

it('says how far the group is, whole or kit by kit, in the words that people ask with', async () => {
  expect(await room.refusal('where are we')).toMatch(/nothing to build yet; .*: project start/u)
  for (const line of [
    'project start 17in x 13in height=15in sheet=1/2in',
    'group open Planters',
    'group join',
    'group tick break down',
  ])
    await room.reply(line)
  const asked = await room.reply('where are we')
  expect(asked.figures).toEqual((await room.reply('group progress')).figures)
  expect(asked.figures).toMatchObject({ done: 1, next: { station: 'rip', kits: [1] } })
  for (const line of ['where', 'Where are we?', 'where are we now'])
    expect((await room.reply(line)).answer).toBe(asked.answer)
  for (const line of ['where is K01', 'where is kit 1?'])
    expect((await room.reply(line)).figures).toEqual((await room.reply('group progress K01')).figures)
  expect(await room.refusal('where is K09')).toMatch(/there is no K09/u)
})

it('says where one was in the steps of the plan, beside a group or without', async () => {
  const who = { channel: 'own' }
  await room.reply('project start 17in x 13in height=15in sheet=1/2in', who)
  await room.reply('steps done 1', who)
  const now = await room.reply('steps now', who)
  expect(now.notes?.[0]).toMatch(/^last: 1, /u)
  for (const line of ['where was I', 'where are we', 'where am I?'])
    expect(await room.reply(line, who)).toEqual(now)
  await room.reply('group open Planters', who)
  await room.reply('group join', who)
  expect((await room.reply('where was I', who)).answer).toBe(now.answer)
  expect((await room.reply('where are we', who)).answer).not.toBe(now.answer)
})
