import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { choice, first, words } from '../src/bot/option.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Reply } from '../src/bot/reply.ts'
import { type Caution, type CautionRule, rulesAbout, TASKS } from '../src/core/checks/caution.ts'

export default defineCommand({
  name: 'cautions',
  summary: 'What to mind at a task, before you start it',
  examples: ['cautions rip', 'cautions finish', 'cautions named=manual, nail-gun', 'cautions'],
  options: z.strictObject({
    task: first(choice('the task at hand', TASKS)).optional(),
    named: words('some of them by name, as an answer gives them', 'manual, nail-gun').optional(),
  }),
  run: ({ task, named }, { reference }) => {
    if (named !== undefined) return namedCautions(named, reference.cautions)
    if (!task) {
      return {
        answer: `Cautions for which task? ${TASKS.join(', ')}`,
        buttons: TASKS.slice(0, 5).map((name) => ({ label: name, line: `cautions ${name}` })),
        figures: { tasks: [...TASKS] },
      }
    }
    const rules = rulesAbout(task, reference.cautions)
    return {
      answer: `Before you ${DOING[task]}:`,
      cautions: rules.map(({ id, text, more }) => ({ id, task, text: more ? `${text} ${more}` : text })),
      notes: ["follow your tool's manual and local rules; where they differ from this, they are right"],
      figures: { task, cautions: rules.map(({ id }) => id) },
    }
  },
})

/** The cautions with these names, in full, gravest first. Throws a Refusal for a name that none has. */
function namedCautions(named: string, rules: readonly CautionRule[]): Reply {
  const names = named.split(/[\s,;]+/u).filter((name) => name !== '')
  const unknown = names.find((name) => !rules.some(({ id }) => id === name))
  if (unknown !== undefined || names.length === 0)
    throw new Refusal(
      'invalid',
      `no caution is called "${unknown ?? ''}"; ask by the task instead, such as: cautions rip`,
    )
  const chosen = rules.filter(({ id }) => names.includes(id))
  return {
    answer: chosen.length === 1 ? 'To mind as well:' : `${chosen.length} more to mind:`,
    cautions: chosen.map(inFull),
    figures: { cautions: chosen.map(({ id }) => id) },
  }
}

const inFull = ({ id, text, more, tasks }: CautionRule): Caution => ({
  id,
  task: tasks[0] ?? 'use',
  text: more ? `${text} ${more}` : text,
})

const DOING: Readonly<Record<(typeof TASKS)[number], string>> = {
  rip: 'rip',
  crosscut: 'crosscut',
  groove: 'cut grooves',
  steep: 'cut a steep angle',
  brad: 'drive brads',
  glue: 'glue',
  finish: 'finish',
  lift: 'lift sheets',
  scrap: 'cut scrap',
  treated: 'cut treated wood',
  use: 'put it to use',
}
