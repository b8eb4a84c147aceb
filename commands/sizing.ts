import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { overlay } from '../src/bot/planChoices.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { choicesFrom, planOptions } from '../src/bot/planOptions.ts'
import { partTables, planAnswer, planFacts, planFigures, roundingNotes } from '../src/bot/planReply.ts'

export default defineCommand({
  name: 'sizing',
  summary: 'Every part of a box or surround, from the size of what it goes round',
  examples: [
    'sizing 17in x 13in height=15in',
    'sizing 17in round height=15in sheet=15/32in braces=all',
    'sizing 430mm x 330mm height=380mm sheet=12mm strip=12mm board=38x89 clearance=10mm',
  ],
  options: z.strictObject(planOptions),
  run: (input, context) => {
    const { project, show } = context
    const typed = choicesFrom(input)
    const choices = overlay(project?.choices ?? {}, typed)
    const { plan, notes } = planned(choices, context)
    const inside = `${show.mark(plan.inside.length)} x ${show.length(plan.inside.width)}`
    const outside = `${show.mark(plan.outside.length, 'cover')} x ${show.length(plan.outside.width, 'cover')}`
    return {
      answer: planAnswer(plan, show),
      cautions: context.cautions(planFacts(plan, choices)),
      tables: partTables(plan, show),
      notes: [
        `inside ${inside}, outside ${outside}; packs flat ${show.length(plan.flatStack, 'cover')} thick`,
        ...(plan.lip > 0
          ? [`corner stiles reach ${show.length(plan.lip, 'mark', true)} over the side panels`]
          : []),
        ...(project ? ["what you left out comes from this channel's project"] : []),
        ...roundingNotes(plan, show),
        ...notes,
      ],
      buttons: project
        ? []
        : [
            {
              label: 'Keep for this channel',
              line: `project start ${saidAgain(context.request.invocation)}`,
            },
          ],
      figures: planFigures(plan),
    }
  },
})

/** The same options again, so that one tap keeps the plan. */
const saidAgain = (invocation: { line: string } | { options: Readonly<Record<string, unknown>> }): string =>
  'line' in invocation
    ? invocation.line.replace(/^\/?\s*\S+\s*/u, '')
    : Object.entries(invocation.options)
        .map(([name, value]) => `${name}=${value}`)
        .join(' ')
