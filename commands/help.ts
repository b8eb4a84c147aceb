import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { first, type OptionRow, words } from '../src/bot/option.ts'
import { quoted, Refusal } from '../src/bot/refusal.ts'
import { didYouMean } from '../src/bot/suggest.ts'
import { type Description, typedForm, usageLine } from '../src/bot/usage.ts'

export default defineCommand({
  name: 'help',
  summary: 'The commands, or how one of them is used',
  examples: ['help', 'help strips'],
  options: z.strictObject({ command: first(words('the command to explain', 'strips')).optional() }),
  run: ({ command: typed }, { commands }) => {
    if (typed === undefined) return listAll(commands)
    const name = typed.replace(/^\//u, '').toLowerCase()
    const [word, verb] = name.split(/\s+/u)
    const command = commands.find((each) => each.name === name || each.name === word)
    if (command) return explain(aboutVerb(command, verb))
    const names = commands.map((each) => each.name)
    throw new Refusal(
      'unknown',
      `there is no command ${quoted(typed)}; "help" lists them all.${didYouMean(name, names)}`,
    )
  },
})

const listAll = (commands: readonly Description[]) => ({
  answer: `${commands.length} commands. Start with: sizing 17in x 13in height=15in`,
  notes: commands.map(({ name, summary }) => `${name}: ${summary}`),
  buttons: ['sizing', 'strips', 'project'].map((name) => ({
    label: `How to use ${name}`,
    line: `help ${name}`,
  })),
  figures: { commands: commands.map(({ name }) => name) },
})

/** `help project change` tells of that verb alone. */
function aboutVerb(command: Description, verb: string | undefined): Description {
  const [use] = command.uses.filter((each) => verb !== undefined && each.verb === verb)
  if (!use) return command
  const examples = command.examples.filter((line) => line.startsWith(`${command.name} ${verb}`))
  return {
    ...command,
    summary: use.summary,
    examples: examples.length > 0 ? examples : command.examples,
    uses: [use],
  }
}

function explain({ name, summary, examples, uses }: Description) {
  const options = new Map<string, OptionRow>()
  for (const option of uses.flatMap((use) => use.options)) options.set(option.name, option)
  return {
    answer: `${name}: ${summary}`,
    notes: [
      ...uses.map((use) => usageLine(name, use)),
      ...[...options.values()].map((option) => `${option.name}: ${option.description}; ${typedForm(option)}`),
      `for example: ${examples.join('; ')}`,
    ],
    figures: { command: name, options: [...options.keys()], examples: [...examples] },
  }
}
