import { z } from 'zod'
import type { Plan } from '../core/plan.ts'
import { buildSteps } from '../core/steps/buildSteps.ts'
import { type Marks, type Standing, standings } from '../core/steps/progress.ts'
import type { Step } from '../core/steps/step.ts'
import type { SawTerms } from '../core/steps/strips.ts'
import { minutesOf } from '../core/steps/times.ts'
import { findBoard } from '../core/stock/boards.ts'
import type { Context } from './context.ts'
import type { Document } from './document.ts'
import type { LaidJob } from './laidJob.ts'
import { boardsOfPlan, fencesOf, type PlanBoards } from './planBoards.ts'
import type { PlanChoices } from './planChoices.ts'
import { planned } from './plannedSurround.ts'
import { type PlanSheets, sheetsOfPlan } from './planSheets.ts'
import { quoted, Refusal } from './refusal.ts'
import { didYouMean } from './suggest.ts'

const markSchema = z.strictObject({
  state: z.enum(['done', 'skipped']),
  by: z.string(),
  at: z.string(),
  print: z.string(),
})

/** What a channel keeps of a build: who did which step and when, and the numbers it was done by. */
export const buildSchema = z.strictObject({ marks: z.record(z.string(), markSchema) })
export type KeptBuild = z.output<typeof buildSchema>

export const buildOf = (context: Context): Document<KeptBuild> => context.ofChannel('steps', buildSchema)

/** The build of the channel's plan. */
export interface Build {
  readonly steps: readonly Step[]
  readonly minutes: (step: Step) => number
  readonly boards: PlanBoards
  /** Parts that no sheet or board gives in one piece, and where they are joined, a line each. */
  readonly joins: readonly string[]
  readonly sheets: PlanSheets
}

/** The steps of the channel's plan, cut from the sheets and boards of its layout as that lies. Throws a Refusal when there is none. */
export async function openBuild(context: Context, laid?: LaidJob): Promise<Build> {
  const { project, reference } = context
  if (!project)
    throw new Refusal(
      'invalid',
      'there is nothing to build yet; this channel has no project: project start 17in x 13in height=15in',
    )
  const worked = planned(project.choices, context)
  const boards = await boardsOfPlan(worked.plan, context, laid)
  const sheets = await sheetsOfPlan(worked, context, laid)
  const steps = stepsOf(worked.plan, project.choices, context, {
    boards: fencesOf(boards),
    sheets: sheets.settings,
  })
  return {
    steps,
    minutes: (step) => minutesOf(step, reference.times),
    boards,
    joins: worked.joins,
    sheets,
  }
}

/** The steps of a plan, cut as it is `laid`; from the board that was chosen or the usual one where nobody has laid it out. */
export const stepsOf = (
  plan: Plan,
  choices: PlanChoices,
  context: Context,
  laid: Pick<SawTerms, 'boards' | 'sheets'> = {},
): readonly Step[] =>
  buildSteps(plan, { ...laid, board: boardOf(choices, context), safe: context.settings.safeRip })

/** Width of the board that the strips are ripped from; undefined where a measured width took its place. */
function boardOf({ board, width, region }: PlanChoices, { settings, settled, reference }: Context) {
  const place = region ?? settled.region
  const name = board ?? (width === undefined ? settings.usual[place].board : '')
  return name === '' ? undefined : findBoard(name, place, reference.stock)?.width
}

/** How every step stands. */
export const standingOf = (build: Build, kept: KeptBuild | undefined): readonly Standing[] =>
  standings(build.steps, (kept?.marks ?? {}) as Marks)

/**
 * The steps that are meant: by their numbers (`3`, `3-5`, `3, 7`), or by a name or the beginning of one. Throws a Refusal
 * where there is none of that name, or more than one.
 */
export function findSteps(typed: string, steps: readonly Step[]): readonly Step[] {
  const text = typed.trim().toLowerCase()
  if (/^\d[\d\s,–-]*$/u.test(text))
    return text.split(/[\s,]+(?![–-])/u).flatMap((part) => numbered(part, steps))
  const exact = steps.filter(({ id }) => id === text)
  const near = steps.filter(({ id }) => words(id).includes(words(text)))
  const found = exact.length > 0 ? exact : near
  if (found.length === 1) return found
  if (found.length > 1)
    throw new Refusal(
      'ambiguous',
      `${quoted(typed)} could be ${found.map(({ id }) => id).join(', ')}; write one of them, or its number`,
    )
  const names = steps.map(({ id }) => id)
  throw new Refusal(
    'invalid',
    `there is no step ${quoted(typed)}; write its number or its name.${didYouMean(text, names)}`,
  )
}

/** Without the ending of several: `side rails` is the step of the side rail. */
const words = (text: string): string => text.replace(/s\b/gu, '')

function numbered(part: string, steps: readonly Step[]): readonly Step[] {
  const [from = 0, to = from] = part.split(/\s*[–-]\s*/u).map(Number)
  if (from >= 1 && to <= steps.length && from <= to) return steps.slice(from - 1, to)
  throw new Refusal('invalid', `there is no step ${quoted(part)}; there are 1 to ${steps.length}`)
}
