import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { layOut, searchTerms } from '../src/bot/layoutJob.ts'
import { length } from '../src/bot/option.ts'
import { cutOrderReply } from '../src/bot/sawnJob.ts'

export default defineCommand({
  name: 'cutorder',
  summary: 'The saw settings in order, each used once for all the parts that share it',
  examples: ['cutorder', 'cutorder safe=3in'],
  options: z.strictObject({
    safe: length('narrowest piece you leave between blade and fence', '2in').optional(),
  }),
  run: async ({ safe }, context) => {
    const terms = searchTerms(context)
    return cutOrderReply(await layOut(context, context.settings.search.seconds, terms), context, terms, safe)
  },
})
