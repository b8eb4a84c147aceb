import type { Description } from '../../bot/usage.ts'
import { clipped } from './message.ts'
import { EVENTS, OPTIONAL_SCOPES, SCOPES } from './scopes.ts'

/** How the app is to be set up in Slack; pasted into api.slack.com/apps as JSON. */
export interface Manifest {
  readonly display_information: {
    readonly name: string
    readonly description: string
    readonly long_description: string
  }
  readonly features: Readonly<Record<string, unknown>>
  readonly oauth_config: Readonly<Record<string, unknown>>
  readonly settings: Readonly<Record<string, unknown>>
}

export interface ManifestOptions {
  /** With its slash. */
  readonly command: string
  /** Where the bot is reached from outside, such as `https://bot.example.org`; without it, Socket Mode. */
  readonly address?: string | undefined
}

/** Slack's limits (the manifest types of @slack/web-api). */
const MOST = { description: 140, commandDescription: 2000, usageHint: 1000, longDescription: 4000 } as const

/**
 * The app manifest for these commands: one slash command, whose line names them. Throws an Error of one sentence for an address
 * that Slack cannot reach.
 */
export function createManifest(commands: readonly Description[], options: ManifestOptions): Manifest {
  const { command } = options
  const address = options.address === undefined ? undefined : readAddress(options.address)
  const requests = address === undefined ? undefined : `${address}/slack/events`
  return {
    display_information: {
      name: 'battenbot',
      description: clipped(
        'Build questions answered: panelled boxes, strips, braces, grooves, cuts, finish.',
        MOST.description,
      ),
      long_description: longDescription(commands),
    },
    features: {
      app_home: { home_tab_enabled: true, messages_tab_enabled: true, messages_tab_read_only_enabled: false },
      bot_user: { display_name: 'battenbot', always_online: true },
      slash_commands: [
        {
          command,
          description: clipped('Ask a build question', MOST.commandDescription),
          usage_hint: clipped(usageHint(commands), MOST.usageHint),
          // So that a person who is named with @ arrives as an id that never changes.
          should_escape: true,
          ...(requests !== undefined && { url: requests }),
        },
      ],
    },
    oauth_config: {
      ...(address !== undefined && { redirect_urls: [`${address}/slack/oauth_redirect`] }),
      scopes: { bot: [...SCOPES, ...OPTIONAL_SCOPES], bot_optional: [...OPTIONAL_SCOPES] },
    },
    settings: {
      event_subscriptions: {
        bot_events: [...EVENTS],
        ...(requests !== undefined && { request_url: requests }),
      },
      interactivity: { is_enabled: true, ...(requests !== undefined && { request_url: requests }) },
      org_deploy_enabled: false,
      socket_mode_enabled: address === undefined,
      token_rotation_enabled: false,
    },
  }
}

/**
 * The address where the bot is reached from outside, without the slashes at its end; what comes in comes encrypted. Throws an
 * Error of one sentence for one that Slack cannot post to.
 */
export function readAddress(typed: string): string {
  const url = URL.canParse(typed) ? new URL(typed) : undefined
  if (url?.protocol !== 'https:' || url.search !== '' || url.hash !== '')
    throw new Error(
      `"${typed}" is no address that Slack can post to; write where the bot is reached from outside, such as https://bot.example.org`,
    )
  return `${url.origin}${url.pathname}`.replace(/\/+$/u, '')
}

const usageHint = (commands: readonly Description[]): string =>
  `[${commands.map(({ name }) => name).join(' | ')}] ...`

function longDescription(commands: readonly Description[]): string {
  const lines = commands.map(({ name, summary }) => `${name}: ${summary}`)
  const text = [
    'What can be asked, by hobby builders and clubs who make panelled boxes of sheets and strips:',
    ...lines,
  ]
  return clipped(text.join('\n'), MOST.longDescription)
}
