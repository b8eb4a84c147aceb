import type { Vault } from './installations.ts'
import { readAddress } from './manifest.ts'
import type { Pause } from './patientFetch.ts'
import { readKey } from './seal.ts'

/** Slack connects to nothing: the bot opens a socket to Slack. For one workspace. */
export interface SocketOptions {
  readonly mode: 'socket'
  /** `xapp-...`, with the scope connections:write. */
  readonly appToken: string
  /** `xoxb-...`. */
  readonly botToken: string
}

/** Slack posts to an address of the bot's own. */
export interface HttpOptions {
  readonly mode: 'http'
  readonly signingSecret: string
  /** 0 for any that is free. */
  readonly port: number
  readonly host?: string | undefined
  /** One workspace by its token, or any that installs the app. */
  readonly workspaces: { readonly botToken: string } | OAuthOptions
}

/** Any workspace may install the app at `/slack/install`. */
export interface OAuthOptions {
  readonly clientId: string
  readonly clientSecret: string
  readonly stateSecret: string
  readonly vault: Vault
  /** 32 bytes that the tokens in the vault are encrypted with. */
  readonly key: Buffer
  /** Where the bot is reached from outside, such as `https://bot.example.org`. */
  readonly address?: string | undefined
}

export interface SlackOptions {
  /** With its slash. */
  readonly command: string
  readonly connection: SocketOptions | HttpOptions
  /** Slack's, unless a test says otherwise. */
  readonly apiUrl?: string | undefined
  /** Called with the port that Slack's posts are heard at. */
  readonly listening?: ((port: number) => void) | undefined
  readonly pause?: Pause | undefined
  /** Milliseconds between two looks whether the token still counts; five minutes when undefined. */
  readonly lookEvery?: number | undefined
}

type Environment = Readonly<Record<string, string | undefined>>

/**
 * What the environment says of Slack; undefined when it says nothing. Throws an Error that names the variable that is
 * missing or wrong.
 */
export function readSlackOptions(environment: Environment, vault: Vault): SlackOptions | undefined {
  const names = Object.keys(environment).filter(
    (name) => name.startsWith('BATTENBOT_SLACK_') && environment[name],
  )
  if (names.length === 0) return undefined
  return { command: commandIn(environment), connection: readConnection(environment, vault) }
}

/** The slash command, `/batten` unless the environment says another. Throws an Error that says what one looks like. */
export function commandIn(environment: Environment): string {
  const command = environment.BATTENBOT_SLACK_COMMAND?.trim() ?? '/batten'
  if (/^\/[a-z0-9_-]{1,31}$/u.test(command)) return command
  throw new Error(
    `BATTENBOT_SLACK_COMMAND is "${command}"; write a slash and up to 31 lower-case letters, such as /batten`,
  )
}

function readConnection(environment: Environment, vault: Vault): SocketOptions | HttpOptions {
  if (environment.BATTENBOT_SLACK_APP_TOKEN)
    return {
      mode: 'socket',
      appToken: starting(environment, 'BATTENBOT_SLACK_APP_TOKEN', 'xapp-'),
      botToken: starting(environment, 'BATTENBOT_SLACK_BOT_TOKEN', 'xoxb-'),
    }
  if (!environment.BATTENBOT_SLACK_SIGNING_SECRET)
    throw new Error(
      'set BATTENBOT_SLACK_APP_TOKEN and BATTENBOT_SLACK_BOT_TOKEN for Socket Mode, or BATTENBOT_SLACK_SIGNING_SECRET for an address of your own',
    )
  return {
    mode: 'http',
    signingSecret: needed(environment, 'BATTENBOT_SLACK_SIGNING_SECRET'),
    port: readPort(environment.BATTENBOT_SLACK_PORT ?? '3000'),
    host: environment.BATTENBOT_SLACK_HOST,
    workspaces: environment.BATTENBOT_SLACK_BOT_TOKEN
      ? { botToken: starting(environment, 'BATTENBOT_SLACK_BOT_TOKEN', 'xoxb-') }
      : readOAuth(environment, vault),
  }
}

const readOAuth = (environment: Environment, vault: Vault): OAuthOptions => ({
  clientId: needed(environment, 'BATTENBOT_SLACK_CLIENT_ID'),
  clientSecret: needed(environment, 'BATTENBOT_SLACK_CLIENT_SECRET'),
  stateSecret: needed(environment, 'BATTENBOT_SLACK_STATE_SECRET'),
  vault,
  key: named('BATTENBOT_SLACK_TOKEN_KEY', () => readKey(needed(environment, 'BATTENBOT_SLACK_TOKEN_KEY'))),
  address: addressIn(environment),
})

function addressIn({ BATTENBOT_SLACK_ADDRESS: typed }: Environment): string | undefined {
  return typed === undefined ? undefined : named('BATTENBOT_SLACK_ADDRESS', () => readAddress(typed.trim()))
}

function needed(environment: Environment, name: string): string {
  const value = environment[name]?.trim()
  if (!value) throw new Error(`${name} is not set`)
  return value
}

function starting(environment: Environment, name: string, start: string): string {
  const value = needed(environment, name)
  if (!value.startsWith(start))
    throw new Error(`${name} does not begin with ${start}; it may be another token`)
  return value
}

function readPort(text: string): number {
  const port = Number(text)
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new Error(`BATTENBOT_SLACK_PORT is "${text}"; write a whole number from 1 to 65535`)
  return port
}

/** Says which variable an error is about. */
function named<Value>(name: string, read: () => Value): Value {
  try {
    return read()
  } catch (error) {
    const { message } = error as Error
    throw new Error(message.startsWith(name) ? message : `${name}: ${message}`, { cause: error })
  }
}
