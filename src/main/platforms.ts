import type { Platform } from '../bot/request.ts'
import type { Environment } from '../config.ts'
import { createVault } from '../store/vault.ts'
import type { Bot } from './openBot.ts'
import type { Places } from './places.ts'

/**
 * The platforms whose secrets the environment has; where it has none, the room in the browser. Their code is read only
 * when they are started. Throws an Error of one sentence for secrets that cannot be right.
 */
export async function platformsOf(
  bot: Bot,
  environment: Environment,
  variables: Readonly<Record<string, string | undefined>>,
  places: Places & { readonly names: readonly string[] },
): Promise<readonly Platform[]> {
  const platforms = [await discord(bot, variables), await slack(bot, variables)].filter(
    (platform) => platform !== undefined,
  )
  return platforms.length > 0 ? platforms : [await webRoom(bot, environment, places)]
}

async function discord(
  bot: Bot,
  variables: Readonly<Record<string, string | undefined>>,
): Promise<Platform | undefined> {
  if (!Object.keys(variables).some((name) => name.startsWith('BATTENBOT_DISCORD_'))) return undefined
  const [{ createDiscord }, { readDiscordOptions }] = await Promise.all([
    import('../platforms/discord/client.ts'),
    import('../platforms/discord/options.ts'),
  ])
  const options = readDiscordOptions(variables)
  return options && createDiscord(bot.partsFor('discord'), options)
}

async function slack(
  bot: Bot,
  variables: Readonly<Record<string, string | undefined>>,
): Promise<Platform | undefined> {
  if (!Object.keys(variables).some((name) => name.startsWith('BATTENBOT_SLACK_'))) return undefined
  const [{ createSlack }, { readSlackOptions }] = await Promise.all([
    import('../platforms/slack/client.ts'),
    import('../platforms/slack/options.ts'),
  ])
  const parts = bot.partsFor('slack')
  const options = readSlackOptions(variables, createVault(bot.store, 'slack', parts.now))
  return options && createSlack(parts, options)
}

async function webRoom(
  bot: Bot,
  environment: Environment,
  { page, names }: Places & { readonly names: readonly string[] },
): Promise<Platform> {
  const [{ createWebRoom }, { openTranscript }] = await Promise.all([
    import('../platforms/web/client.ts'),
    import('../store/transcript.ts'),
  ])
  const { host, port } = bot.config.bot.room
  return createWebRoom(bot.partsFor('room'), {
    host: environment.host ?? host,
    port: environment.port ?? port,
    // A port that somebody chose is that port or none.
    tries: environment.port === undefined ? 20 : 1,
    names,
    page,
    transcript: await openTranscript(`${bot.dataFolder}/room`),
  })
}
