import { z } from 'zod'
import { LOG_LEVELS, type LogLevel } from '../bot/settings.ts'
import { ConfigError } from './configError.ts'
import { expected, explain } from './explain.ts'

/** What the environment says in place of config/bot.yaml, and every secret; undefined where it says nothing. */
export interface Environment {
  /** BATTENBOT_CONFIG: the config folder. */
  readonly configFolder?: string | undefined
  /** BATTENBOT_DATA: the folder for the store. */
  readonly dataFolder?: string | undefined
  /** BATTENBOT_DATABASE: the address of a Postgres database, which then is the store. */
  readonly database?: string | undefined
  /** BATTENBOT_LOG: the log level. */
  readonly logLevel?: LogLevel | undefined
  /** BATTENBOT_PORT: the port of the room in the browser. */
  readonly port?: number | undefined
  /** BATTENBOT_HEALTH_PORT: the port of the health endpoint, which is served only when this is set. */
  readonly healthPort?: number | undefined
  readonly discord?: DiscordSecrets | undefined
  readonly slack?: SlackSecrets | undefined
}

export interface DiscordSecrets {
  /** BATTENBOT_DISCORD_TOKEN: the bot's token. */
  readonly token: string
}

/** How Slack is reached: over a socket that the bot opens, or by HTTP to an address of the bot. */
export type SlackSecrets = SlackSocketSecrets | SlackHttpSecrets

export interface SlackSocketSecrets {
  readonly mode: 'socket'
  /** BATTENBOT_SLACK_TOKEN: the token of the bot in its one workspace, `xoxb-`. */
  readonly token: string
  /** BATTENBOT_SLACK_APP_TOKEN: the token for the socket, `xapp-`. */
  readonly appToken: string
}

export interface SlackHttpSecrets {
  readonly mode: 'http'
  /** BATTENBOT_SLACK_SIGNING_SECRET: proves that a request is from Slack. */
  readonly signingSecret: string
  /** BATTENBOT_SLACK_PORT. */
  readonly port: number
  /** BATTENBOT_SLACK_TOKEN, for one workspace. */
  readonly token?: string | undefined
  /** BATTENBOT_SLACK_CLIENT_ID, _CLIENT_SECRET, _STATE_SECRET and BATTENBOT_KEY, for many. */
  readonly installing?: SlackInstalling | undefined
}

export interface SlackInstalling {
  readonly clientId: string
  readonly clientSecret: string
  readonly stateSecret: string
  /** What the tokens of the workspaces are encrypted with. */
  readonly key: string
}

const PREFIX = 'BATTENBOT_'
const SLACK_PORT = 3000

const folder = z.string().trim().min(1, { error: 'the name of a folder' }).optional()
const port = z.coerce
  .number({ error: 'a port, 1 to 65535' })
  .int({ error: 'a port, 1 to 65535' })
  .min(1, { error: 'a port, 1 to 65535' })
  .max(65_535, { error: 'a port, 1 to 65535' })
  .optional()
/** Anything but nothing: a secret that is wrong must not be read out, so its shape is not looked at here. */
const secret = z.string().trim().min(1, { error: 'something' }).optional()

const variables = z.strictObject({
  BATTENBOT_CONFIG: folder,
  BATTENBOT_DATA: folder,
  BATTENBOT_LOG: z.enum(LOG_LEVELS).optional(),
  BATTENBOT_PORT: port,
  BATTENBOT_HEALTH_PORT: port,
  BATTENBOT_DATABASE: secret,
  BATTENBOT_KEY: secret,
  BATTENBOT_DISCORD_TOKEN: secret,
  BATTENBOT_SLACK_TOKEN: secret,
  BATTENBOT_SLACK_APP_TOKEN: secret,
  BATTENBOT_SLACK_SIGNING_SECRET: secret,
  BATTENBOT_SLACK_PORT: port,
  BATTENBOT_SLACK_CLIENT_ID: secret,
  BATTENBOT_SLACK_CLIENT_SECRET: secret,
  BATTENBOT_SLACK_STATE_SECRET: secret,
})
type Variables = z.output<typeof variables>

