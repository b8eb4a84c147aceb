import { afterAll, beforeAll, expect, it } from 'vitest'
import { openRoom, type Room } from '../../room.ts'

const ANN = { user: 'ann', managesChannel: true }

let room: Room
beforeAll(async () => {
  room = await openRoom()
  await room.reply('project start 17in x 13in height=15in sheet=15/32in', ANN)
})
afterAll(() => room.close())

const noticeOf = async (line: string) => (await room.reply(line, ANN)).notice

it('A posted list says which revision it was made from, and when the group was opened', async () => {
  const begin = async () => {
    await room.reply('group open Planters', ANN)
    return noticeOf('group post')
  }
  const first = await begin()
  const second = await noticeOf('group set date=Saturday')
  const third = await noticeOf('group lock')
  const revisions = [first, second, third].map((notice) => notice?.revision ?? 0)
  expect(revisions).toEqual([2, 3, 4])
  expect(new Set([first, second, third].map((notice) => notice?.since)).size).toBe(1)
  await room.reply('group close sure=yes', ANN)
  const anew = await begin()
  expect(anew?.revision).toBe(2)
  expect(String(anew?.since) > String(first?.since)).toBe(true)
})
