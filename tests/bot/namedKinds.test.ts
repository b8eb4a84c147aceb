import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openRoom, type Room } from '../room.ts'

let room: Room
beforeAll(async () => {
  room = await openRoom()
})
afterAll(() => room.close())

describe('a wood by name', () => {
  it.each([
    ['pine', 'southern pine'],
    ['SPF', 'spruce-pine-fir'],
    ['Douglas Fir', 'Douglas-fir'],
    ['cedar', 'western redcedar'],
    ['sugar maple', 'sugar maple'],
    ['ponderosa', 'ponderosa pine'],
  ])('%s is %s', async (typed, name) => {
    expect((await room.reply(`moisture 60% wood=${typed}`)).answer).toMatch(
      new RegExp(`^${name} settles`, 'u'),
    )
  })

  it('is asked about where several have the words, and helped where none has', async () => {
    expect(await room.refusal('moisture 60% wood=white')).toMatch(
      /^ambiguous: wood: "white" could be .*, .* or .*; write one of them$/u,
    )
    const unknown = await room.refusal('moisture 60% wood=red oka')
    expect(unknown).toBe(
      'invalid: wood: there is no wood "red oka"; write one such as red alder, white ash or quaking aspen. Did you mean red oak?',
    )
  })
})

describe('a glue by name', () => {
  it.each([
    ['PVA', 'yellow glue'],
    ['exterior', 'waterproof glue'],
    ['white', 'white glue'],
  ])('%s is %s', async (typed, name) => {
    expect((await room.reply(`glue 2 sq ft temperature=70F product=${typed}`)).figures.product).toBe(name)
  })

  it('says what there is', async () => {
    expect(await room.refusal('glue 2 sq ft product=hide')).toMatch(
      /^invalid: product: there is no glue "hide"; there is yellow glue, white glue and waterproof glue\./u,
    )
  })
})
