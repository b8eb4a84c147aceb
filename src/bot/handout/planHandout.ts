import type { Caution } from '../../core/checks/caution.ts'
import type { Context } from '../context.ts'
import { type CutList, cutListOf } from '../cutList.ts'
import { layOut, partsToCut, searchTerms } from '../layoutJob.ts'
import { planned } from '../plannedSurround.ts'
import { stockMoney } from '../prices.ts'
import { cutOrderReply } from '../sawnJob.ts'
import { shoppingJob } from '../shoppingJob.ts'
import { showKept } from '../showKept.ts'
import { buildOf, openBuild, standingOf } from '../stepsKept.ts'
import { cautionSection, distinct } from './cautionSection.ts'
import { cutListSection } from './cutListSection.ts'
import type { Handout, Label, Paper, Section } from './handout.ts'
import { labelSection, labelsOf } from './labels.ts'
import { drawingSection, planCautions, planSection, sawBlocks } from './planSection.ts'
import { points } from './points.ts'
import { layoutSection, orderSection } from './sawSections.ts'
import { shoppingSection } from './shoppingSection.ts'
import { stepsSection } from './stepsSection.ts'
import { type Version, versionLine, versionOf } from './version.ts'

/** A handout of the channel's plan, and what it holds. */
export interface PlanHandout {
  readonly handout: Handout
  readonly version: Version
  readonly list: CutList
  readonly labels: readonly Label[]
  readonly cautions: readonly Caution[]
  readonly figures: { readonly settings: number; readonly steps: number; readonly ways: number }
}

/**
 * All of the channel's plan on paper. The layouts are searched for once: the cut order and the shopping are of the very sheets
 * that are drawn. Throws a Refusal where there is nothing to cut.
 */
export async function planHandout(paper: Paper, context: Context): Promise<PlanHandout> {
  const { project, reference, request, settled } = context
  const list = await partsToCut(context)
  const show = showKept(context, list.units)
  const terms = searchTerms(context)
  const version = await versionOf(context)
  const job = await layOut(context, context.settings.search.seconds, terms)
  const order = await cutOrderReply(job, context, terms, undefined)
  const shopping = await shoppingJob({}, context, job)
  const worked = project && planned(project.choices, context)
  const build = project && (await openBuild(context, job))
  const standing = build ? standingOf(build, await buildOf(context).read()) : []
  const cautions = distinct(
    [
      ...(worked && project ? planCautions(worked, project.choices, context) : []),
      ...(order.cautions ?? []),
      ...standing.flatMap(({ step }) => context.cautions(step.facts)),
    ],
    reference.cautions,
  )
  const isOwn = (await cutListOf(context).read()) !== undefined
  const labels = labelsOf(list.parts, show)
  const sections: readonly Section[] = [
    ...(worked ? [planSection(worked, context)] : []),
    cutListSection(list.parts, show, [
      ...(worked && isOwn
        ? points(["this is the channel's own cut list, which may differ from its plan"])
        : []),
      ...(worked ? sawBlocks(worked, context) : []),
    ]),
    ...cautionSection(cautions, reference.cautions),
    ...(worked ? [drawingSection(worked, context)] : []),
    layoutSection(job, await stockMoney(context), show.length(settled.kerf, 'mark', true)),
    orderSection(order, job),
    ...(build ? [stepsSection(standing, build, context)] : []),
    shoppingSection(shopping, show),
    labelSection(labels),
  ]
  const line = versionLine(version.words, request.at)
  return {
    handout: {
      title: worked ? 'Box to build' : 'Parts to cut',
      subtitle: `${line}. Lengths in ${show.units === 'inch' ? 'inches' : 'millimetres'}.`,
      foot: line,
      paper,
      at: request.at,
      sections,
    },
    version,
    list,
    labels,
    cautions,
    figures: {
      settings: Number(order.figures.settings),
      steps: standing.length,
      ways: job.groups.reduce((sum, { layouts }) => sum + layouts.length, 0),
    },
  }
}
