import { describe, expect, it } from 'vitest'
import { readSlackOptions } from '../../../src/platforms/slack/options.ts'
import { KEY, memoryVault } from './bot.ts'

const vault = memoryVault()
const read = (environment: Record<string, string>) => readSlackOptions(environment, vault)

const OAUTH = {
  SLACK_SIGNING_SECRET: 's',
  SLACK_CLIENT_ID: 'i',
  SLACK_CLIENT_SECRET: 'c',
  SLACK_STATE_SECRET: 't',
  SLACK_TOKEN_KEY: KEY.toString('hex'),
  SLACK_ADDRESS: 'https://bot.example.org/',
}

describe('the environment', () => {
  it('may say nothing of Slack', () => {
    expect(read({ HOME: '/root' })).toBeUndefined()
    expect(read({ SLACK_BOT_TOKEN: '' })).toBeUndefined()
  })

  it('sets up Socket Mode', () => {
    expect(read({ SLACK_APP_TOKEN: 'xapp-1', SLACK_BOT_TOKEN: 'xoxb-1', SLACK_COMMAND: '/wood' })).toEqual({
      command: '/wood',
      connection: { mode: 'socket', appToken: 'xapp-1', botToken: 'xoxb-1' },
    })
  })

  it('sets up HTTP for one workspace', () => {
    expect(read({ SLACK_SIGNING_SECRET: 's', SLACK_BOT_TOKEN: 'xoxb-1', SLACK_PORT: '8080' })).toEqual({
      command: '/batten',
      connection: {
        mode: 'http',
        signingSecret: 's',
        port: 8080,
        host: undefined,
        workspaces: { botToken: 'xoxb-1' },
      },
    })
  })

  it('sets up HTTP for any workspace', () => {
    expect(read(OAUTH)?.connection).toEqual({
      mode: 'http',
      signingSecret: 's',
      port: 3000,
      host: undefined,
      workspaces: {
        clientId: 'i',
        clientSecret: 'c',
        stateSecret: 't',
        vault,
        key: KEY,
        address: 'https://bot.example.org',
      },
    })
  })

  it.each<[Record<string, string>, string]>([
    [
      { SLACK_BOT_TOKEN: 'xoxb-1' },
      'set SLACK_APP_TOKEN and SLACK_BOT_TOKEN for Socket Mode, or SLACK_SIGNING_SECRET',
    ],
    [{ SLACK_APP_TOKEN: 'xapp-1' }, 'SLACK_BOT_TOKEN is not set'],
    [{ SLACK_APP_TOKEN: 'xoxb-1', SLACK_BOT_TOKEN: 'xoxb-1' }, 'SLACK_APP_TOKEN does not begin with xapp-'],
    [{ SLACK_SIGNING_SECRET: 's', SLACK_BOT_TOKEN: 'xoxp-1' }, 'SLACK_BOT_TOKEN does not begin with xoxb-'],
    [{ SLACK_SIGNING_SECRET: 's', SLACK_BOT_TOKEN: 'xoxb-1', SLACK_PORT: 'web' }, 'SLACK_PORT is "web"'],
    [
      { SLACK_SIGNING_SECRET: 's', SLACK_BOT_TOKEN: 'xoxb-1', SLACK_COMMAND: 'batten' },
      'SLACK_COMMAND is "batten"',
    ],
    [{ ...OAUTH, SLACK_CLIENT_SECRET: '' }, 'SLACK_CLIENT_SECRET is not set'],
    [{ ...OAUTH, SLACK_TOKEN_KEY: '' }, 'SLACK_TOKEN_KEY is not set'],
    [{ ...OAUTH, SLACK_TOKEN_KEY: 'short' }, 'SLACK_TOKEN_KEY: the key has to be 32 bytes'],
  ])('that says %j is told what is wrong, and no secret', (environment, sentence) => {
    expect(() => read(environment)).toThrow(sentence)
    expect(() => read(environment)).not.toThrow('xoxp-1')
  })
})
