type Part = Readonly<Record<string, unknown>>

const partsOf = (value: unknown): readonly Part[] => (Array.isArray(value) ? (value as Part[]) : [])

// Discord developer documentation, Application Commands (2026-08).
const NAME = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u
const SUBCOMMAND = 1
const GROUP = 2
const COMPLETED = [3, 4, 10]

/** What Discord would refuse of a list of commands; `isGlobal` for those of every server. */
export const checkCommands = (commands: readonly Part[], isGlobal = true): readonly string[] => [
  ...(commands.length > 100 ? [`${commands.length} commands, 100 allowed`] : []),
  ...twice(commands),
  ...commands.flatMap((command) =>
    checkCommand(command, isGlobal).map((fault) => `${command.name}: ${fault}`),
  ),
]

const checkCommand = (command: Part, isGlobal: boolean): readonly string[] => [
  ...(command.type === 1 ? [] : ['no slash command']),
  ...(!isGlobal && (command.contexts || command.integration_types) ? ['places in one server'] : []),
  ...checkName(command),
  ...checkOptions(partsOf(command.options)),
  ...(textOf(command) > 8000 ? [`${textOf(command)} characters in all, 8000 allowed`] : []),
]

const twice = (named: readonly Part[]): readonly string[] =>
  named
    .filter(({ name }, at) => named.findIndex((each) => each.name === name) < at)
    .map(({ name }) => `${name} twice`)

function checkName({ name, description }: Part): readonly string[] {
  const isName = typeof name === 'string' && NAME.test(name) && name === name.toLowerCase()
  const length = typeof description === 'string' ? description.length : 0
  return [
    ...(isName ? [] : [`${name} is no name`]),
    ...(length >= 1 && length <= 100
      ? []
      : [`${name} is described in ${length} characters, 1 to 100 allowed`]),
  ]
}

function checkOptions(options: readonly Part[]): readonly string[] {
  const firstOptional = options.findIndex(({ required }) => required !== true)
  const isMixed = options.some(isVerb) && !options.every(isVerb)
  return [
    ...(options.length > 25 ? [`${options.length} options, 25 allowed`] : []),
    ...twice(options),
    ...(isMixed ? ['verbs beside options'] : []),
    ...(firstOptional >= 0 && options.slice(firstOptional).some(({ required }) => required === true)
      ? ['required after optional']
      : []),
    ...options.flatMap(checkOption),
  ]
}

const isVerb = ({ type }: Part): boolean => type === SUBCOMMAND || type === GROUP

function checkOption(option: Part): readonly string[] {
  if (isVerb(option)) return [...checkName(option), ...checkOptions(partsOf(option.options))]
  const choices = partsOf(option.choices)
  return [
    ...checkName(option),
    ...(choices.length > 25 ? [`${option.name} has ${choices.length} choices, 25 allowed`] : []),
    ...choices.flatMap(({ name, value }) =>
      [name, value].every((each) => String(each).length >= 1 && String(each).length <= 100)
        ? []
        : [`a choice of ${option.name} is too long`],
    ),
    ...(option.autocomplete === true && (choices.length > 0 || !COMPLETED.includes(Number(option.type)))
      ? [`${option.name} cannot be completed`]
      : []),
    ...(Math.abs(Number(option.min_value ?? 0)) > 2 ** 53 || Math.abs(Number(option.max_value ?? 0)) > 2 ** 53
      ? [`${option.name} has bounds out of range`]
      : []),
  ]
}

/** Names, descriptions and values of a command with all that is in it. */
const textOf = (part: Part): number =>
  [part.name, part.description, part.value].reduce<number>(
    (sum, each) => sum + (typeof each === 'string' ? each.length : 0),
    0,
  ) + [...partsOf(part.options), ...partsOf(part.choices)].reduce((sum, each) => sum + textOf(each), 0)
