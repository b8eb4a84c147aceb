import { afterEach, describe, expect, it } from 'vitest'
import { type Bot, elementsOf, openBot, PNG } from './bot.ts'
import { team } from './loopback.ts'
import { eventPayload } from './payloads.ts'
import { answerWith, full } from './replies.ts'

let bot: Bot

afterEach(async () => {
  expect(bot.slack.faults).toEqual([])
  await bot.close()
})

describe('a mention', () => {
  it('is answered in its thread, for the project of the channel', async () => {
    const answer = answerWith({ answer: 'one', figures: {} })
    bot = await openBot({ answer })
    const text = '<@U-bot-T1> strips 2x6 rip=1/2in'
    await bot.event(eventPayload('appMention', { text, thread_ts: '1515449000.000001' }))
    const { body } = await bot.slack.next('chat.postMessage')
    expect(body).toMatchObject({ channel: 'C1', thread_ts: '1515449000.000001' })
    expect(elementsOf(body, 'show')).toEqual([])
    expect(answer.asked[0]).toMatchObject({
      place: { platform: 'slack', workspace: 'T1', channel: 'C1' },
      user: 'U1',
      invocation: { line: 'strips 2x6 rip=1/2in' },
    })
  })

  it('outside a thread begins one', async () => {
    bot = await openBot()
    await bot.event(eventPayload('appMention', { text: '<@U-bot-T1> /batten units' }))
    const { body } = await bot.slack.next('chat.postMessage')
    expect(body).toMatchObject({ thread_ts: '1515449522.000016' })
    expect(body.text).toContain('tape 1/16 in')
  })

  it.each(['<@U-bot-T1> organisers add <@U2>', 'organisers <@U-bot-T1|battenbot> add <@U2|sam>'])(
    'of somebody else stays in the line: %s',
    async (text) => {
      const answer = answerWith({ answer: 'one', figures: {} })
      bot = await openBot({ answer })
      await bot.event(eventPayload('appMention', { text }))
      await bot.slack.next('chat.postMessage')
      expect(answer.asked[0]?.invocation).toEqual({
        line: expect.stringMatching(/^organisers\s+add <@U2>$/u),
      })
    },
  )

  it('alone lists the commands', async () => {
    bot = await openBot()
    await bot.event(eventPayload('appMention', { text: '<@U-bot-T1>' }))
    expect((await bot.slack.next('chat.postMessage')).body.text).toContain('commands. Start with')
  })

  it('gets its drawing and files into the thread', async () => {
    bot = await openBot({ answer: answerWith(full) })
    await bot.event(eventPayload('appMention', {}))
    const { body } = await bot.slack.next('files.completeUploadExternal')
    expect(body).toMatchObject({ channel_id: 'C1', thread_ts: '1515449522.000016' })
    expect([...bot.slack.uploads.values()].map(({ bytes }) => bytes)).toEqual([PNG, Buffer.from('a,b\r\n')])
  })

  it('has one effect when Slack delivers it twice', async () => {
    const answer = answerWith(full)
    bot = await openBot({ answer })
    const mention = eventPayload('appMention', {}, { event_id: 'Ev1' })
    await bot.event(mention)
    await bot.event(mention, { 'x-slack-retry-num': '1', 'x-slack-retry-reason': 'http_timeout' })
    await bot.platform.stop()
    expect(answer.asked).toHaveLength(1)
    expect(bot.slack.all('chat.postMessage')).toHaveLength(1)
  })

  it('is answered by a retry when that is all that arrives', async () => {
    bot = await openBot({ answer: answerWith({ answer: 'one', figures: {} }) })
    const headers = { 'x-slack-retry-num': '1', 'x-slack-retry-reason': 'http_timeout' }
    await bot.event(eventPayload('appMention', {}, { event_id: 'Ev2' }), headers)
    expect((await bot.slack.next('chat.postMessage')).body.text).toBe('one')
  })
})

