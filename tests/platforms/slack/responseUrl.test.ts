import nock from 'nock'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { createResponseUrl } from '../../../src/platforms/slack/responseUrl.ts'

const HOOKS = 'https://hooks.slack.com'

beforeAll(() => nock.disableNetConnect())

afterEach(() => {
  expect(nock.pendingMocks()).toEqual([])
  nock.cleanAll()
})

afterAll(() => {
  nock.enableNetConnect()
  nock.restore()
})

const words = { text: 'one', response_type: 'ephemeral' } as const
const blocks = [{ type: 'divider' }] as const

/** A response_url on a clock that the test moves, and what was waited for. */
function open() {
  const clock = { minutes: 0 }
  const waits: number[] = []
  const now = () => new Date(Date.UTC(2026, 2, 6, 18, clock.minutes))
  const url = createResponseUrl(`${HOOKS}/commands/1`, now, async (wait) => void waits.push(wait))
  return { clock, waits, post: url.post }
}

const slack = () => nock(HOOKS).post('/commands/1')

describe('a response_url', () => {
  it('gets the message as JSON', async () => {
    nock(HOOKS, { reqheaders: { 'content-type': 'application/json' } })
      .post('/commands/1', words)
      .reply(200, 'ok')
    expect(await open().post(words)).toBeUndefined()
  })

  it('works five times', async () => {
    nock(HOOKS).post('/commands/1').times(5).reply(200, 'ok')
    const { post } = open()
    const said = []
    for (let use = 0; use < 7; use += 1) said.push(await post(words))
    expect(said).toEqual([undefined, undefined, undefined, undefined, undefined, 'used_up', 'used_up'])
  })

  it('works for half an hour', async () => {
    slack().reply(200, 'ok')
    const { post, clock } = open()
    clock.minutes = 30
    expect(await post(words)).toBeUndefined()
    clock.minutes = 31
    expect(await post(words)).toBe('expired')
  })

  it.each([
    [404, '{"ok":false,"error":"expired_url"}', 'expired_url'],
    [404, 'used_url', 'used_url'],
    [404, '<html>Not Found</html>', 'http_404'],
    [500, '', 'http_500'],
  ])('that says %i %s says why', async (status, body, why) => {
    slack().reply(status, body)
    expect(await open().post(words)).toBe(why)
  })

  it.each(['invalid_blocks', 'msg_blocks_too_long', 'invalid_attachments'])(
    'gets the words alone after %s',
    async (error) => {
      slack().reply(404, { ok: false, error })
      nock(HOOKS).post('/commands/1', words).reply(200, 'ok')
      expect(await open().post({ ...words, blocks })).toBeUndefined()
    },
  )

  it('does not say the same words twice', async () => {
    slack().reply(404, { ok: false, error: 'invalid_blocks' })
    expect(await open().post(words)).toBe('invalid_blocks')
  })

  it('waits as long as 429 asks, a minute at most, and gives up after three', async () => {
    for (const seconds of ['7', '3600', '1']) slack().reply(429, '', { 'retry-after': seconds })
    const { post, waits } = open()
    expect(await post(words)).toBe('http_429')
    expect(waits).toEqual([7000, 60_000])
  })

  it('that cannot be reached says so and does not throw', async () => {
    slack().replyWithError('connect ECONNREFUSED')
    expect(await open().post(words)).toBe('unreachable')
  })
})