/**
 * Reads the BATTENBOT_ variables, and no others. Throws a ConfigError for a value or a name that nobody reads, and for
 * secrets that are of no use without others; no secret is in its message.
 */
export function readEnvironment(env: Readonly<Record<string, string | undefined>>): Environment {
  const ours = Object.fromEntries(
    Object.entries(env).filter(([name, value]) => name.startsWith(PREFIX) && value !== undefined),
  )
  const outcome = variables.safeParse(ours, { error: expected })
  if (!outcome.success)
    throw new ConfigError(
      explain(outcome.error.issues, { file: 'environment', value: ours, lineOf: () => undefined }, variables),
    )
  const read = outcome.data
  return {
    configFolder: read.BATTENBOT_CONFIG,
    dataFolder: read.BATTENBOT_DATA,
    database: read.BATTENBOT_DATABASE,
    logLevel: read.BATTENBOT_LOG,
    port: read.BATTENBOT_PORT,
    healthPort: read.BATTENBOT_HEALTH_PORT,
    discord: read.BATTENBOT_DISCORD_TOKEN === undefined ? undefined : { token: read.BATTENBOT_DISCORD_TOKEN },
    slack: slackOf(read),
  }
}

function slackOf(read: Variables): SlackSecrets | undefined {
  const token = read.BATTENBOT_SLACK_TOKEN
  const appToken = read.BATTENBOT_SLACK_APP_TOKEN
  const signingSecret = read.BATTENBOT_SLACK_SIGNING_SECRET
  const installing = installingOf(read)
  if (appToken !== undefined) {
    if (token === undefined) throw missing('BATTENBOT_SLACK_APP_TOKEN', ['BATTENBOT_SLACK_TOKEN'])
    return { mode: 'socket', token, appToken }
  }
  if (signingSecret !== undefined) {
    if (token === undefined && installing === undefined)
      throw missing('BATTENBOT_SLACK_SIGNING_SECRET', [
        'BATTENBOT_SLACK_TOKEN, or for many workspaces BATTENBOT_SLACK_CLIENT_ID and those that go with it',
      ])
    return { mode: 'http', signingSecret, port: read.BATTENBOT_SLACK_PORT ?? SLACK_PORT, token, installing }
  }
  if (token !== undefined)
    throw missing('BATTENBOT_SLACK_TOKEN', ['BATTENBOT_SLACK_APP_TOKEN or BATTENBOT_SLACK_SIGNING_SECRET'])
  if (installing !== undefined) throw missing('BATTENBOT_SLACK_CLIENT_ID', ['BATTENBOT_SLACK_SIGNING_SECRET'])
  return undefined
}

function installingOf(read: Variables): SlackInstalling | undefined {
  const clientId = read.BATTENBOT_SLACK_CLIENT_ID
  if (clientId === undefined) return undefined
  const clientSecret = read.BATTENBOT_SLACK_CLIENT_SECRET
  const stateSecret = read.BATTENBOT_SLACK_STATE_SECRET
  const key = read.BATTENBOT_KEY
  if (clientSecret !== undefined && stateSecret !== undefined && key !== undefined)
    return { clientId, clientSecret, stateSecret, key }
  const needed = ['BATTENBOT_SLACK_CLIENT_SECRET', 'BATTENBOT_SLACK_STATE_SECRET', 'BATTENBOT_KEY'] as const
  throw missing(
    'BATTENBOT_SLACK_CLIENT_ID',
    needed.filter((name) => read[name] === undefined),
  )
}

const missing = (given: string, needed: readonly string[]): ConfigError =>
  new ConfigError([
    {
      file: 'environment',
      sentence: `${given} is of no use alone: set ${needed.join(' and ')} as well, or leave it out`,
    },
  ])
