import { REST } from 'discord.js'
import { Routes } from 'discord-api-types/v10'
import type { Description } from '../../bot/usage.ts'
import { type CommandJson, commandsJson, isRegistered } from './registration.ts'
import { saysWhy } from './trouble.ts'

export interface RegisterOptions {
  readonly token: string
  /** Only in this server, where changes show at once; everywhere when undefined. */
  readonly server?: string | undefined
  /** Another address for Discord's interface, for tests. */
  readonly api?: string | undefined
}

/** What became of a registration: how many commands Discord holds now, and whether it had to be told. */
export interface Registered {
  readonly status: 'unchanged' | 'written'
  readonly commands: number
}

/**
 * Tells Discord of the commands, when it does not hold these very commands already. Throws an Error of one sentence where
 * Discord refuses.
 */
export async function registerDiscord(
  commands: readonly Description[],
  { token, server, api }: RegisterOptions,
): Promise<Registered> {
  const rest = new REST({ version: '10', ...(api !== undefined && { api }) }).setToken(token)
  const wanted = server === undefined ? commandsJson(commands) : commandsJson(commands).map(inOneServer)
  try {
    const { id } = (await rest.get(Routes.currentApplication())) as { id: string }
    const route =
      server === undefined ? Routes.applicationCommands(id) : Routes.applicationGuildCommands(id, server)
    const held = (await rest.get(route)) as readonly unknown[]
    if (isRegistered(wanted, held)) return { status: 'unchanged', commands: held.length }
    const now = (await rest.put(route, { body: wanted })) as readonly unknown[]
    return { status: 'written', commands: now.length }
  } catch (error) {
    throw new Error(`Discord did not take the commands: ${saysWhy(error)}`)
  }
}

/** A command of one server is there and nowhere else, so it names no places. */
const inOneServer = ({ integration_types: _, contexts: __, ...command }: CommandJson): CommandJson => command
