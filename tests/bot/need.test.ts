import { describe, expect, it } from 'vitest'
import { readNeed } from '../../src/bot/need.ts'
import { FOOT, inches, MILLIMETRE, millimetres } from '../../src/core/measure/length.ts'
import { config } from '../room.ts'

const settings = { units: undefined, region: 'US', kerf: inches(1, 8), stock: config.stock } as const
const board = 8 * FOOT

describe('readNeed', () => {
  it.each([
    ['40', { strips: 40 }],
    ['60ft', { total: 60 * FOOT }],
    ["60'", { total: 60 * FOOT }],
    ['1200 feet', { total: 1200 * FOOT }],
    ['60m', { total: 60_000 * MILLIMETRE }],
    ['22.5 metres', { total: 22_500 * MILLIMETRE }],
    ['96in', { total: inches(96) }],
    ['2400mm', { total: millimetres(2400) }],
  ])('reads %s', (text, need) => {
    expect(readNeed(text, board as never, settings)).toMatchObject(need)
  })

  it.each(['0', '0m', '-60m', 'many', '', '60 sq ft', '2x4', '60m and some'])('refuses %j', (text) => {
    expect(() => readNeed(text, board as never, settings)).toThrow(/^need: .*write /u)
  })

  it('asks how long the boards are, for a total', () => {
    expect(() => readNeed('60ft', undefined, settings)).toThrow('how long are the boards?')
    expect(readNeed('40', undefined, settings)).toEqual({ strips: 40 })
  })
})
