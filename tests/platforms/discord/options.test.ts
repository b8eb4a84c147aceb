import { describe, expect, it } from 'vitest'
import { readDiscordOptions } from '../../../src/platforms/discord/options.ts'

const TOKEN = { BATTENBOT_DISCORD_TOKEN: ' t.o.k ' }
const SERVER = '1200000000000000001'

describe('what the environment says of Discord', () => {
  it('is nothing without a token', () => {
    expect(readDiscordOptions({ PATH: '/bin', BATTENBOT_DISCORD_TOKEN: '' })).toBeUndefined()
  })

  it.each([
    [{}, { token: 't.o.k' }],
    [{ BATTENBOT_DISCORD_SERVER: SERVER }, { token: 't.o.k', server: SERVER }],
    [{ BATTENBOT_DISCORD_SHARDS: '0,1 of 4' }, { token: 't.o.k', shards: { ids: [0, 1], count: 4 } }],
    [{ BATTENBOT_DISCORD_SHARDS: ' 3 OF 4 ' }, { token: 't.o.k', shards: { ids: [3], count: 4 } }],
  ])('%o', (more, options) => {
    expect(readDiscordOptions({ ...TOKEN, ...more })).toEqual(options)
  })

  it.each([
    [{ BATTENBOT_DISCORD_SERVER: 'club' }, 'BATTENBOT_DISCORD_SERVER is "club"; write the id of a server'],
    [{ BATTENBOT_DISCORD_SHARDS: '4 of 4' }, 'BATTENBOT_DISCORD_SHARDS is "4 of 4"; write the numbers'],
    [{ BATTENBOT_DISCORD_SHARDS: 'all' }, 'such as 0,1 of 4'],
    [
      { BATTENBOT_DISCORD_SHARDS: '0 of 1', BATTENBOT_DISCORD_TOKEN: ' ' },
      'BATTENBOT_DISCORD_TOKEN is not set',
    ],
  ])('is refused as %o, without telling the token', (more, message) => {
    const read = () => readDiscordOptions({ ...TOKEN, ...more })
    expect(read).toThrow(message)
    expect(read).not.toThrow('t.o.k')
  })
})
