import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { groupOf } from '../src/bot/group/group.ts'
import { kitNumber } from '../src/bot/group/kitNumber.ts'
import { kitReply, progressReply } from '../src/bot/group/progress.ts'
import { first, words } from '../src/bot/option.ts'
import { Refusal } from '../src/bot/refusal.ts'

export default defineCommand({
  name: 'where',
  summary: 'Where are we: what of the group is done, at which station, and what comes next',
  examples: ['where are we', 'where is K01'],
  options: z.strictObject({ what: first(words('are we, or is a kit', 'are we')).optional() }),
  run: async ({ what = '' }, context) => {
    const group = await groupOf(context).read()
    if (!group)
      throw new Refusal('invalid', 'there is no group in this channel; for a build of your own write: steps')
    const [, kit] = /\b(?:k|kit\s*)0*(\d{1,5})\b/iu.exec(what) ?? []
    return kit === undefined ? progressReply(group, context, '') : kitReply(group, kitNumber(kit), context)
  },
})
