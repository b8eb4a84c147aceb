import { z } from 'zod'
import { defineAction, defineVerbs } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import {
  differenceAnswer,
  differenceFigures,
  differenceNotes,
  differenceTables,
} from '../src/bot/differenceReply.ts'
import { yes } from '../src/bot/option.ts'
import { fewCautions } from '../src/bot/fewCautions.ts'
import { pair } from '../src/bot/pair.ts'
import { boxPicture, facePicture } from '../src/bot/pictures.ts'
import { overlay, type PlanChoices } from '../src/bot/planChoices.ts'
import { type Planned, planned } from '../src/bot/plannedSurround.ts'
import { choicesFrom, planOptions } from '../src/bot/planOptions.ts'
import { refuseGrooves } from '../src/bot/plannedGrooves.ts'
import { partTables, planAnswer, planFacts, planFigures, sawNotes, sizeNotes } from '../src/bot/planReply.ts'
import { type Project, projectSchema } from '../src/bot/project.ts'
import { revisionLines } from '../src/bot/revisionLines.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Reply } from '../src/bot/reply.ts'
import { diffPlans } from '../src/core/plan/difference.ts'

const nothing = z.strictObject({})
const UNDO = { label: 'Undo', line: 'project undo' }
const PARTS = { label: 'Parts', line: 'project parts' }

const kept = (context: Context) => context.ofChannel('project', projectSchema)

const current = ({ project }: Context): Project => {
  if (project) return project
  throw new Refusal(
    'invalid',
    'this channel has no project yet; begin one with: project start 17in x 13in height=15in',
  )
}

const start = defineAction({
  summary: 'Keep a plan for this channel',
  options: z.strictObject(planOptions),
  run: async (input, context) => {
    const choices = { ...choicesFrom(input), region: context.settled.region }
    const worked = buildable(choices, context)
    const { before } = await kept(context).change(() => ({ units: context.typed, choices }))
    const reply = wholePlan(worked, choices, context)
    return {
      ...reply,
      answer: `Kept for this channel. ${reply.answer}`,
      notes: [
        ...(before ? ['this takes the place of the plan before; "project undo" brings that back'] : []),
        ...(reply.notes ?? []),
      ],
    }
  },
})

const show = defineAction({
  summary: 'The plan of this channel',
  options: nothing,
  run: (_input, context) => {
    const { choices } = current(context)
    return wholePlan(planned(choices, context), choices, context)
  },
})

const parts = defineAction({
  summary: 'The parts to cut',
  options: nothing,
  run: (_input, context) => {
    const { choices } = current(context)
    const worked = planned(choices, context)
    const number = worked.cut.reduce((sum, { count }) => sum + count, 0)
    const reply = wholePlan({ ...worked, assumptions: [] }, choices, context)
    return {
      ...reply,
      answer: `${number} parts. ${reply.answer}`,
      pictures: panelPictures(worked.plan, context),
      buttons: toCautions(reply),
    }
  },
})

const change = defineAction({
  summary: 'Change any option; says which parts change',
  options: z.strictObject(planOptions),
  run: async (input, context) => {
    const changes = choicesFrom(input)
    if (Object.values(changes).every((value) => value === undefined)) {
      throw new Refusal('invalid', 'what changes? Add an option, such as: project change sheet=18mm')
    }
    current(context)
    const { before, after } = await kept(context).change((project) => {
      const choices = overlay(project?.choices ?? {}, changes)
      // Worked out on what is kept at this very moment, so that no change that cannot be built is ever kept.
      buildable(choices, context)
      return { ...project, choices }
    })
    return difference(before, after, context)
  },
})

/** The side and the end from outside, with the letters of their parts. */
const panelPictures = (plan: Planned['plan'], { show, settled }: Context) =>
  (['side', 'end'] as const).map((face) => facePicture(plan, face, show, settled.kerf))

/** The reply to anything that turned one plan into another. */
function difference(before: Project | undefined, after: Project, context: Context): Reply {
  const { show, settled } = context
  const now = planned(after.choices, context)
  const was = before && workedOut(before, context)
  if (!was) return wholePlan(now, after.choices, context)
  const changed = diffPlans(was.plan, now.plan)
  const { cautions, buttons } = fewCautions(context.cautions(planFacts(now.plan, after.choices)))
  // What was said of the plan before holds still, and is not said again.
  const said = [...sawNotes(was.plan, show, settled.kerf), ...was.assumptions]
  const fresh = [...sawNotes(now.plan, show, settled.kerf), ...now.assumptions].filter(
    (line) => !said.includes(line) || now.idle.includes(line),
  )
  return {
    answer: differenceAnswer(changed, [was.plan.spec, now.plan.spec], show),
    cautions,
    tables: differenceTables(changed, show),
    pictures: [boxPicture(now.plan, show, settled.kerf)],
    notes: [...differenceNotes(changed, show), fits(now.plan, context), ...now.warnings, ...fresh],
    buttons: [UNDO, PARTS, ...buttons],
    figures: { ...planFigures(now.plan), ...differenceFigures(changed) },
  }
}

