import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Response } from '../../../src/bot/request.ts'
import {
  type Bot,
  type BotParts,
  FORM,
  form,
  memoryKeeping,
  openBot,
  SIGNING_SECRET,
  signed,
  slashCommand,
  textOf,
} from './bot.ts'
import { payload } from './payloads.ts'
import { answerWith, full, respond } from './replies.ts'

let bot: Bot

const open = async (parts: BotParts = {}, isStarted = true) => {
  bot = await openBot(parts, isStarted)
  return bot
}

afterEach(async () => {
  await bot.close()
})

describe('what Slack did not send', () => {
  const stale = Math.floor(Date.now() / 1000) - 301

  it.each([
    ['a wrong signature', (body: string) => signed(body, 'another secret')],
    ['a signature of another body', () => signed('text=help')],
    ['an old timestamp', (body: string) => signed(body, SIGNING_SECRET, stale)],
    ['no signature', () => ({})],
  ])('by %s is refused with 401 and answered by nobody', async (_, headers) => {
    const answer = answerWith(full)
    const { slack, post, platform } = await open({ answer })
    const body = form(slashCommand(slack, 'help'))
    expect((await post(body, FORM, headers(body))).status).toBe(401)
    await platform.stop()
    expect(answer.asked).toEqual([])
  })
})

describe('the checks of Slack', () => {
  it('are answered: the address, and its certificate', async () => {
    const { event, post } = await open()
    const check = payload('urlVerification')
    expect(await (await event(check)).json()).toEqual({ challenge: check.challenge })
    expect((await post(form({ ssl_check: '1', token: 'x' }), FORM)).status).toBe(200)
  })
})

describe('a command', () => {
  it('that is delivered twice has one effect', async () => {
    const answer = answerWith(full)
    const { slack, post, platform } = await open({ answer })
    const body = form(slashCommand(slack, 'project undo'))
    await Promise.all([post(body, FORM), post(body, FORM)])
    await post(body, FORM, { ...signed(body), 'x-slack-retry-num': '1' })
    await platform.stop()
    expect(answer.asked).toHaveLength(1)
    expect(slack.all('respond')).toHaveLength(1)
  })

  it('is acknowledged before it is answered, however long that takes', async () => {
    let finish = (_: Response) => {}
    const slow = new Promise<Response>((resolve) => {
      finish = resolve
    })
    const { slack, command } = await open({ answer: () => slow })
    expect((await command('layout')).status).toBe(200)
    expect(slack.all('respond')).toEqual([])
    finish(respond(full))
    expect((await slack.next('respond')).body.text).toContain('Cut 2 panels')
  })

  it('is answered when the store cannot say whether it was seen before', async () => {
    const keeping = { ...memoryKeeping(), once: () => Promise.reject(new Error('database is locked')) }
    const { slack, command, logged } = await open({ keeping })
    await command('units')
    expect((await slack.next('respond')).error).toBeUndefined()
    expect(logged[0]?.message).toContain('the store cannot say')
  })
})

describe('a response_url', () => {
  it('that is used up is made good by a private message in the channel', async () => {
    const { slack, command } = await open()
    slack.trouble('respond', { error: 'used_url' })
    await command('units')
    const { body, error } = await slack.next('chat.postEphemeral')
    expect(body).toMatchObject({ channel: 'C1', user: 'U1' })
    expect([error, slack.all('respond').length]).toEqual([undefined, 1])
  })

  it('that is gone, in a channel without the bot, is made good by a direct message', async () => {
    const { slack, command, logged } = await open()
    slack.trouble('respond', { status: 404, body: 'expired_url' })
    slack.trouble('chat.postEphemeral', { error: 'not_in_channel' })
    await command('units')
    expect((await slack.next('chat.postMessage')).body).toMatchObject({ channel: 'U1' })
    await bot.platform.stop()
    expect(logged).toEqual([])
  })

  it('and every other way that fail are logged with what Slack said, and no address', async () => {
    const { slack, command, logged, platform } = await open()
    slack.trouble('respond', { status: 404, body: '{"ok":false,"error":"expired_url"}' })
    slack.trouble('chat.postEphemeral', { error: 'user_not_in_channel' })
    slack.trouble('chat.postMessage', { error: 'restricted_action' })
    await command('units')
    await slack.next('chat.postMessage')
    await platform.stop()
    expect(logged).toEqual([
      {
        message: 'an answer could not be shown in Slack',
        facts: {
          failures: [
            'response_url: expired_url',
            'chat.postEphemeral: user_not_in_channel',
            'chat.postMessage: restricted_action',
          ],
        },
      },
    ])
  })

  it('that refuses the blocks gets the words alone', async () => {
    const { slack, command } = await open()
    slack.trouble('respond', { status: 404, body: '{"ok":false,"error":"invalid_blocks"}' })
    await command('strips 2x6 rip=1/2in')
    await slack.next('respond')
    const { body } = await slack.next('respond')
    expect(body.blocks).toBeUndefined()
    expect(body.text).toContain('9 strips of 1/2 in')
    expect(slack.all('chat.postEphemeral')).toEqual([])
  })

  it('that says 429 is asked again after as long as it says', async () => {
    const waits: number[] = []
    const { slack, command } = await open({ pause: async (milliseconds) => void waits.push(milliseconds) })
    slack.trouble('respond', { status: 429, headers: { 'retry-after': '7' } })
    await command('units')
    await slack.next('respond')
    expect((await slack.next('respond')).error).toBeUndefined()
    expect(waits).toEqual([7000])
  })

  it('works for one private answer, shown to all, in no more than its five uses', async () => {
    const { slack, command } = await open()
    await command('units')
    await slack.next('respond')
    expect([slack.faults, slack.all('respond').length]).toEqual([[], 1])
  })
})

