import { afterEach, describe, expect, it } from 'vitest'
import type { Response } from '../../../src/bot/request.ts'
import { type Bot, elementsOf, openBot, pressOf, textOf } from './bot.ts'
import { type Payload, payload } from './payloads.ts'
import { answerWith, full, respond } from './replies.ts'

let bot: Bot

afterEach(async () => {
  expect(bot.slack.faults).toEqual([])
  await bot.close()
})

/** What the form was filled in with. */
const filled = (view: Payload, values: Readonly<Record<string, string>>): Payload => {
  const state = {
    values: Object.fromEntries(
      (view.blocks as readonly { block_id: string; element: { type: string } }[]).map(
        ({ block_id: id, element }) => {
          const value = values[id] ?? null
          const field =
            element.type === 'static_select'
              ? { type: 'static_select', selected_option: value === null ? null : { value } }
              : { type: 'plain_text_input', value }
          return [id, { value: field }]
        },
      ),
    ),
  }
  const submitted = payload('viewSubmission')
  return {
    ...submitted,
    trigger_id: bot.slack.trigger(),
    view: { ...(submitted.view as Payload), ...view, blocks: view.blocks, state },
  }
}

/** Types a line that cannot be answered, presses its button and hands back the form. */
async function formOf(line: string): Promise<Payload> {
  await bot.command(line)
  const [button] = elementsOf((await bot.slack.next('respond')).body, 'form')
  await bot.interact(pressOf(bot.slack, button ?? {}))
  return (await bot.slack.next('views.open')).body.view as Payload
}

describe('a form', () => {
  it('asks for every value of a command, with what was typed filled in', async () => {
    bot = await openBot()
    const view = await formOf('sizing 17in x 13in height=tall corner=cleated')
    expect(view).toMatchObject({ type: 'modal', callback_id: 'form', title: { text: 'sizing' } })
    const blocks = view.blocks as readonly { block_id: string; element: Payload }[]
    expect(blocks.map(({ block_id: id }) => id).slice(0, 3)).toEqual(['object', 'height', 'clearance'])
    const element = (name: string) => blocks.find(({ block_id: id }) => id === name)?.element
    expect(element('object')).toMatchObject({ type: 'plain_text_input', initial_value: '17in x 13in' })
    expect(element('height')).toMatchObject({ initial_value: 'tall' })
    expect(element('corner')).toMatchObject({ type: 'static_select', initial_option: { value: 'cleated' } })
  })

  it('is of the verb that was typed', async () => {
    bot = await openBot()
    const view = await formOf('project start 17in height=tall')
    expect(view.title).toMatchObject({ text: 'project start' })
    expect(JSON.parse(String(view.private_metadata))).toMatchObject({
      command: 'project',
      verb: 'start',
      channel: 'C1',
    })
  })

  it('is answered where it was opened from', async () => {
    bot = await openBot()
    const view = await formOf('strips 2x6 rip=what')
    const done = await bot.interact(filled(view, { board: '2x6', rip: '1/2in' }))
    expect([done.status, await done.text()]).toEqual([200, ''])
    const { body } = await bot.slack.next('respond')
    expect(body.text).toContain('9 strips of 1/2 in')
    expect(elementsOf(body, 'show')).toHaveLength(1)
  })

  it('says a slip beside the field it is about, and can be sent again', async () => {
    bot = await openBot()
    const view = await formOf('strips 2x6 rip=what')
    const wrong = await bot.interact(filled(view, { board: '2x6', rip: 'wide' }))
    const said = (await wrong.json()) as { response_action: string; errors: Record<string, string> }
    expect(said.response_action).toBe('errors')
    expect(Object.keys(said.errors)).toEqual(['rip'])
    expect(said.errors.rip).toContain('"wide"')
    const right = await bot.interact(filled(view, { board: '2x6', rip: '1/2in' }))
    expect(await right.text()).toBe('')
    expect((await bot.slack.next('respond')).body.text).toContain('9 strips')
  })

  it('is acknowledged in time when the answer takes longer', async () => {
    let finish = (_: Response) => {}
    const slow = new Promise<Response>((resolve) => {
      finish = resolve
    })
    bot = await openBot({ answer: () => slow })
    const view = {
      private_metadata: JSON.stringify({
        command: 'layout',
        channel: 'C1',
        responseUrl: bot.slack.responseUrl(),
      }),
      blocks: [],
    }
    const done = await bot.interact(filled(view, {}))
    expect([done.status, await done.text()]).toEqual([200, ''])
    expect(bot.slack.all('respond')).toEqual([])
    finish(respond(full))
    expect((await bot.slack.next('respond')).body.text).toContain('Cut 2 panels')
  })

  it('is answered once when Slack sends it twice', async () => {
    const answer = answerWith(full)
    bot = await openBot({ answer })
    const view = {
      private_metadata: JSON.stringify({
        command: 'layout',
        channel: 'C1',
        responseUrl: bot.slack.responseUrl(),
      }),
      blocks: [],
    }
    const body = filled(view, {})
    expect((await Promise.all([bot.interact(body), bot.interact(body)])).map(({ status }) => status)).toEqual(
      [200, 200],
    )
    await bot.slack.next('respond')
    expect(answer.asked).toHaveLength(1)
  })

  it('of a button too old to be known says so', async () => {
    bot = await openBot()
    await bot.interact(pressOf(bot.slack, { type: 'button', action_id: 'form', value: 'kept:L9' }))
    expect(textOf((await bot.slack.next('respond')).body)).toContain('too old')
  })

  it('is not offered for a command that there is not, nor for a fault of ours', async () => {
    bot = await openBot({ answer: answerWith({ ok: false, kind: 'fault', error: 'something went wrong' }) })
    await bot.command('strips 2x6')
    expect(elementsOf((await bot.slack.next('respond')).body, 'form')).toEqual([])
    await bot.command('stirps 2x6')
    expect(elementsOf((await bot.slack.next('respond')).body, 'form')).toEqual([])
  })

  it('logs a trigger that Slack takes no more, and stays up', async () => {
    bot = await openBot()
    const press = pressOf(bot.slack, { type: 'button', action_id: 'form', value: 'sizing' })
    bot.slack.trouble('views.open', { error: 'exchanged_trigger_id' })
    await bot.interact(press)
    await bot.slack.next('views.open')
    await bot.platform.stop()
    expect(bot.logged).toContainEqual(
      expect.objectContaining({ facts: expect.objectContaining({ why: 'exchanged_trigger_id' }) }),
    )
  })
})
