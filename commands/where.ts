import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { groupOf } from '../src/bot/group/group.ts'
import { kitNumber } from '../src/bot/group/kitNumber.ts'
import { kitReply, progressReply } from '../src/bot/group/progress.ts'
import { first, words } from '../src/bot/option.ts'
import { stepsNow } from '../src/bot/stepsNow.ts'

/** `where was I` asks of one's own steps, whether the channel has a group or not. */
const OF_STEPS = /\b(?:i|me|my)\b/iu

export default defineCommand({
  name: 'where',
  summary: 'Where was I, or where are we: what is done last, and what comes next',
  examples: ['where was I', 'where are we', 'where is K01'],
  options: z.strictObject({ what: first(words('was I, are we, or is a kit', 'are we')).optional() }),
  run: async ({ what = '' }, context) => {
    const group = await groupOf(context).read()
    if (!group || OF_STEPS.test(what)) return stepsNow(context)
    const [, kit] = /\b(?:k|kit\s*)0*(\d{1,5})\b/iu.exec(what) ?? []
    return kit === undefined ? progressReply(group, context, '') : kitReply(group, kitNumber(kit), context)
  },
})
