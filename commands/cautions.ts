import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { choice, first } from '../src/bot/option.ts'
import { rulesAbout, TASKS } from '../src/core/checks/caution.ts'

export default defineCommand({
  name: 'cautions',
  summary: 'What to mind at a task, before you start it',
  examples: ['cautions rip', 'cautions finish', 'cautions'],
  options: z.strictObject({
    task: first(choice('the task at hand', TASKS)).optional(),
  }),
  run: ({ task }, { reference }) => {
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
