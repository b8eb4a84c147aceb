import { describe, expect, it } from 'vitest'
import { describe as describeCommands } from '../../../src/bot/catalogue.ts'
import { createManifest } from '../../../src/platforms/slack/manifest.ts'
import { catalogue } from '../../room.ts'

const commands = [
  { name: 'sizing', summary: 'Every part of a box', examples: [], uses: [] },
  { name: 'strips', summary: 'How many strips a board gives', examples: [], uses: [] },
]

describe('the manifest of the Slack app', () => {
  it('is for Socket Mode without an address', () => {
    expect(createManifest(commands, { command: '/batten' })).toMatchInlineSnapshot(`
      {
        "display_information": {
          "description": "Build questions answered: panelled boxes, strips, braces, grooves, cuts, finish.",
          "long_description": "What can be asked, by hobby builders and clubs who make panelled boxes of sheets and strips:
      sizing: Every part of a box
      strips: How many strips a board gives",
          "name": "battenbot",
        },
        "features": {
          "app_home": {
            "home_tab_enabled": true,
            "messages_tab_enabled": true,
            "messages_tab_read_only_enabled": false,
          },
          "bot_user": {
            "always_online": true,
            "display_name": "battenbot",
          },
          "slash_commands": [
            {
              "command": "/batten",
              "description": "Ask a build question",
              "should_escape": true,
              "usage_hint": "[sizing | strips] ...",
            },
          ],
        },
        "oauth_config": {
          "scopes": {
            "bot": [
              "commands",
              "chat:write",
              "app_mentions:read",
              "im:history",
              "files:write",
              "users:read",
              "channels:read",
              "groups:read",
              "pins:write",
            ],
            "bot_optional": [
              "users:read",
              "channels:read",
              "groups:read",
              "pins:write",
            ],
          },
        },
        "settings": {
          "event_subscriptions": {
            "bot_events": [
              "app_mention",
              "message.im",
              "app_home_opened",
              "app_uninstalled",
              "tokens_revoked",
            ],
          },
          "interactivity": {
            "is_enabled": true,
          },
          "org_deploy_enabled": false,
          "socket_mode_enabled": true,
          "token_rotation_enabled": false,
        },
      }
    `)
  })

  it.each(['https://b.example', 'https://b.example/', 'https://B.example//'])(
    'names the address %s',
    (address) => {
      const { features, oauth_config, settings } = createManifest(commands, { command: '/batten', address })
      expect(features.slash_commands).toMatchObject([{ url: 'https://b.example/slack/events' }])
      expect(oauth_config.redirect_urls).toEqual(['https://b.example/slack/oauth_redirect'])
      expect(settings).toMatchObject({
        socket_mode_enabled: false,
        event_subscriptions: { request_url: 'https://b.example/slack/events' },
        interactivity: { is_enabled: true, request_url: 'https://b.example/slack/events' },
      })
    },
  )

  it('may be under a path of its own', () => {
    const { oauth_config } = createManifest(commands, {
      command: '/batten',
      address: 'https://b.example/bot/',
    })
    expect(oauth_config.redirect_urls).toEqual(['https://b.example/bot/slack/oauth_redirect'])
  })

  it.each(['b.example', 'http://b.example', 'https://b.example/?a=b', ''])(
    'is not made for %j',
    (address) => {
      expect(() => createManifest(commands, { command: '/batten', address })).toThrow(
        `"${address}" is no address that Slack can post to; write where the bot is reached from outside, such as https://bot.example.org`,
      )
    },
  )

  it('of every command is within the limits of Slack (the manifest types of @slack/web-api)', () => {
    const manifest = createManifest(describeCommands(catalogue), { command: '/batten' })
    const { name, description, long_description } = manifest.display_information
    expect(name.length).toBeLessThanOrEqual(35)
    expect(description.length).toBeLessThanOrEqual(140)
    expect(long_description.length).toBeLessThanOrEqual(4000)
    const [command] = manifest.features.slash_commands as readonly Record<string, string>[]
    expect(command?.command?.length).toBeLessThanOrEqual(32)
    expect(command?.usage_hint?.length).toBeLessThanOrEqual(1000)
    for (const each of catalogue.keys()) expect(command?.usage_hint).toContain(each)
  })
})
