import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { choice, first, yes } from '../src/bot/option.ts'

export default defineCommand({
  name: 'forget',
  summary: 'Delete what is kept of you: your units, and your name in every history',
  examples: ['forget me', 'forget me sure=yes'],
  options: z.strictObject({
    who: first(choice('whom', ['me'])).optional(),
    sure: yes('say yes to delete for good').optional(),
  }),
  run: async ({ sure }, context) => {
    if (!sure) {
      return {
        answer:
          'This deletes your units and takes you out of every history, group and list of ticks here, for good. Plans and lists stay. To go on: forget me sure=yes',
        buttons: [{ label: 'Forget me', line: 'forget me sure=yes' }],
        figures: { deleted: 0, unnamed: 0 },
      }
    }
    const { deleted, unnamed } = await context.forgetPerson()
    return {
      answer:
        deleted + unnamed === 0
          ? 'Nothing was kept of you'
          : 'Forgotten: nothing of what is kept names you any more',
      forgets: 'person',
      figures: { deleted, unnamed },
    }
  },
})
