import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { cornerScrew } from '../src/bot/cornerScrew.ts'
import { layOut, searchTerms } from '../src/bot/layoutJob.ts'
import { choice, first } from '../src/bot/option.ts'
import { boxPicture, cornerPicture, facePicture } from '../src/bot/pictures.ts'
import { bracePicture, groovesPicture, ripsPicture } from '../src/bot/picturesOfCuts.ts'
import { type FlatName, flatPictures } from '../src/bot/picturesOfFlats.ts'
import { layoutPictures } from '../src/bot/picturesOfLayouts.ts'
import { boardsOfPlan } from '../src/bot/planBoards.ts'
import { panelGrooves } from '../src/bot/plannedGrooves.ts'
import { boardOfPlan } from '../src/bot/plannedStrips.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Picture, Reply } from '../src/bot/reply.ts'
import type { Show } from '../src/bot/show.ts'
import { ripSettings } from '../src/core/panelling/rips.ts'
import type { Plan } from '../src/core/plan.ts'

const DRAWINGS = [
  'box',
  'end',
  'side',
  'front',
  'lid',
  'bottom',
  'corner',
  'brace',
  'strips',
  'grooves',
  'layout',
] as const
type Drawing = (typeof DRAWINGS)[number]

export default defineCommand({
  name: 'draw',
  summary:
    "A picture of this channel's plan: box, panels, lid, bottom, corner, brace, strips, grooves or layout",
  examples: ['draw box', 'draw end', 'draw corner', 'draw layout'],
  options: z.strictObject({ what: first(choice('what to draw', DRAWINGS)).optional() }),
  run: async ({ what = 'box' }, context) => {
    if (what === 'layout') return layoutReply(context)
    const { project } = context
    if (!project)
      throw new Refusal(
        'invalid',
        'this channel has no project to draw yet; begin one with: project start 17in x 13in height=15in',
      )
    const { plan } = planned(project.choices, context)
    return reply(what, await DRAW[what](plan, context))
  },
})

/** What a picture shows is told as well, for those who do not see it: the first sentence first, the rest as notes. */
function reply(what: Drawing, pictures: readonly Picture[]): Reply {
  const [picture] = pictures
  if (!picture) throw new RangeError('there is always a picture')
  const [shown = '', ...told] = picture.alt.split(/(?<=\.) (?=[\p{Lu}\d])/u)
  const others = DRAWINGS.filter((each) => each !== what)
  return {
    answer: shown.replace(/\.$/u, ''),
    pictures,
    notes: [...told, `also: draw ${others.slice(0, -1).join(', ')} or ${others.at(-1)}`],
    figures: { pictures: pictures.map(({ name }) => name) },
  }
}

async function layoutReply(context: Context): Promise<Reply> {
  const job = await layOut(context, context.settings.search.seconds, searchTerms(context))
  return reply('layout', layoutPictures(job))
}

/** What to add to a plan that has none. */
const ADD = { lid: 'lid=inset', bottom: 'bottom=cleats' } as const

function flatOf(plan: Plan, name: FlatName, show: Show): readonly Picture[] {
  const pictures = flatPictures(plan, show).filter((picture) => picture.name === name)
  if (pictures.length > 0) return pictures
  throw new Refusal('invalid', `this plan has no ${name}; add one with: project change ${ADD[name]}`)
}

const DRAW: Readonly<
  Record<
    Exclude<Drawing, 'layout'>,
    (plan: Plan, context: Context) => readonly Picture[] | Promise<readonly Picture[]>
  >
> = {
  box: (plan, { show, settled }) => [boxPicture(plan, show, settled.kerf)],
  end: (plan, { show, settled }) => [facePicture(plan, 'end', show, settled.kerf)],
  side: (plan, { show, settled }) => [facePicture(plan, 'side', show, settled.kerf)],
  front: (plan, { show, settled }) => [facePicture(plan, 'front', show, settled.kerf)],
  corner: (plan, context) => [cornerPicture(plan, context.show, cornerScrew(plan, context))],
  lid: (plan, { show }) => flatOf(plan, 'lid', show),
  bottom: (plan, { show }) => flatOf(plan, 'bottom', show),
  brace: (plan, { show }) => {
    const pictures = plan.faces.flatMap((face) =>
      face?.brace
        ? [bracePicture({ name: face.name, ...face.opening }, plan.spec.width, face.brace, show)]
        : [],
    )
    if (pictures.length === 0)
      throw new Refusal('invalid', 'this plan has no braces; add some with: project change braces=ends')
    return pictures.slice(0, 2)
  },
  strips: async (plan, context) => {
    const [rip] = (await boardsOfPlan(plan, context)).rips
    const board = rip ? { ...rip.board, name: rip.label } : boardOfPlan(plan, context).board
    const { settled, settings, show } = context
    const { strip } = plan.spec
    const asked = { board: board.width, strip, kerf: settled.kerf, safe: settings.safeRip }
    const pictures = ripsPicture(board, { strip, kerf: settled.kerf, rips: ripSettings(asked) }, show)
    if (pictures.length > 0) return pictures
    throw new Refusal(
      'invalid',
      'no strip comes off this board with a safe width at the fence; take a wider board',
    )
  },
  grooves: (plan, { show, settled }) => {
    const pictures = panelGrooves(plan, { kerf: settled.kerf }).flatMap(({ face: name, laid }) => {
      const length = plan.faces.find((each) => each?.name === name)?.panel
      if (laid.status !== 'laid' || length === undefined) return []
      return [groovesPicture({ name, length, thickness: plan.spec.sheet }, settled.kerf, laid, show)]
    })
    if (pictures.length > 0) return pictures.slice(0, 2)
    throw new Refusal('invalid', 'this plan has no grooves; add some with: project change grooves=5')
  },
}
