import { z } from 'zod'
import { LOG_LEVELS, type LogLevel } from '../bot/settings.ts'
import { ConfigError } from './configError.ts'
import { expected, explain } from './explain.ts'

/** What the environment says in place of config/bot.yaml; undefined where it says nothing. */
export interface Environment {
  /** BATTENBOT_CONFIG: the config folder. */
  readonly configFolder?: string | undefined
  /** BATTENBOT_DATA: the folder for the store. */
  readonly dataFolder?: string | undefined
  /** BATTENBOT_LOG: the log level. */
  readonly logLevel?: LogLevel | undefined
}

const PREFIX = 'BATTENBOT_'

const folder = z.string().trim().min(1, { error: 'the name of a folder' }).optional()

const variables = z.strictObject({
  BATTENBOT_CONFIG: folder,
  BATTENBOT_DATA: folder,
  BATTENBOT_LOG: z.enum(LOG_LEVELS).optional(),
})

/** Reads the BATTENBOT_ variables, and no others. Throws a ConfigError for a value or a name that nobody reads. */
export function readEnvironment(env: Readonly<Record<string, string | undefined>>): Environment {
  const ours = Object.fromEntries(
    Object.entries(env).filter(([name, value]) => name.startsWith(PREFIX) && value !== undefined),
  )
  const outcome = variables.safeParse(ours, { error: expected })
  if (outcome.success)
    return {
      configFolder: outcome.data.BATTENBOT_CONFIG,
      dataFolder: outcome.data.BATTENBOT_DATA,
      logLevel: outcome.data.BATTENBOT_LOG,
    }
  throw new ConfigError(
    explain(outcome.error.issues, { file: 'environment', value: ours, lineOf: () => undefined }, variables),
  )
}
