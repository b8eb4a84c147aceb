import { afterEach, describe, expect, it } from 'vitest'
import type { Reply } from '../../../src/bot/reply.ts'
import type { Answer } from '../../../src/bot/request.ts'
import { createGate } from '../../gate.ts'
import { type Bot, memoryKeeping, openBot, textOf } from './bot.ts'
import { team } from './loopback.ts'
import { full, respond } from './replies.ts'

const SCOPES = ['commands', 'chat:write', 'files:write', 'app_mentions:read', 'im:history', 'pins:write']

let bot: Bot
afterEach(async () => {
  expect(bot.slack.faults).toEqual([])
  await bot.close()
})

let revision = 0

/** Answers every line with a notice that says the line, each of a revision of its own. */
const noticing =
  (more: Partial<Reply> = {}, filesOf?: (line: string) => Reply['files']): Answer =>
  async ({ invocation }) => {
    revision += 1
    const notice = { name: 'group', revision }
    const line = 'line' in invocation ? invocation.line : invocation.command
    const reply: Reply = {
      answer: `list for ${line}`,
      figures: {},
      ...more,
      ...(filesOf && { files: filesOf(line) ?? [] }),
    }
    return respond({ answer: 'It is up', figures: {}, notice: { ...notice, reply } })
  }

/** The same, but the answer to `first` waits until it is let go. */
function holding(first: string) {
  const { promise, release } = createGate()
  const noticed = noticing()
  const answer: Answer = async (request) => {
    const response = await noticed(request)
    if (JSON.stringify(request.invocation).includes(first)) await promise
    return response
  }
  return { answer, release }
}

const open = async (more: Partial<Reply> = {}, parts: Parameters<typeof team>[1] = { scopes: SCOPES }) => {
  bot = await openBot({ answer: noticing(more), teams: [team('T1', parts)] })
  return bot
}

/** All that stands in the channel, apart from what is said in threads. */
const standing = () =>
  [...bot.slack.standing].filter(([key]) => key.startsWith('C1 ')).map(([, body]) => body)

describe('a standing notice in Slack', () => {
  it('is posted and pinned once, and updated from then on', async () => {
    const { slack, command } = await open()
    await command('one')
    await slack.next('pins.add')
    await command('two')
    await slack.next('chat.update')
    expect(standing()).toEqual([expect.objectContaining({ isPinned: true })])
    expect(standing()[0]?.text).toContain('list for two')
    expect(slack.all('pins.add')).toHaveLength(1)
    expect(slack.all('respond').map(({ body }) => body.text)).toEqual(['It is up', 'It is up'])
  })

  it('has its drawing and files in its thread, once as long as they stay the same', async () => {
    const { slack, command } = await open({ files: full.files ?? [], pictures: full.pictures ?? [] })
    await command('one')
    const shared = await slack.next('files.completeUploadExternal')
    expect(shared.body).toMatchObject({ channel_id: 'C1', thread_ts: expect.stringMatching(/^1\./u) })
    await command('two')
    await slack.next('chat.update')
    await command('three')
    await slack.next('chat.update')
    expect(slack.all('files.completeUploadExternal')).toHaveLength(1)
    expect(slack.all('files.delete')).toEqual([])
  })

  it('has newer files in the place of those before', async () => {
    const filesOf = (line: string) => [{ name: 'parts.csv', type: 'text/csv', content: line }]
    bot = await openBot({ answer: noticing({}, filesOf), teams: [team('T1', { scopes: SCOPES })] })
    const { slack, command } = bot
    await command('one')
    await slack.next('files.completeUploadExternal')
    await command('two')
    await slack.next('files.delete')
    expect([...slack.uploads.values()].map(({ bytes }) => String(bytes))).toEqual(['two'])
  })

  it('of an older list that comes after a newer one leaves the newer standing', async () => {
    const { answer, release } = holding('one')
    bot = await openBot({ answer, teams: [team('T1', { scopes: SCOPES })] })
    await bot.command('one')
    await bot.command('two')
    await bot.slack.next('pins.add')
    release()
    await bot.platform.stop()
    expect(standing().map(({ text }) => text)).toEqual([expect.stringContaining('list for two')])
  })

  it('of an older list by one process leaves the newer list of another standing', async () => {
    const { answer, release } = holding('one')
    const keeping = memoryKeeping()
    bot = await openBot({ answer, keeping, teams: [team('T1', { scopes: SCOPES })] })
    const other = await openBot({ answer, keeping, slack: bot.slack })
    await bot.command('one')
    await other.command('two')
    await bot.slack.next('pins.add')
    await other.close()
    release()
    await bot.platform.stop()
    expect(standing().map(({ text }) => text)).toEqual([expect.stringContaining('list for two')])
  })

  it('that was deleted is posted and pinned anew', async () => {
    const { slack, command } = await open()
    await command('one')
    await slack.next('pins.add')
    slack.standing.clear()
    await command('two')
    await slack.next('pins.add')
    expect(standing()).toEqual([expect.objectContaining({ isPinned: true })])
  })

  it('of sixty people with sixty cautions is one message within every limit', async () => {
    const text =
      'the lid is heavier than one person lifts alone, so lift it with two, and mind the <edges> of the sheet.'
    const cautions = Array.from({ length: 90 }, (_, row) => ({
      id: 'use',
      task: 'use',
      text: `Kit ${row}: ${text}`,
    }))
    const rows = Array.from({ length: 180 }, (_, row) => [row, `part of kit ${row}`, '12 x 18'])
    const tables = [{ title: 'Cut now', columns: ['n', 'what', 'in'], rows }]
    const { slack, command } = await open({ cautions, tables })
    await command('one')
    await slack.next('files.completeUploadExternal')
    expect(standing()).toHaveLength(1)
    expect(textOf(standing()[0] ?? {})).toMatch(/\d+ more cautions in the file cautions\.txt/u)
    expect([...slack.uploads.values()].map(({ filename }) => filename).toSorted()).toEqual([
      'cautions.txt',
      'cut-now-1.csv',
    ])
  })
})

describe('what a notice may not do is said to whoever acted', () => {
  it.each([
    ['a channel that it is not in', { scopes: SCOPES, channels: new Set<string>() }, 'type /invite', 0],
    ['pins', { scopes: SCOPES.filter((scope) => scope !== 'pins:write') }, 'pins:write', 1],
  ])('%s', async (_, parts, words, count) => {
    const { slack, command } = await open({}, parts)
    await command('one')
    expect((await slack.next('respond')).body.text).toBe('It is up')
    const told = await slack.next('respond')
    expect(told.body).toMatchObject({ response_type: 'ephemeral', text: expect.stringContaining(words) })
    expect(standing()).toHaveLength(count)
  })
})
