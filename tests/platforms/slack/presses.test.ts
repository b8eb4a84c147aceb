import { createHash } from 'node:crypto'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { answerWith, full } from './replies.ts'
import { type Bot, type BotParts, elementsOf, memoryKeeping, openBot, PNG, pressOf, textOf } from './bot.ts'
import { team } from './loopback.ts'

let bot: Bot

const open = async (parts: BotParts = {}) => {
  bot = await openBot(parts)
  return bot
}

afterEach(async () => {
  expect(bot.slack.faults).toEqual([])
  await bot.close()
})

/** Asks, and hands back the private answer. */
async function asked(line: string): Promise<object> {
  await bot.command(line)
  return (await bot.slack.next('respond')).body
}

const only = <Element>(elements: readonly Element[]): Element => {
  expect(elements).toHaveLength(1)
  return elements[0] as Element
}

describe('a button of an answer', () => {
  it('types its line', async () => {
    const answer = answerWith(full)
    const { slack, interact } = await open({ answer })
    const undo = only(elementsOf(await asked('sizing 17in x 13in'), 'line'))
    expect((await interact(pressOf(slack, undo))).status).toBe(200)
    await slack.next('respond')
    expect(answer.asked.map(({ invocation }) => invocation)).toEqual([
      { line: 'sizing 17in x 13in' },
      { line: 'project undo' },
    ])
    expect(answer.asked[1]).toMatchObject({
      user: 'U1',
      place: { platform: 'slack', workspace: 'T1', channel: 'C1' },
    })
  })

  it('types a line that is too long for a button', async () => {
    const line = `cutlist add ${'2 a 3in x 4in; '.repeat(200)}`
    const answer = answerWith({ ...full, buttons: [{ label: 'Add', line }] })
    const { slack, interact } = await open({ answer })
    const add = only(elementsOf(await asked('cutlist'), 'line'))
    expect(add.value.length).toBeLessThan(100)
    await interact(pressOf(slack, add))
    await slack.next('respond')
    expect(answer.asked[1]?.invocation).toEqual({ line })
  })

  it('says so when its line is kept no more', async () => {
    const { slack, interact } = await open()
    await interact(pressOf(slack, { type: 'button', action_id: 'line:0', value: 'kept:L99' }))
    expect((await slack.next('respond')).body.text).toContain('too old')
  })

  it('is answered in the thread that it stands in', async () => {
    const { slack, interact } = await open()
    const container = {
      type: 'message',
      message_ts: '2.1',
      channel_id: 'C1',
      is_ephemeral: false,
      thread_ts: '1.5',
    }
    const button = { type: 'button', action_id: 'line:0', value: 'units' }
    await interact(pressOf(slack, button, 'pressPublic', { container }))
    expect((await slack.next('respond')).body).toMatchObject({ thread_ts: '1.5', response_type: 'ephemeral' })
  })

  it('is pressed once when Slack sends the press twice', async () => {
    const answer = answerWith(full)
    const { slack, interact } = await open({ answer })
    const press = pressOf(slack, { type: 'button', action_id: 'line:0', value: 'project undo' })
    await Promise.all([interact(press), interact(press)])
    await slack.next('respond')
    await bot.platform.stop()
    expect(answer.asked).toHaveLength(1)
  })

  it('of a kind that there is not does nothing', async () => {
    const answer = answerWith(full)
    const { slack, interact } = await open({ answer })
    expect(
      (await interact(pressOf(slack, { type: 'button', action_id: 'toString', value: 'x' }))).status,
    ).toBe(200)
    expect(answer.asked).toEqual([])
    expect(slack.calls.map(({ name }) => name)).toEqual(['auth.test'])
  })
})

