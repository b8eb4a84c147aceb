import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { examples } from '../../room.ts'
import { type Bot, elementsOf, openBot, textOf } from './bot.ts'
import { checkMessage } from './checkMessage.ts'

let bot: Bot

beforeAll(async () => {
  bot = await openBot()
})

afterAll(() => bot.close())

describe('a slash command over HTTP', () => {
  it('is acknowledged with nothing, and answered at its response_url for the asker alone', async () => {
    const acknowledged = await bot.command('strips 2x6 rip=1/2in')
    expect([acknowledged.status, await acknowledged.text()]).toEqual([200, ''])
    const { body } = await bot.slack.next('respond')
    expect(body).toMatchObject({ response_type: 'ephemeral', replace_original: false })
    expect(body.text).toContain('9 strips of 1/2 in from each 2x6')
    expect(textOf(body)).toContain('```\nFence to nearest tooth (in);\n')
    expect(elementsOf(body, 'show')).toHaveLength(1)
  })

  it('answers every example of every command within the limits of Slack', async () => {
    for (const [name, line] of examples) {
      await bot.command(line)
      const { body, error } = await bot.slack.next('respond')
      expect(error, `${name}: ${line}`).toBeUndefined()
      expect(checkMessage(body as { text: string }), `${name}: ${line}`).toEqual([])
    }
    expect(bot.slack.faults).toEqual([])
  })

  it('lists the commands when nothing is typed', async () => {
    await bot.command('')
    expect((await bot.slack.next('respond')).body.text).toContain('commands. Start with')
  })

  it('says a slip as it is, with a form to mend it', async () => {
    await bot.command('sizing 17in x 13in height=tall')
    const { body } = await bot.slack.next('respond')
    expect(body.text).toContain('"tall"')
    expect(elementsOf(body, 'form')).toHaveLength(1)
    expect(elementsOf(body, 'show')).toHaveLength(0)
  })

  it('lets nothing that was typed ping anybody', async () => {
    await bot.command('<!channel> & <@U2> &lt;b&gt;')
    const { body } = await bot.slack.next('respond')
    expect(JSON.stringify(body)).not.toMatch(/<[!@]/u)
    expect(bot.slack.faults).toEqual([])
  })
})
