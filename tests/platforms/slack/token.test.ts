import { afterEach, describe, expect, it, vi } from 'vitest'
import { type Bot, type BotParts, openBot } from './bot.ts'
import { eventPayload, payload } from './payloads.ts'

const TOKEN = 'xoxb-T1-token'

let bot: Bot
const open = async (parts: BotParts = {}, isStarted = true) => {
  bot = await openBot(parts, isStarted)
  return bot
}
afterEach(() => bot.close())

const refused = (why: string) => ({
  well: false,
  says: `Slack refuses the token (${why}); set a valid one and start again`,
})

/** The workspace takes the token back. */
const takeBack = (): (() => void) => {
  const team = bot.slack.teams.get(TOKEN)
  bot.slack.teams.delete(TOKEN)
  return () => {
    if (team) bot.slack.teams.set(TOKEN, team)
  }
}

const isRed = () => vi.waitFor(() => expect(bot.platform.health()).toEqual(refused('invalid_auth')))

describe('a token that is taken back later', () => {
  it.each(['socket', 'http'] as const)(
    'is seen by looking now and then, and when it counts again: %s',
    async (mode) => {
      const { platform, logged } = await open({ mode, lookEvery: 10 })
      expect(platform.health().well).toBe(true)
      const giveBack = takeBack()
      await isRed()
      giveBack()
      await vi.waitFor(() => expect(platform.health().well).toBe(true))
      const said = logged.map(({ message }) => message)
      expect(said.filter((message) => message === refused('invalid_auth').says)).toHaveLength(1)
      expect(said).toContain('Slack takes the token again')
    },
  )

  it('is seen when an answer is refused', async () => {
    const { event } = await open()
    takeBack()
    await event(eventPayload('appMention', {}))
    await isRed()
  })

  it.each(['app_uninstalled', 'tokens_revoked'])('is seen when Slack says %s', async (type) => {
    const { event } = await open()
    takeBack()
    const { event: _, ...envelope } = payload('appMention')
    await event({ ...envelope, event: { type, tokens: { bot: ['B-T1'] } } })
    await isRed()
  })

  it('is nothing that a stop waits for', async () => {
    const { slack, platform, logged } = await open({ lookEvery: 10 })
    const go = slack.hold('auth.test')
    const before = slack.all('auth.test').length
    await slack.until(() => slack.all('auth.test').length > before)
    await platform.stop()
    expect(platform.health()).toEqual({ well: false, says: 'stopped' })
    takeBack()
    go()
    await new Promise((resolve) => setImmediate(resolve))
    expect(logged).toEqual([])
  })

  it('is not what a slow or broken Slack makes of it', async () => {
    const { slack, platform } = await open({ lookEvery: 10 })
    slack.trouble('auth.test', { error: 'internal_error' }, { error: 'fatal_error' })
    await slack.until(() => slack.all('auth.test').length > 4)
    expect(platform.health().well).toBe(true)
  })
})
