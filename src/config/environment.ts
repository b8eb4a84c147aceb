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
  /** BATTENBOT_HOST: where the room in the browser and the health endpoint listen. */
  readonly host?: string | undefined
}

const PREFIX = 'BATTENBOT_'

const folder = z.string().trim().min(1, { error: 'the name of a folder' }).optional()
const port = z.coerce
  .number({ error: 'a port, 1 to 65535' })
  .int({ error: 'a port, 1 to 65535' })
  .min(1, { error: 'a port, 1 to 65535' })
  .max(65_535, { error: 'a port, 1 to 65535' })
  .optional()
/** Anything but nothing: a secret that is wrong must not be read out, so its shape is not looked at here. */
const secret = z.string().trim().min(1, { error: 'something' }).optional()

/** What Discord and Slack need is checked by the platform, where it is used; here the names are known to be no slips. */
const DISCORD = ['TOKEN', 'SERVER', 'SHARDS'] as const

const SLACK = [
  'COMMAND',
  'APP_TOKEN',
  'BOT_TOKEN',
  'SIGNING_SECRET',
  'HOST',
  'PORT',
  'CLIENT_ID',
  'CLIENT_SECRET',
  'STATE_SECRET',
  'TOKEN_KEY',
  'ADDRESS',
] as const

const variables = z.strictObject({
  BATTENBOT_CONFIG: folder,
  BATTENBOT_DATA: folder,
  BATTENBOT_LOG: z.enum(LOG_LEVELS).optional(),
  BATTENBOT_PORT: port,
  BATTENBOT_HEALTH_PORT: port,
  BATTENBOT_HOST: z.string().trim().min(1, { error: 'an address, such as 127.0.0.1' }).optional(),
  BATTENBOT_DATABASE: secret,
  ...Object.fromEntries(DISCORD.map((name) => [`${PREFIX}DISCORD_${name}`, secret])),
  ...Object.fromEntries(SLACK.map((name) => [`${PREFIX}SLACK_${name}`, secret])),
})

/**
 * Reads the BATTENBOT_ variables, and no others. Throws a ConfigError for a value or a name that nobody reads; no secret is
 * in its message.
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
    host: read.BATTENBOT_HOST,
    port: read.BATTENBOT_PORT,
    healthPort: read.BATTENBOT_HEALTH_PORT,
  }
}
