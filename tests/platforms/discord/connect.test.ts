import { once } from 'node:events'
import { afterEach, describe, expect, it } from 'vitest'
import { type Bot, openBot, wordsOf } from './bot.ts'
import { slash } from './slash.ts'

let bot: Bot | undefined
afterEach(() => bot?.close())

/** A bot that is not started yet, before a gateway that says nothing to the first who comes. */
async function openSilent(patience?: number) {
  const opened = await openBot({ isStarted: false, options: { patience } })
  opened.loopback.gateway.silence()
  bot = opened
  return opened
}

describe('an attempt to connect', () => {
  it('has an end where Discord says nothing, and the next one goes on from there', async () => {
    const { discord, loopback } = await openSilent(300)
    await expect(discord.start()).rejects.toThrow('Discord cannot be reached: it does not answer')
    expect(discord.health().well).toBe(false)
    loopback.gateway.hangUp()
    for (let tries = 0; tries < 100; tries += 1)
      if (
        await discord.start().then(
          () => true,
          () => false,
        )
      )
        break
    const answer = await loopback.answerTo(loopback.interact(slash('convert 1in')))
    expect(wordsOf(answer)).toContain('25.4 mm')
    expect([discord.health().well, loopback.gateway.open()]).toEqual([true, 1])
  })

  it('ends when the bot is stopped', async () => {
    const { discord, loopback } = await openSilent()
    const started = discord.start().catch((error: Error) => error.message)
    while (loopback.gateway.identified.length === 0) await new Promise((later) => setImmediate(later))
    await discord.stop()
    expect(await started).toBe('Discord was closed while it was opened')
    expect(discord.health()).toEqual({ well: false, says: 'Discord is closed' })
  })

  it('ends when the bot is stopped before it knows where to connect to', async () => {
    const { discord, loopback } = await openSilent()
    const started = discord.start().catch((error: Error) => error.message)
    await discord.stop()
    expect(await started).toBe('Discord was closed while it was opened')
    expect(loopback.gateway.identified).toEqual([])
  })

  it('after one that was refused is closed with the bot', async () => {
    const opened = await openBot({ isStarted: false })
    bot = opened
    opened.loopback.gateway.refuse(4014)
    await expect(opened.discord.start()).rejects.toThrow(/4014/u)
    await opened.discord.start()
    expect(opened.loopback.gateway.open()).toBe(1)
    const closed = once(opened.loopback.gateway.closings, 'close')
    await opened.discord.stop()
    await closed
    expect(opened.loopback.gateway.open()).toBe(0)
  })
})
