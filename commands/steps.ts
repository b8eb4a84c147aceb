import { z } from 'zod'
import { type Action, defineAction, defineVerbs } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { fewCautions } from '../src/bot/fewCautions.ts'
import { distinct } from '../src/bot/handout/cautionSection.ts'
import { first, words } from '../src/bot/option.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Reply } from '../src/bot/reply.ts'
import {
  type Build,
  buildOf,
  findSteps,
  type KeptBuild,
  openBuild,
  standingOf,
} from '../src/bot/stepsKept.ts'
import { stepsNow } from '../src/bot/stepsNow.ts'
import {
  currentReply,
  settingTable,
  stepsFigures,
  stepTable,
  stepWords,
  timeWords,
} from '../src/bot/stepsReply.ts'
import { undoVerbs } from '../src/bot/undoVerbs.ts'
import { currentOf, type Mark, type Marks, withMark, withoutMarks } from '../src/core/steps/progress.ts'
import type { Step } from '../src/core/steps/step.ts'

const NONE: KeptBuild = { marks: {} }

const show = defineAction({
  summary: 'The step to do now, with the numbers to set, and what comes after it',
  options: z.strictObject({}),
  run: async (_input, context) => {
    const build = await openBuild(context)
    return currentReply(standingOf(build, await buildOf(context).read()), build, context)
  },
})

const all = defineAction({
  summary: 'Every step, with what is done',
  options: z.strictObject({}),
  run: async (_input, context) => {
    const build = await openBuild(context)
    const standing = standingOf(build, await buildOf(context).read())
    const figures = stepsFigures(standing, build)
    const left = standing.filter(({ mark }) => mark === undefined)
    const { cautions, buttons } = fewCautions(
      distinct(
        left.flatMap(({ step }) => context.cautions(step.facts)),
        context.reference.cautions,
      ),
    )
    return {
      answer: `${standing.length} steps, ${figures.done} done, ${figures.left} left: about ${timeWords(figures.minutes as number)}`,
      cautions,
      tables: [stepTable('Steps', standing, context.show)],
      notes: ['times are common practice, without drying; the first number to set stands beside each step'],
      buttons: [{ label: 'Now', line: 'steps' }, ...buttons],
      figures,
    }
  },
})

const which = first(
  words('its number, several of them, or its name; the step in hand if left out', '3'),
).optional()

/** The verbs that mark steps: the step in hand, or those that are named. */
const marking = (state: Mark['state'], summary: string, said: string): Action =>
  defineAction({
    summary,
    options: z.strictObject({ step: which }),
    run: async ({ step: typed }, context) => {
      const build = await openBuild(context)
      const kept = buildOf(context)
      const steps = meant(typed, build, await kept.read())
      const { before, after } = await kept.change((body = NONE) => ({
        marks: withMark(body.marks as Marks, steps, marker(state, context)),
      }))
      return currentReply(
        standingOf(build, after),
        build,
        context,
        await tell(steps, before, { said, state, context }),
      )
    },
  })

const marker = (state: Mark['state'], { request }: Context) => ({
  state,
  by: request.user,
  at: request.at.toISOString(),
})

function meant(typed: string | undefined, build: Build, kept: KeptBuild | undefined): readonly Step[] {
  if (typed !== undefined) return findSteps(typed, build.steps)
  const current = currentOf(standingOf(build, kept))
  if (current) return [current.step]
  throw new Refusal('invalid', 'every step is done or skipped; open one again with: steps open 3')
}

interface Telling {
  readonly said: string
  readonly state: Mark['state']
  readonly context: Context
}

/** What was done, or who had done it before. */
async function tell(
  steps: readonly Step[],
  before: KeptBuild | undefined,
  { said, state, context }: Telling,
): Promise<string> {
  const [step] = steps
  if (steps.length !== 1 || !step) return `${said}: ${steps.length} steps`
  const mark = before && Object.hasOwn(before.marks, step.id) ? before.marks[step.id] : undefined
  const others = mark?.state === state && mark.by !== context.request.user
  return others
    ? `${step.id} was ${state} already, by ${await context.nameOf(mark.by)}`
    : `${said}: ${step.id}`
}

const open = defineAction({
  summary: 'Open a step again that was not done after all',
  options: z.strictObject({ step: first(words('its number or its name', '3')) }),
  run: async ({ step: typed }, context) => {
    const build = await openBuild(context)
    const steps = findSteps(typed, build.steps)
    const { after } = await buildOf(context).change((body = NONE) => ({
      marks: withoutMarks(body.marks as Marks, steps),
    }))
    const said = steps.length === 1 ? `Open again: ${steps[0]?.id}` : `Open again: ${steps.length} steps`
    return currentReply(standingOf(build, after), build, context, said)
  },
})

const now = defineAction({
  summary: 'Where was I: what was done last, by whom and when, and what comes now',
  options: z.strictObject({}),
  run: (_input, context) => stepsNow(context),
})

const check = defineAction({
  summary: 'What to measure at the dry fit, and how far off it may be',
  options: z.strictObject({}),
  run: async (_input, context) => {
    const build = await openBuild(context)
    const standing = standingOf(build, await buildOf(context).read())
    const found = standing.find(({ step }) => step.stage === 'dry fit')
    const settings = found?.step.settings ?? []
    return {
      answer: `${settings.length} sizes to measure at the dry fit${found ? `; first the ${stepWords(found, context.show).replace(/^[^:]*: /u, '')}` : ''}`,
      tables: [{ ...settingTable(settings, context.show), title: `Measure (${context.show.unit})` }],
      notes: ['a diagonal that is off: "square" says which corners to squeeze'],
      buttons: [{ label: 'Steps', line: 'steps' }],
      figures: stepsFigures(standing, build),
    }
  },
})

const clear = defineAction({
  summary: 'Begin the build again; undo brings the ticks back',
  options: z.strictObject({}),
  run: async (_input, context) => {
    const build = await openBuild(context)
    await buildOf(context).change(() => NONE)
    return currentReply(standingOf(build, NONE), build, context, 'Begun again')
  },
})

const { undo, redo } = undoVerbs<KeptBuild>({
  name: 'build',
  open: buildOf,
  reply: async (body, context, said): Promise<Reply> => {
    const build = await openBuild(context)
    return currentReply(standingOf(build, body), build, context, said)
  },
})

export default defineVerbs({
  name: 'steps',
  summary: 'Build it step by step: what to set now, what comes next, what is done and by whom',
  examples: [
    'steps',
    'steps done',
    'steps done 3',
    'steps skip mark',
    'steps now',
    'steps check',
    'steps all',
  ],
  verbs: {
    show,
    all,
    done: marking('done', 'Tick the step in hand off, or the one that is named', 'Done'),
    skip: marking('skipped', 'Pass over the step in hand, or the one that is named', 'Skipped'),
    open,
    now,
    check,
    undo,
    redo,
    clear,
  },
  fallback: 'show',
})
