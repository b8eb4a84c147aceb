import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { fewCautions } from '../src/bot/fewCautions.ts'
import { boxPicture } from '../src/bot/pictures.ts'
import { overlay } from '../src/bot/planChoices.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { choicesFrom, planOptions } from '../src/bot/planOptions.ts'
import { refuseGrooves } from '../src/bot/plannedGrooves.ts'
import { partTables, planAnswer, planFacts, planFigures, sawNotes, sizeNotes } from '../src/bot/planReply.ts'

export default defineCommand({
  name: 'sizing',
  summary: 'Every part of a box or surround, from the size of what it goes round',
  examples: [
    'sizing 17in x 13in height=15in',
    'sizing 17in round height=15in sheet=15/32in braces=all',
    'sizing 29in hi x 46in wide x 18in deep grooves=5',
    'sizing 430mm x 330mm height=380mm sheet=12mm strip=12mm board=38x89 clearance=10mm',
  ],
  options: z.strictObject(planOptions),
  run: (input, context) => {
    const { project, show, settled } = context
    const typed = choicesFrom(input)
    const choices = overlay(project?.choices ?? {}, typed)
    const { plan, cut, warnings, assumptions } = planned(choices, context)
    refuseGrooves(plan, settled.kerf)
    const { cautions, buttons } = fewCautions(context.cautions(planFacts(plan, choices)))
    return {
      answer: planAnswer(plan, show),
      cautions,
      tables: partTables(plan, show, cut),
      pictures: [boxPicture(plan, show, settled.kerf)],
      notes: [
        ...warnings,
        ...sizeNotes(plan, show),
        ...sawNotes(plan, show, settled.kerf),
        ...(project ? ["what you left out comes from this channel's project"] : []),
        ...assumptions,
      ],
      buttons: [...keepButtons(project !== undefined, context.request.invocation), ...buttons],
      figures: planFigures(plan),
    }
  },
})

type Invocation = Parameters<typeof saidAgain>[0]

/** One tap keeps what was typed: as the channel's plan, or as a change of the one there is. */
function keepButtons(kept: boolean, invocation: Invocation) {
  const said = saidAgain(invocation)
  if (!kept) return [{ label: 'Keep for this channel', line: `project start ${said}` }]
  return said === '' ? [] : [{ label: 'Change the plan so', line: `project change ${said}` }]
}

/** The same options again, so that one tap keeps the plan. */
const saidAgain = (invocation: { line: string } | { options: Readonly<Record<string, unknown>> }): string =>
  'line' in invocation
    ? invocation.line.replace(/^\/?\s*\S+\s*/u, '')
    : Object.entries(invocation.options)
        .map(([name, value]) => `${name}=${value}`)
        .join(' ')