describe('a direct message', () => {
  it('is answered in place, with a project of its own and its drawing', async () => {
    const answer = answerWith(full)
    bot = await openBot({ answer })
    await bot.event(eventPayload('messageDirect', { text: 'sizing 17in x 13in' }))
    const { body } = await bot.slack.next('chat.postMessage')
    expect(body.channel).toBe('D1')
    expect(body.thread_ts).toBeUndefined()
    expect((await bot.slack.next('files.completeUploadExternal')).body).toMatchObject({ channel_id: 'D1' })
    expect(answer.asked[0]).toMatchObject({ place: { channel: 'D1' }, managesChannel: true })
  })

  it.each([
    ['of a bot', { bot_id: 'B9' }],
    ['that was edited', { subtype: 'message_changed' }],
    ['in a channel', { channel_type: 'channel', channel: 'C1' }],
  ])('%s is passed over', async (_, event) => {
    const answer = answerWith(full)
    bot = await openBot({ answer })
    expect((await bot.event(eventPayload('messageDirect', event))).status).toBe(200)
    await bot.platform.stop()
    expect(answer.asked).toEqual([])
  })
})

describe('an answer for the whole channel', () => {
  it('is shown to all at once, with its drawing, also where the bot has to be invited', async () => {
    const reply = { ...full, audience: 'channel' } as const
    bot = await openBot({ answer: answerWith(reply), teams: [team('T1', { channels: new Set() })] })
    await bot.command('project start 17in x 13in')
    expect((await bot.slack.next('respond')).body).toMatchObject({ response_type: 'in_channel' })
    const invite = await bot.slack.next('respond')
    expect(invite.body).toMatchObject({ response_type: 'ephemeral' })
    expect(invite.body.text).toContain('Invite me to get the drawing')
  })

  it('says which permission is missing for files', async () => {
    const reply = { ...full, audience: 'channel' } as const
    bot = await openBot({ answer: answerWith(reply), teams: [team('T1', { scopes: ['chat:write'] })] })
    await bot.command('project start 17in x 13in')
    await bot.slack.next('respond')
    expect((await bot.slack.next('respond')).body.text).toContain('files:write')
  })

  it('says that the numbers stand when the drawing cannot be made', async () => {
    const paint = async () => {
      throw new Error('no font')
    }
    const reply = { ...full, audience: 'channel' } as const
    bot = await openBot({ answer: answerWith(reply), paint })
    await bot.command('project start 17in x 13in')
    await bot.slack.next('respond')
    expect((await bot.slack.next('respond')).body.text).toContain('the numbers stand')
    expect(bot.logged.map(({ message }) => message)).toContain('a file could not be sent to Slack')
  })
})

describe('what is known of a person', () => {
  const admins = new Set(['U1'])
  const scopes = ['commands', 'chat:write', 'users:read', 'channels:read']

  it('is the language, and whether they may manage the channel', async () => {
    const answer = answerWith({ answer: 'one', figures: {} })
    bot = await openBot({ answer, teams: [team('T1', { scopes, creators: { C1: 'U2', C2: 'U1' } })] })
    await bot.command('units')
    await bot.command('units', { channel_id: 'C2' })
    await bot.command('units')
    await bot.platform.stop()
    for (const { locale, managesChannel, place } of answer.asked)
      expect([locale, managesChannel]).toEqual(['en-GB', place.channel === 'C2'])
    expect(answer.asked).toHaveLength(3)
    expect([bot.slack.all('users.info').length, bot.slack.all('conversations.info').length]).toEqual([1, 2])
  })

  it('counts an admin of the workspace', async () => {
    const answer = answerWith({ answer: 'one', figures: {} })
    bot = await openBot({ answer, teams: [team('T1', { scopes, admins })] })
    await bot.command('units')
    await bot.slack.next('respond')
    expect(answer.asked[0]?.managesChannel).toBe(true)
  })

  it('is nothing without the scopes, which is asked once', async () => {
    const answer = answerWith({ answer: 'one', figures: {} })
    bot = await openBot({ answer, teams: [team('T1', { admins })] })
    await bot.command('units')
    await bot.command('units')
    await bot.platform.stop()
    expect(answer.asked[0]).toMatchObject({ name: 'ann' })
    for (const { locale, managesChannel } of answer.asked)
      expect([locale, managesChannel]).toEqual([undefined, undefined])
    expect(bot.slack.all('users.info')).toHaveLength(1)
  })
})