describe('the Web API', () => {
  it('that says 429 is asked again', async () => {
    const { slack, event } = await open()
    slack.trouble('chat.postMessage', { status: 429, headers: { 'retry-after': '1' } })
    await event(payload('appMention'))
    await slack.next('chat.postMessage')
    expect((await slack.next('chat.postMessage')).error).toBeUndefined()
  })

  it('that is down for a moment is asked again', async () => {
    const { slack, event } = await open()
    slack.trouble('chat.postMessage', { status: 503, body: 'down' })
    await event(payload('messageDirect'))
    await slack.next('chat.postMessage')
    expect((await slack.next('chat.postMessage')).error).toBeUndefined()
  })
})

describe('a fault of the bot', () => {
  it('is answered with its reference, and the next line is answered', async () => {
    const { slack, command } = await open({
      answer: answerWith({ ok: false, kind: 'fault', error: 'something went wrong here. Reference f1' }),
    })
    await command('strips')
    expect(textOf((await slack.next('respond')).body)).toBe('something went wrong here. Reference f1')
    await command('strips')
    await slack.next('respond')
  })

  it('that is thrown is logged, and the platform stays up', async () => {
    let isFirst = true
    const { slack, command, logged } = await open({
      answer: async () => {
        if (!isFirst) return respond(full)
        isFirst = false
        throw new Error(`broken near ${SIGNING_SECRET} and xoxb-T1-token`)
      },
    })
    await command('strips')
    await command('strips')
    await slack.next('respond')
    expect(logged[0]).toMatchObject({
      message: 'Slack was not answered',
      facts: { error: 'broken near [secret] and [secret]' },
    })
    expect(JSON.stringify(logged)).not.toContain(SIGNING_SECRET)
  })
})

describe('stopping', () => {
  it('waits for what is under way', async () => {
    let finish = (_: Response) => {}
    const slow = new Promise<Response>((resolve) => {
      finish = resolve
    })
    const { slack, command, platform } = await open({ answer: () => slow })
    await command('layout')
    const stopped = platform.stop()
    expect(platform.health()).toEqual({ well: false, says: 'stopped' })
    finish(respond(full))
    await stopped
    expect(slack.all('respond')).toHaveLength(1)
  })

  it('may be asked for twice, and before the start', async () => {
    const { platform } = await open({}, false)
    expect(platform.health().well).toBe(false)
    await platform.stop()
    await platform.stop()
  })
})

describe('a token that Slack refuses', () => {
  it('is no start, turns the health red and is in the log', async () => {
    const { platform, logged } = await open({ botToken: 'xoxb-wrong' }, false)
    const says = 'Slack refuses the token (invalid_auth); set a valid one and start again'
    await expect(platform.start()).rejects.toThrow(says)
    expect(platform.health()).toEqual({ well: false, says })
    expect(logged.map(({ message }) => message)).toContain(says)
    expect(JSON.stringify(logged)).not.toContain('xoxb-wrong')
  })

  it('is not mistaken for a Slack that is down, which is asked again', async () => {
    const waits: number[] = []
    bot = await openBot({ pause: async (milliseconds) => void waits.push(milliseconds) }, false)
    bot.slack.trouble('auth.test', { error: 'service_unavailable' }, { error: 'internal_error' })
    await bot.platform.start()
    await vi.waitFor(() => expect(bot.platform.health().well).toBe(true), 20_000)
    expect(bot.slack.all('auth.test')).toHaveLength(3)
    expect(waits).toEqual([1000, 2000])
    expect(bot.platform.health()).toEqual({ well: true, says: 'listening for Slack' })
  })
})

describe('a port that is taken', () => {
  it('fails the start, which may be tried again', async () => {
    await open()
    const { createSlack } = await import('../../../src/platforms/slack/client.ts')
    const parts = {
      answer: answerWith(full),
      commands: [],
      complete: async () => [],
      paint: async () => Buffer.of(),
      keeping: memoryKeeping(),
      log: { error: () => {}, warn: () => {}, info: () => {} },
      now: () => new Date(),
    }
    const port = Number(new URL(bot.address()).port)
    const second = createSlack(parts, {
      command: '/batten',
      apiUrl: bot.slack.api,
      connection: {
        mode: 'http',
        signingSecret: 'x',
        port,
        host: '127.0.0.1',
        workspaces: { botToken: 'xoxb-T1-token' },
      },
    })
    await expect(second.start()).rejects.toThrow('EADDRINUSE')
    await bot.platform.stop()
    await second.start()
    expect(second.health().well).toBe(true)
    await second.stop()
  })
})