describe('show to all', () => {
  it('posts the answer with its question, asks nothing again, shares the drawing and takes the private answer away', async () => {
    const answer = answerWith(full)
    const { slack, interact } = await open({ answer })
    const show = only(elementsOf(await asked('sizing 17in x 13in'), 'show'))
    await interact(pressOf(slack, show))
    const shown = await slack.next('respond')
    expect(shown.body).toMatchObject({ response_type: 'in_channel', replace_original: false })
    expect(textOf(shown.body)).toMatch(/^\/batten sizing 17in x 13in\nCut 2 panels/u)
    expect(elementsOf(shown.body, 'show')).toEqual([])
    expect(elementsOf(shown.body, 'line')).toHaveLength(1)
    expect((await slack.next('files.completeUploadExternal')).body).toMatchObject({ channel_id: 'C1' })
    expect((await slack.next('respond')).body).toEqual({ delete_original: true })
    expect(answer.asked).toHaveLength(1)
  })

  it('shows an answer that is too long for a button', async () => {
    const mixed = (index: number) => createHash('sha256').update(String(index)).digest('base64').slice(0, 20)
    const rows = Array.from({ length: 150 }, (_, index) => [mixed(index), index])
    const keeping = memoryKeeping()
    const tables = [{ columns: ['Part', 'Long'], rows }]
    const { slack, interact } = await open({
      answer: answerWith({ answer: 'Many', tables, figures: {} }),
      keeping,
    })
    const show = only(elementsOf(await asked('layout'), 'show'))
    expect([show.value, keeping.lines.size]).toEqual(['kept:L1', 1])
    await interact(pressOf(slack, show))
    expect(textOf((await slack.next('respond')).body)).toContain(mixed(149))
  })

  it('asks to be invited where it cannot put the drawing, and leaves the button', async () => {
    const { slack, interact } = await open({
      answer: answerWith(full),
      teams: [team('T1', { channels: new Set() })],
    })
    const show = only(elementsOf(await asked('sizing'), 'show'))
    await interact(pressOf(slack, show))
    expect((await slack.next('respond')).body.response_type).toBe('in_channel')
    expect((await slack.next('respond')).body).toMatchObject({ response_type: 'ephemeral' })
    expect(slack.all('respond').at(-1)?.body.text).toContain('Invite me to get the drawing')
    await bot.platform.stop()
    expect(slack.all('respond').some(({ body }) => body.delete_original)).toBe(false)
  })
})

describe('show to all, tapped more than once', () => {
  const shownTo = (type: string) => bot.slack.all('respond').filter(({ body }) => body.response_type === type)

  it('has one effect for two taps in a row', async () => {
    const { slack, interact } = await open({ answer: answerWith(full) })
    const show = only(elementsOf(await asked('sizing 17in x 13in'), 'show'))
    await Promise.all([interact(pressOf(slack, show)), interact(pressOf(slack, show))])
    await bot.platform.stop()
    expect(shownTo('in_channel')).toHaveLength(1)
    expect(slack.all('files.completeUploadExternal')).toHaveLength(1)
  })

  it('makes up for the drawing that did not go through, and says the words once', async () => {
    const { slack, interact } = await open({ answer: answerWith(full) })
    const show = only(elementsOf(await asked('sizing 17in x 13in'), 'show'))
    slack.trouble('files.completeUploadExternal', { error: 'internal_error' })
    await interact(pressOf(slack, show))
    await slack.until(() => shownTo('ephemeral').length === 2)
    await vi.waitFor(async () => {
      await interact(pressOf(slack, show))
      expect(slack.all('respond').some(({ body }) => body.delete_original)).toBe(true)
    })
    expect(shownTo('in_channel')).toHaveLength(1)
    expect(slack.all('files.completeUploadExternal').map(({ error }) => error)).toEqual([
      'internal_error',
      undefined,
    ])
  })

  it('works after it was not shown at all, which it says', async () => {
    const { slack, interact } = await open({ answer: answerWith({ answer: 'Nine', figures: {} }) })
    const show = only(elementsOf(await asked('strips'), 'show'))
    slack.trouble('respond', { status: 500 })
    slack.trouble('chat.postMessage', { error: 'restricted_action' })
    await interact(pressOf(slack, show))
    await slack.until(() =>
      shownTo('ephemeral').some(({ body }) => String(body.text).includes('press the button again')),
    )
    await interact(pressOf(slack, show))
    await slack.until(() => slack.all('respond').some(({ body }) => body.delete_original))
    expect(shownTo('in_channel').map(({ error }) => error)).toEqual([expect.anything(), undefined])
  })
})

describe('send me the drawing', () => {
  it('sends it as a direct message, with its description', async () => {
    const { slack, interact } = await open({ answer: answerWith(full) })
    const send = only(elementsOf(await asked('sizing'), 'send'))
    expect(send.text).toMatchObject({ text: 'Send me the drawing' })
    await interact(pressOf(slack, send))
    expect((await slack.next('chat.postMessage')).body).toMatchObject({ channel: 'U1' })
    expect((await slack.next('files.completeUploadExternal')).body).toMatchObject({
      channel_id: 'D1',
      files: [{ title: 'panels' }, { title: 'cuts.csv' }],
    })
    expect([...slack.uploads.values()]).toMatchObject([
      { filename: 'panels.png', alt: 'Two panels, 18 x 15 in, with <marks>', bytes: PNG, isComplete: true },
      { filename: 'cuts.csv', alt: undefined, bytes: Buffer.from('a,b\r\n'), isComplete: true },
    ])
    expect((await slack.next('respond')).body.text).toContain('direct message')
  })

  it('says so when it is not at hand any more', async () => {
    const { slack, interact } = await open()
    await interact(pressOf(slack, { type: 'button', action_id: 'send', value: 'gone' }))
    expect((await slack.next('respond')).body.text).toContain('ask again')
  })

  it('is not offered where there is none', async () => {
    await open({ answer: answerWith({ answer: 'one', figures: {} }) })
    expect(elementsOf(await asked('strips'), 'send')).toEqual([])
  })
})
