import { describe, expect, it } from 'vitest'
import type { Reply } from '../../src/bot/reply.ts'
import { inOneMessage } from '../../src/platforms/oneMessage.ts'

const cautions = Array.from({ length: 9 }, (_, row) => ({ id: `c${row}`, task: 'use', text: `Mind ${row}.` }))
const reply: Reply = { answer: 'The list', figures: {}, cautions }
const atMost = (count: number) => (each: Reply) => (each.cautions ?? []).length <= count

describe('a reply in one message', () => {
  it('stays as it is where it fits', () => {
    expect(inOneMessage(reply, atMost(9))).toBe(reply)
  })

  it('has as many cautions as there is room for, and all of them in a file', () => {
    const short = inOneMessage(reply, atMost(4))
    expect(short.cautions?.map(({ text }) => text)).toEqual([
      'Mind 0.',
      'Mind 1.',
      'Mind 2.',
      '6 more cautions in the file cautions.txt',
    ])
    expect(short.files).toEqual([
      {
        name: 'cautions.txt',
        type: 'text/plain',
        content: `${cautions.map(({ text }) => text).join('\n')}\n`,
      },
    ])
  })

  it('says so where there is room for none, and leaves alone what has none', () => {
    expect(inOneMessage(reply, () => false).cautions).toEqual([
      expect.objectContaining({ text: '9 more cautions in the file cautions.txt' }),
    ])
    const bare: Reply = { answer: 'x', figures: {} }
    expect(inOneMessage(bare, () => false)).toBe(bare)
  })
})
