import { afterEach, describe, expect, it } from 'vitest'
import { type Bot, elementsOf, memoryKeeping, openBot, pressOf, textOf } from './bot.ts'
import { eventPayload, type Payload, payload } from './payloads.ts'
import { answerWith, full } from './replies.ts'

let bot: Bot

afterEach(async () => {
  expect(bot.slack.faults).toEqual([])
  await bot.close()
})

/** Opens the page of somebody who has it before them, and hands back what is published. */
async function opened(event: Payload = {}): Promise<Payload> {
  await bot.event(eventPayload('appHomeOpened', event, { event_id: bot.slack.fresh('Ev') }))
  return (await bot.slack.next('views.publish')).body.view as Payload
}

const homeWith = (channel: string): Payload => ({
  ...(payload('pressHome').view as Payload),
  private_metadata: JSON.stringify({ channel }),
})

describe('the home page', () => {
  it('shows the units of the person and the project of their conversation with the bot', async () => {
    bot = await openBot()
    const view = await opened()
    expect(view).toMatchObject({ type: 'home' })
    expect(textOf(view)).toContain('tape 1/16 in')
    expect(textOf(view)).toContain('this channel has no project yet')
    expect(bot.slack.all('views.publish')[0]?.body.user_id).toBe('U1')
    const [list] = elementsOf(view, 'form')
    const values = ((list?.options ?? []) as readonly { value: string }[]).map(({ value }) => value)
    expect(values).toContain('project start')
    expect(values).toContain('sizing')
  })

  it('is published once when Slack says so twice', async () => {
    bot = await openBot()
    const event = eventPayload('appHomeOpened', {})
    await bot.event(event)
    await bot.event(event, { 'x-slack-retry-num': '1' })
    await bot.platform.stop()
    expect(bot.slack.all('views.publish')).toHaveLength(1)
  })

  it('is not published for the other tab', async () => {
    bot = await openBot()
    await bot.event(eventPayload('appHomeOpened', { tab: 'messages' }))
    await bot.platform.stop()
    expect(bot.slack.all('views.publish')).toEqual([])
  })

  it('shows the project of the channel that is chosen, and goes on with it', async () => {
    bot = await openBot()
    await bot.command('project start 17in x 13in height=15in')
    await bot.slack.next('respond')
    const [choice] = elementsOf(await opened(), 'channel')
    const chosen = { ...choice, selected_conversation: 'C1' }
    await bot.interact(pressOf(bot.slack, chosen, 'pressHome', { view: homeWith('D1') }))
    const view = (await bot.slack.next('views.publish')).body.view as Payload
    expect(textOf(view)).toContain('2 side panels 18 x 15 in')
    expect(elementsOf(view, 'channel')[0]).toMatchObject({ initial_conversation: 'C1' })
    expect(textOf(await opened({ view }))).toContain('2 side panels 18 x 15 in')
  })

  it('answers a button over the page, and is published anew', async () => {
    bot = await openBot()
    const [, metric] = elementsOf(await opened(), 'line')
    expect(metric).toMatchObject({ value: 'units metric' })
    await bot.interact(pressOf(bot.slack, metric ?? {}, 'pressHome', { view: homeWith('D1') }))
    expect(textOf((await bot.slack.next('views.open')).body.view as Payload)).toContain('Working it out')
    const answer = (await bot.slack.next('views.update')).body.view as Payload
    expect(answer).toMatchObject({ type: 'modal', callback_id: 'answer' })
    expect(textOf(answer)).toContain('metric')
    expect(textOf((await bot.slack.next('views.publish')).body.view as Payload)).toContain('metric')
  })

  it('opens a form, whose answer takes its place', async () => {
    bot = await openBot()
    const [list] = elementsOf(await opened(), 'form')
    const chosen = { ...list, selected_option: { value: 'strips' } }
    await bot.interact(pressOf(bot.slack, chosen, 'pressHome', { view: homeWith('C1') }))
    const view = (await bot.slack.next('views.open')).body.view as Payload
    expect(view).toMatchObject({ title: { text: 'strips' } })
    const submitted = payload('viewSubmission')
    const state = {
      values: {
        board: { value: { type: 'plain_text_input', value: '2x6' } },
        rip: { value: { value: '1/2in' } },
      },
    }
    const done = await bot.interact({
      ...submitted,
      trigger_id: 'T',
      view: { ...(submitted.view as Payload), ...view, state },
    })
    const answered = (await done.json()) as { response_action: string; view: Payload }
    expect(answered.response_action).toBe('update')
    expect(textOf(answered.view)).toContain('9 strips of 1/2 in')
  })

  it('has one effect for a form that comes twice, and shows its answer both times', async () => {
    const keeping = memoryKeeping()
    const answer = answerWith(full)
    bot = await openBot({ answer, keeping })
    const other = await openBot({ answer, keeping, slack: bot.slack })
    const ticket = { command: 'strips', channel: 'C1' }
    const submitted = payload('viewSubmission')
    const state = { values: { board: { value: { type: 'plain_text_input', value: '2x6' } } } }
    const view = { ...(submitted.view as Payload), private_metadata: JSON.stringify(ticket), state }
    const body = { ...submitted, trigger_id: 'T', view }
    const shown = async (sent: Promise<globalThis.Response>) =>
      textOf(((await (await sent).json()) as { view: Payload }).view)
    const both = await Promise.all([shown(bot.interact(body)), shown(bot.interact(body))])
    expect(both).toEqual([expect.stringContaining('Cut 2 panels'), expect.stringContaining('Cut 2 panels')])
    expect(await shown(other.interact(body))).toContain('answered already')
    await other.close()
    expect(answer.asked).toHaveLength(1)
  })

  it('whose view is closed by then gives the answer another way, and puts up what is for everybody', async () => {
    const notice = { name: 'group', reply: { answer: 'the list', figures: {} }, revision: 1 }
    bot = await openBot({ answer: answerWith({ ...full, notice }) })
    bot.slack.trouble('views.update', { error: 'not_found' })
    const view = { ...homeWith('C1'), id: 'V77', type: 'modal' }
    const line = { type: 'button', action_id: 'line:0', value: 'units' }
    await bot.interact(pressOf(bot.slack, line, 'pressHome', { view }))
    const { body } = await bot.slack.next('chat.postEphemeral')
    expect([body.user, body.text]).toEqual(['U1', expect.stringContaining('Cut 2 panels')])
    expect((await bot.slack.next('chat.postMessage')).body.text).toContain('the list')
    expect(textOf(body)).not.toContain('press the button again')
  })

  it('sends the drawing and the files of an answer over the page to who asks for them', async () => {
    bot = await openBot({ answer: answerWith(full) })
    const view = { ...homeWith('C1'), id: 'V77', type: 'modal' }
    const line = { type: 'button', action_id: 'line:0', value: 'units' }
    await bot.interact(pressOf(bot.slack, line, 'pressHome', { view }))
    const answer = (await bot.slack.next('views.update')).body.view as Payload
    const [send] = elementsOf(answer, 'send')
    expect(send?.text).toMatchObject({ text: 'Send me the drawing' })
    await bot.interact(pressOf(bot.slack, send ?? {}, 'pressHome', { view: { ...answer, id: 'V77' } }))
    expect((await bot.slack.next('files.completeUploadExternal')).body).toMatchObject({
      channel_id: 'D1',
      files: [{ title: 'panels' }, { title: 'cuts.csv' }],
    })
    expect((await bot.slack.next('chat.postEphemeral')).body.text).toContain('direct message')
  })

  it('changes an answer over the page in place when one of its buttons is pressed', async () => {
    bot = await openBot()
    const view = { ...homeWith('C1'), id: 'V77', type: 'modal' }
    const button = { type: 'button', action_id: 'line:0', value: 'units' }
    await bot.interact(pressOf(bot.slack, button, 'pressHome', { view }))
    expect((await bot.slack.next('views.update')).body).toMatchObject({ view_id: 'V77' })
    expect(bot.slack.all('views.open')).toEqual([])
  })
})
