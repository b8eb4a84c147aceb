import type { PlatformParts } from '../../bot/platform.ts'
import type { Request } from '../../bot/request.ts'
import { type Completion, completionsOf, typedValue } from '../completions.ts'
import { limits } from './limits.ts'

/** A line to begin with. */
export interface Welcome {
  readonly label: string
  readonly line: string
}

/** Where somebody new may begin, by command. */
const BEGIN: readonly (readonly [command: string, label: string])[] = [
  ['sizing', 'Size a box to go round something'],
  ['strips', 'Rip strips from a board'],
  ['project', 'Begin the plan of this channel'],
  ['help', 'See every command'],
]

/** A few lines to begin with, as the commands themselves give them. */
export const welcome = (commands: PlatformParts['commands']): readonly Welcome[] =>
  BEGIN.flatMap(([name, label]) =>
    commands
      .filter((command) => command.name === name)
      .map(({ examples }) => ({ label, line: examples[0] ?? name })),
  )

/**
 * What may stand next in a line that is typed in the page: commands, verbs, options and choices, and for other values what
 * the bot knows of (materials, products, labels).
 */
export async function complete(
  asked: Omit<Request, 'invocation'>,
  line: string,
  parts: Pick<PlatformParts, 'commands' | 'complete'>,
): Promise<readonly Completion[]> {
  const words = completionsOf(line, parts.commands)
  const value = typedValue(line, parts.commands)
  if (!value || value.option.choices) return words.slice(0, limits.completions)
  const { command, verb, option, typed, from } = value
  const known = await parts.complete(asked, {
    command,
    ...(verb !== undefined && { verb }),
    option: option.name,
    typed,
  })
  const values = known.filter((text) => text !== typed.trim()).map((text) => ({ from, text, says: '' }))
  return [...values, ...words].slice(0, limits.completions)
}
