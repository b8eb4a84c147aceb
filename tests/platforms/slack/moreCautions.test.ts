import { afterEach, describe, expect, it } from 'vitest'
import { type Bot, elementsOf, openBot, pressOf, textOf } from './bot.ts'
import { eventPayload } from './payloads.ts'
import { answerWith, full } from './replies.ts'

let bot: Bot
afterEach(async () => {
  expect(bot.slack.faults).toEqual([])
  await bot.close()
})

/** More than 25 000 characters, gravest first. */
const cautions = Array.from({ length: 180 }, (_, index) => ({
  id: `c${index}`,
  task: 'rip',
  text: `Caution ${index}: ${'mind & take <care>, '.repeat(7)}and again.`,
}))

const cautionsIn = (body: object): readonly number[] =>
  [...textOf(body).matchAll(/Caution (\d+):/gu)].map(([, number]) => Number(number))

const open = async () => {
  bot = await openBot({ answer: answerWith({ ...full, cautions }) })
  return bot
}

describe('an answer with more cautions than a message holds', () => {
  it('has the number to cut and the gravest of them, and the rest behind buttons, none of them lost', async () => {
    const { slack, command, interact } = await open()
    await command('sizing')
    let { body } = await slack.next('respond')
    expect(textOf(body)).toMatch(/^Cut 2 panels 18 x 15 in/u)
    expect(elementsOf(body, 'show')).toHaveLength(1)
    const said = [...cautionsIn(body)]
    expect(said.slice(0, 3)).toEqual([0, 1, 2])
    for (let more = elementsOf(body, 'more'); more.length > 0; more = elementsOf(body, 'more')) {
      const left = cautions.length - said.length
      expect(more[0]?.text).toMatchObject({ text: `${left} more ${left === 1 ? 'caution' : 'cautions'}` })
      await interact(pressOf(slack, more[0] ?? {}))
      body = (await slack.next('respond')).body
      expect(body.response_type).toBe('ephemeral')
      said.push(...cautionsIn(body))
    }
    expect(said).toEqual([...cautions.keys()])
    expect(slack.all('respond').map(({ error }) => error)).not.toContain('invalid_blocks')
  })

  it('is taken in a channel too, by a mention and shown to all', async () => {
    const { slack, event, command, interact } = await open()
    await event(eventPayload('appMention', {}))
    const mention = (await slack.next('chat.postMessage')).body
    expect(cautionsIn(mention)[0]).toBe(0)
    expect(elementsOf(mention, 'more')).toHaveLength(1)
    await command('sizing')
    const [show] = elementsOf((await slack.next('respond')).body, 'show')
    await interact(pressOf(slack, show ?? {}))
    const shown = (await slack.next('respond')).body
    expect(shown.response_type).toBe('in_channel')
    expect(elementsOf(shown, 'more')).toHaveLength(1)
  })
})
