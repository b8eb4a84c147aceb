import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Keeping } from '../../../src/bot/platform.ts'
import { type Bot, type BotParts, elementsOf, memoryKeeping, openBot, pressOf, textOf } from './bot.ts'
import { eventPayload } from './payloads.ts'
import { answerWith, full } from './replies.ts'

const away = () => Promise.reject(new Error('the disk is full'))

/** A store that can be read but not written. */
const fullDisk = (): Keeping => ({ ...memoryKeeping(), once: away, keepLine: away, remember: away })

let bot: Bot
afterEach(async () => {
  expect(bot.slack.faults).toEqual([])
  await bot.close()
})
const open = async (parts: BotParts) => {
  bot = await openBot({ keeping: fullDisk(), ...parts })
  return bot
}

/** So that no packing makes it fit a button. */
const tables = [
  {
    columns: ['Part', 'Long'],
    rows: Array.from({ length: 250 }, (_, index) => [((index * 7919) % 9973).toString(36).repeat(3), index]),
  },
]

describe('where nothing more can be kept', () => {
  it('an answer comes without the button that would have to be kept, and its drawing can be had', async () => {
    const { slack, command, logged } = await open({ answer: answerWith({ ...full, tables }) })
    await command('sizing')
    const { body } = await slack.next('respond')
    expect(textOf(body)).toContain('Cut 2 panels')
    expect(elementsOf(body, 'show')).toEqual([])
    expect(elementsOf(body, 'send')).toHaveLength(1)
    expect(logged.map(({ message }) => message)).toContain('the store did not keep what a button stands for')
  })

  it('an answer with a line too long for a button comes without that button', async () => {
    const buttons = [
      { label: 'Undo', line: 'project undo' },
      { label: 'Long', line: `help ${'x'.repeat(3000)}` },
    ]
    const { slack, event } = await open({ answer: answerWith({ ...full, buttons }) })
    await event(eventPayload('appMention', {}))
    const lines = elementsOf((await slack.next('chat.postMessage')).body, 'line')
    expect(lines.map(({ value }) => value)).toEqual(['project undo'])
  })

  it('an answer with more cautions than a message holds says how many there are', async () => {
    const cautions = Array.from({ length: 120 }, (_, index) => ({
      id: `c${index}`,
      task: 'rip',
      text: `Caution ${index}: ${'mind & take <care>, '.repeat(7)}and again.`,
    }))
    const { slack, command } = await open({ answer: answerWith({ ...full, cautions }) })
    await command('sizing')
    const { body } = await slack.next('respond')
    expect(textOf(body)).toContain('Caution 0:')
    expect(textOf(body)).toMatch(/\d+ more cautions, which cannot be shown just now/u)
  })

  it('a long line that is refused is refused in words', async () => {
    const error = 'there is no such board'
    const { slack, command } = await open({ answer: answerWith({ ok: false, kind: 'invalid', error }) })
    await command(`sizing ${'x'.repeat(2500)}`)
    expect(textOf((await slack.next('respond')).body)).toBe(error)
  })
})

it('a button whose line cannot be looked up says so to whoever pressed', async () => {
  const { slack, interact, logged } = await open({ keeping: { ...fullDisk(), recallLine: away } })
  await interact(pressOf(slack, { type: 'button', action_id: 'line:0', value: 'kept:L1' }))
  const { body } = await slack.next('respond')
  expect(body.text).toContain('press the button again in a minute')
  expect(body.response_type).toBe('ephemeral')
  await vi.waitFor(() => expect(logged.map(({ message }) => message)).toContain('Slack was not answered'))
})
