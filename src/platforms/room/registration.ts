import { actionOf, type Catalogue } from '../../bot/catalogue.ts'
import { optionTable } from '../../bot/option.ts'

/** What may be typed next after `line`, for the Tab key: commands, then verbs, options and choices. */
export function completions(line: string, catalogue: Catalogue): readonly string[] {
  const [name = '', ...words] = line.split(/\s+/u)
  if (words.length === 0) return startingWith(name, [...catalogue.keys()])
  const command = catalogue.get(name)
  const last = words.at(-1) ?? ''
  if (command?.verbs && words.length === 1) return startingWith(last, Object.keys(command.verbs))
  const action = command && (command.action ?? actionOf(command, words[0] ?? ''))
  const options = action ? optionTable(action.options) : []
  const typed = options.find((option) => last.startsWith(`${option.name}=`))
  if (!typed)
    return startingWith(
      last,
      options.map((option) => `${option.name}=`),
    )
  return startingWith(
    last,
    (typed.choices ?? []).map((choice) => `${typed.name}=${choice}`),
  )
}

const startingWith = (start: string, words: readonly string[]): readonly string[] =>
  words.filter((word) => word.startsWith(start))