/** Of the buttons of a reply the one that says the cautions left out. */
const toCautions = ({ buttons = [] }: Reply) => buttons.filter(({ line }) => line.startsWith('cautions '))

const fits = ({ inside, lip, spec }: Planned['plan'], { show }: Context): string =>
  `still fits: inside ${pair(inside.length, inside.width, show, 'into')}${spec.corner === 'captured' ? `, lip ${show.length(lip, 'into', true)}` : ''}`

const moveThrough = (way: 'undo' | 'redo', done: string, none: string) =>
  defineAction({
    summary: way === 'undo' ? 'Take the last change back' : 'Bring back what was undone',
    options: nothing,
    run: async (_input, context): Promise<Reply> => {
      const moved = await kept(context)[way]()
      if (!moved) throw new Refusal('invalid', none)
      const said = `${done} "${moved.revision.command}"${moved.revision.user ? ` by ${moved.revision.user}` : ''}`
      if (!moved.body) return { answer: `${said}; this channel has no plan now`, figures: { empty: true } }
      const reply = difference(context.project, moved.body, context)
      return {
        ...reply,
        answer: `${said}. ${reply.answer}`,
        buttons: [
          way === 'undo' ? { label: 'Redo', line: 'project redo' } : UNDO,
          PARTS,
          ...toCautions(reply),
        ],
      }
    },
  })

const undo = moveThrough('undo', 'Undone:', 'there is nothing to undo in this channel')
const redo = moveThrough(
  'redo',
  'Back again:',
  'there is nothing to bring back; only what was undone just before can be',
)

const HISTORY_SHOWN = 10

const history = defineAction({
  summary: 'Who changed what, newest first',
  options: nothing,
  run: async (_input, context) => {
    const revisions = await kept(context).history(context.settings.revisionsKept)
    if (revisions.length === 0) throw new Refusal('invalid', 'nothing has been kept in this channel yet')
    return {
      answer: `Revision ${revisions[0]?.revision} is the newest`,
      notes: await revisionLines(revisions, HISTORY_SHOWN, context.nameOf),
      buttons: [UNDO],
      figures: {
        revisions: revisions
          .slice(0, HISTORY_SHOWN)
          .map(({ at, ...rest }) => ({ ...rest, at: at.toISOString() })),
        more: Math.max(0, revisions.length - HISTORY_SHOWN),
      },
    }
  },
})

const forget = defineAction({
  summary: 'Delete the plan and its whole history',
  options: z.strictObject({ sure: yes('say yes to delete for good').optional() }),
  run: async ({ sure }, context) => {
    if (!sure) {
      return {
        answer:
          'This deletes the plan of this channel and every earlier version, for good. To go on: project forget sure=yes',
        buttons: [{ label: 'Delete for good', line: 'project forget sure=yes' }],
        figures: { deleted: 0 },
      }
    }
    const deleted = await kept(context).forget()
    return {
      answer:
        deleted === 0
          ? 'Nothing was kept in this channel'
          : `Deleted, with ${deleted} ${deleted === 1 ? 'revision' : 'revisions'}. Nothing of the plan is left`,
      forgets: 'channel',
      figures: { deleted },
    }
  },
})

/** What was kept before; nothing where it cannot be built any more, which is no reason to keep the change back. */
function workedOut({ choices }: Project, context: Context): Planned | undefined {
  try {
    return planned(choices, context)
  } catch (error) {
    if (error instanceof Refusal) return undefined
    throw error
  }
}

/** A plan that may be kept: throws a Refusal for one that cannot be built. */
function buildable(choices: PlanChoices, context: Context): Planned {
  const worked = planned(choices, context)
  refuseGrooves(worked.plan, context.settled.kerf)
  return worked
}

function wholePlan(
  { plan, cut, warnings, assumptions }: Planned,
  choices: PlanChoices,
  context: Context,
): Reply {
  const { show, settled } = context
  const { cautions, buttons } = fewCautions(context.cautions(planFacts(plan, choices)))
  return {
    answer: planAnswer(plan, show),
    cautions,
    tables: partTables(plan, show, cut),
    pictures: [boxPicture(plan, show, settled.kerf)],
    notes: [...warnings, ...sizeNotes(plan, show), ...sawNotes(plan, show, settled.kerf), ...assumptions],
    buttons: [PARTS, UNDO, ...buttons],
    figures: planFigures(plan),
  }
}

export default defineVerbs({
  name: 'project',
  summary: 'The plan this channel is building: start, show, change, undo, redo, history, parts, forget',
  examples: [
    'project start 17in x 13in height=15in sheet=1/2 ply',
    'project change sheet=18mm',
    'project undo',
    'project parts',
    'project',
  ],
  verbs: { start, show, change, undo, redo, history, parts, forget },
  fallback: 'show',
})
