import { describe, expect, it } from 'vitest'
import { buttonValue, recalledText, shortLines } from '../../../src/platforms/slack/keptLines.ts'
import { createRecent } from '../../../src/platforms/slack/recent.ts'
import { packMessage, unpackMessage } from '../../../src/platforms/slack/sharedMessage.ts'
import { createUnderWay } from '../../../src/platforms/slack/underWay.ts'
import { memoryKeeping } from './bot.ts'
import { full, respond } from './replies.ts'

const log = { error: () => undefined, warn: () => undefined, info: () => undefined }

describe('the value of a button', () => {
  it.each(['strips 2x6', 'x'.repeat(2000), 'x'.repeat(2001), 'kept:1'])(
    'stands for its text',
    async (text) => {
      const keeping = memoryKeeping()
      const value = await buttonValue(text, keeping, 'U1')
      expect(value.length).toBeLessThanOrEqual(2000)
      expect(await recalledText(value, keeping)).toBe(text)
    },
  )

  it('is short also for the buttons of an answer', async () => {
    const line = 'y'.repeat(3000)
    const response = respond({
      ...full,
      buttons: [
        { label: 'One', line: 'units' },
        { label: 'Long', line },
      ],
    })
    const short = await shortLines(response, { keeping: memoryKeeping(), log }, 'U1')
    expect(short.ok && short.reply.buttons).toEqual([
      { label: 'One', line: 'units' },
      { label: 'Long', line: 'kept:L1' },
    ])
  })
})

describe('a message in a button', () => {
  it('comes out as it went in', async () => {
    const keeping = memoryKeeping()
    const shared = {
      post: { text: 'Schräge ½ <b>', blocks: [{ type: 'divider' }] as const },
      attachments: 'abc',
    }
    const value = await packMessage(shared, keeping, 'U1')
    expect(keeping.lines.size).toBe(0)
    expect(await unpackMessage(value, keeping)).toEqual(shared)
  })

  it('that is kept no more is none', async () => {
    expect(await unpackMessage('kept:L9', memoryKeeping())).toBeUndefined()
  })
})

describe('the drawings of the last answers', () => {
  const files = (content: string) => ({ pictures: [], files: [{ name: 'a.csv', type: 'text/csv', content }] })

  it('are found by name, the same by the same', () => {
    const recent = createRecent()
    const name = recent.keep(files('a'))
    expect(recent.keep(files('a'))).toBe(name)
    expect(recent.keep(files('b'))).not.toBe(name)
    expect(name && recent.find(name)).toEqual(files('a'))
  })

  it('are none for an answer without', () => {
    expect(createRecent().keep({ pictures: [], files: [] })).toBeUndefined()
  })

  it('go when there are too many, the oldest first', () => {
    const recent = createRecent(2)
    const names = ['a', 'b', 'a', 'c'].map((content) => recent.keep(files(content)) ?? '')
    expect(names.map((name) => recent.find(name) !== undefined)).toEqual([true, false, true, true])
  })
})

describe('work under way', () => {
  it('is waited for, also what begins meanwhile and what fails', async () => {
    const underWay = createUnderWay()
    const done: string[] = []
    const first = underWay.add(
      Promise.resolve().then(() => {
        void underWay.add(Promise.resolve().then(() => done.push('second')))
        done.push('first')
      }),
    )
    const failing = underWay.add(Promise.reject(new Error('no')))
    await expect(failing).rejects.toThrow('no')
    await underWay.settled()
    expect([done, underWay.count()]).toEqual([['first', 'second'], 0])
    await first
  })
})
