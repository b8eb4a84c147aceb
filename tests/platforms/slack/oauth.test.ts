import { afterEach, describe, expect, it } from 'vitest'
import { createInstallations } from '../../../src/platforms/slack/installations.ts'
import { createSeal } from '../../../src/platforms/slack/seal.ts'
import { type Bot, KEY, memoryVault, openBot } from './bot.ts'
import { type Team, team } from './loopback.ts'
import { type Payload, payload } from './payloads.ts'

let bot: Bot

afterEach(async () => {
  expect(bot.slack.faults).toEqual([])
  await bot.close()
})

const oauth = (vault = memoryVault(), key = KEY) => ({
  clientId: 'client-id',
  clientSecret: 'client-secret',
  stateSecret: 'state-secret',
  address: 'https://bot.example.org',
  vault,
  key,
})

const open = async (vault = memoryVault(), key = KEY) => {
  bot = await openBot({ workspaces: oauth(vault, key), teams: [] })
  return vault
}

/** Goes through the installation as a browser does. */
async function install(installed: Team): Promise<globalThis.Response> {
  const begun = await fetch(`${bot.address()}/slack/install`, { redirect: 'manual' })
  const to = new URL(begun.headers.get('location') ?? '')
  const cookie = begun.headers.get('set-cookie')?.split(';')[0] ?? ''
  const code = bot.slack.fresh('code')
  bot.slack.codes.set(code, installed)
  const back = new URLSearchParams({ code, state: to.searchParams.get('state') ?? '' })
  return fetch(`${bot.address()}/slack/oauth_redirect?${back}`, { headers: { cookie }, redirect: 'manual' })
}

const T1 = team('T1')
const T2 = team('T2', { channels: new Set(['C2']) })

describe('installing in many workspaces', () => {
  it('begins at Slack, with every scope that is wanted and the address to come back to', async () => {
    await open()
    const begun = await fetch(`${bot.address()}/slack/install`, { redirect: 'manual' })
    expect(begun.status).toBe(302)
    const to = new URL(begun.headers.get('location') ?? '')
    expect([to.origin, to.pathname]).toEqual(['https://slack.com', '/oauth/v2/authorize'])
    expect(to.searchParams.get('scope')).toBe(
      'commands,chat:write,app_mentions:read,im:history,files:write,users:read,channels:read,groups:read,pins:write',
    )
    expect(to.searchParams.get('redirect_uri')).toBe('https://bot.example.org/slack/oauth_redirect')
  })

  it('keeps a token for each, and answers each by its own', async () => {
    await open()
    expect((await install(T1)).status).toBe(200)
    expect((await install(T2)).status).toBe(200)
    for (const { id, token } of [T1, T2]) {
      const event = { ...(payload('appMention').event as Payload), channel: id === 'T1' ? 'C1' : 'C2' }
      const authorizations = [
        { team_id: id, enterprise_id: null, user_id: 'U', is_bot: true, is_enterprise_install: false },
      ]
      await bot.event({ ...payload('appMention'), event, team_id: id, authorizations, event_id: `Ev${id}` })
      expect((await bot.slack.next('chat.postMessage')).token).toBe(token)
    }
  })

  it('keeps no token that can be read', async () => {
    const vault = await open()
    await install(T1)
    const [[name, value] = []] = vault.values
    expect(name).toBe('slack installation T1')
    expect(value).toMatch(/^v1\.[\w-]{16}\.[\w-]{22}\.[\w-]+$/u)
    expect(value).not.toContain(T1.token)
    expect(JSON.parse(createSeal(KEY).open(name ?? '', value ?? ''))).toMatchObject({
      bot: { token: T1.token },
    })
  })

  it('refuses who comes back without the cookie it began with', async () => {
    const vault = await open()
    const begun = await fetch(`${bot.address()}/slack/install`, { redirect: 'manual' })
    const state = new URL(begun.headers.get('location') ?? '').searchParams.get('state') ?? ''
    bot.slack.codes.set('stolen', T1)
    const back = await fetch(
      `${bot.address()}/slack/oauth_redirect?${new URLSearchParams({ code: 'stolen', state })}`,
    )
    expect(back.status).toBe(400)
    expect(vault.values.size).toBe(0)
    expect(JSON.stringify(bot.logged)).not.toMatch(/client-secret|state-secret/u)
  })
})

describe('a workspace without an installation', () => {
  it('gets a friendly answer that says where to install', async () => {
    await open()
    expect((await bot.command('units', { team_id: 'T9' })).status).toBe(200)
    const { body } = await bot.slack.next('respond')
    expect(body).toMatchObject({ response_type: 'ephemeral' })
    expect(body.text).toContain('https://bot.example.org/slack/install')
  })

  it('is one that has taken the app away, or its token', async () => {
    const vault = await open()
    for (const name of ['appUninstalled', 'tokensRevoked']) {
      await install(T1)
      expect(vault.values.size).toBe(1)
      await bot.event({ ...payload(name), event_id: name })
      await bot.slack.until(() => vault.values.size === 0)
    }
    await bot.command('units')
    expect((await bot.slack.next('respond')).body.text).toContain('not installed')
  })

  it('keeps its token when only that of a person is taken back', async () => {
    const vault = await open()
    await install(T1)
    const event = { type: 'tokens_revoked', tokens: { oauth: ['U1'] } }
    await bot.event({ ...payload('tokensRevoked'), event })
    await bot.platform.stop()
    expect(vault.values.size).toBe(1)
  })

  it('is one whose token was kept under another key, which the log says', async () => {
    const vault = await open()
    await install(T1)
    await bot.close()
    await open(vault, Buffer.alloc(32, 8))
    await bot.command('units')
    expect((await bot.slack.next('respond')).body.text).toContain('not installed')
    expect(JSON.stringify(bot.logged)).toContain('it was kept under another key')
  })
})

it('a workspace that cannot be looked up is not told to install anew, and the log says why', async () => {
  const vault = memoryVault()
  await open({ ...vault, read: () => Promise.reject(new Error('the store cannot be used')) })
  await bot.command('units')
  const { text } = (await bot.slack.next('respond')).body
  expect(text).toBe(
    'I cannot look up just now whether I am installed in this workspace; ask again in a minute.',
  )
  expect(JSON.stringify(bot.logged)).toContain('the store cannot be used')
})

describe('the installations of an organisation', () => {
  it('count for its workspaces, until they are taken away', async () => {
    await open()
    const store = createInstallations(memoryVault(), createSeal(KEY))
    const installation = {
      team: undefined,
      enterprise: { id: 'E1' },
      user: { token: undefined, scopes: undefined, id: 'U1' },
      bot: { token: 'xoxb-E1', scopes: [], id: 'B', userId: 'U' },
      isEnterpriseInstall: true,
    } as const
    await store.storeInstallation({ ...installation, bot: { ...installation.bot, scopes: [] } })
    const query = { teamId: 'T5', enterpriseId: 'E1', isEnterpriseInstall: false } as const
    expect((await store.fetchInstallation(query)).bot?.token).toBe('xoxb-E1')
    await store.deleteInstallation?.({ teamId: undefined, enterpriseId: 'E1', isEnterpriseInstall: true })
    await expect(store.fetchInstallation(query)).rejects.toThrow('not installed')
  })
})
