import { afterEach, describe, expect, it } from 'vitest'
import { type Bot, type BotParts, openBot, pressOf, slashCommand } from './bot.ts'
import { eventPayload } from './payloads.ts'
import { answerWith, full } from './replies.ts'

let bot: Bot

const open = async (parts: BotParts = {}, isStarted = true) => {
  bot = await openBot({ mode: 'socket', ...parts }, isStarted)
  return bot
}

afterEach(async () => {
  expect(bot.slack.faults).toEqual([])
  await bot.close()
})

const CONNECTED = { well: true, says: 'connected to Slack by a socket' }

describe('Socket Mode', () => {
  it('answers a command, a press and a mention, each acknowledged once and with nothing', async () => {
    const { slack, platform } = await open({ answer: answerWith(full) })
    expect(platform.health()).toEqual(CONNECTED)
    const socket = await slack.socket()
    expect(await slack.envelope(socket, 'slash_commands', slashCommand(slack, 'units'))).toEqual({})
    expect((await slack.next('respond')).body.response_type).toBe('ephemeral')
    const press = pressOf(slack, { type: 'button', action_id: 'line:0', value: 'units' })
    expect(await slack.envelope(socket, 'interactive', press)).toEqual({})
    await slack.next('respond')
    expect(await slack.envelope(socket, 'events_api', eventPayload('appMention', {}))).toEqual({})
    await slack.next('chat.postMessage')
  })

  it('opens the next socket when Slack takes one away as planned, and loses nothing', async () => {
    const { slack, platform } = await open()
    const first = await slack.socket()
    first.send(JSON.stringify({ type: 'disconnect', reason: 'refresh_requested', debug_info: { host: 'x' } }))
    const second = await slack.socket()
    await slack.envelope(second, 'slash_commands', slashCommand(slack, 'units'))
    expect((await slack.next('respond')).error).toBeUndefined()
    expect(platform.health()).toEqual(CONNECTED)
    expect(slack.all('auth.test')).toHaveLength(1)
  })

  it('opens the next when one is torn off', async () => {
    const { slack } = await open()
    for (const _ of [1, 2, 3]) (await slack.socket()).terminate()
    const socket = await slack.socket()
    await slack.envelope(socket, 'slash_commands', slashCommand(slack, 'units'))
    await slack.next('respond')
  })

  it('is red while there is no socket, asks again more and more seldom, and comes back', async () => {
    const waits: number[] = []
    const said: string[] = []
    const { slack, platform } = await open({
      pause: async (milliseconds) => {
        waits.push(milliseconds)
        said.push(bot.platform.health().says)
      },
    })
    slack.trouble(
      'apps.connections.open',
      { error: 'internal_error' },
      { status: 500, body: 'down' },
      { error: 'service_unavailable' },
    )
    ;(await slack.socket()).terminate()
    await slack.envelope(await slack.socket(), 'slash_commands', slashCommand(slack, 'units'))
    await slack.next('respond')
    expect(waits).toEqual([1000, 2000, 4000])
    expect(said[0]).toBe('Slack cannot be reached (internal_error)')
    expect(platform.health()).toEqual(CONNECTED)
  })

  it('has one effect for an event that comes again by the next socket', async () => {
    const answer = answerWith(full)
    const { slack, platform } = await open({ answer })
    const event = eventPayload('appMention', {})
    const first = await slack.socket()
    await slack.envelope(first, 'events_api', event)
    first.terminate()
    const again = { retry_attempt: 1, retry_reason: 'timeout' }
    await slack.envelope(await slack.socket(), 'events_api', event, again)
    await platform.stop()
    expect(answer.asked).toHaveLength(1)
  })

  it.each([
    ['bot token', { botToken: 'xoxb-wrong' }, undefined],
    ['app token', {}, 'not_allowed_token_type'],
  ])('with a %s that Slack refuses is red and asks no more', async (_, parts, error) => {
    const { slack, platform, logged } = await open(parts, false)
    if (error) slack.trouble('apps.connections.open', { error })
    const why = error ?? 'invalid_auth'
    const says = `Slack refuses the token (${why}); set a valid one and start again`
    await expect(platform.start()).rejects.toThrow(says)
    expect(platform.health()).toEqual({ well: false, says })
    expect(logged.some(({ facts }) => (facts as { why?: string }).why === why)).toBe(true)
    expect(JSON.stringify(logged)).not.toMatch(/xoxb-|xapp-/u)
  })

  it('stops for good', async () => {
    const { slack, platform } = await open()
    const socket = await slack.socket()
    const closed = new Promise((resolve) => socket.once('close', resolve))
    await platform.stop()
    await closed
    expect(platform.health()).toEqual({ well: false, says: 'stopped' })
    expect(slack.all('apps.connections.open')).toHaveLength(1)
  })

  it('stops also when the other side is gone without a word', async () => {
    const { slack, platform } = await open()
    const socket = await slack.socket()
    socket.pause()
    await platform.stop()
    expect(platform.health().well).toBe(false)
    socket.terminate()
  })

  it('that is being opened when it stops does not stay open', async () => {
    const { slack, platform } = await open()
    const go = slack.hold('apps.connections.open')
    ;(await slack.socket()).terminate()
    await slack.until(() => slack.all('apps.connections.open').length === 2)
    await platform.stop()
    go()
    const late = await slack.socket()
    await new Promise((resolve) => late.once('close', resolve))
    expect(platform.health().says).toBe('stopped')
  })

  it('stops while it waits to ask again, and waits no longer', async () => {
    const waits: (AbortSignal | undefined)[] = []
    const wait = async (_: number, signal?: AbortSignal) => {
      waits.push(signal)
      await new Promise((resolve) => signal?.addEventListener('abort', resolve))
    }
    const { slack, platform } = await open({ pause: wait }, false)
    slack.trouble('apps.connections.open', { error: 'internal_error' })
    await platform.start()
    await platform.stop()
    expect(waits.map((signal) => signal?.aborted)).toEqual([true])
    expect(platform.health().says).toBe('stopped')
    expect(slack.all('apps.connections.open')).toHaveLength(1)
  })
})
