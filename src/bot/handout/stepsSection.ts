import type { Standing } from '../../core/steps/progress.ts'
import type { Setting, Step } from '../../core/steps/step.ts'
import type { Context } from '../context.ts'
import type { LaidJob } from '../laidJob.ts'
import { ripsOf } from '../ripTable.ts'
import type { Show } from '../show.ts'
import type { Build } from '../stepsKept.ts'
import { purposeIn, settingWords, timeWords } from '../stepsReply.ts'
import type { HandoutTask, Section } from './handout.ts'

/** Every step of the build with what to set and how, ticked where it is done. `job` is what the strips are ripped from. */
export function stepsSection(
  all: readonly Standing[],
  build: Build,
  job: LaidJob,
  { show, settled, settings }: Context,
): Section {
  const minutes = all.reduce((sum, { step }) => sum + build.minutes(step), 0)
  const rips = job.groups.flatMap((laid) => ripsOf(laid, settled.kerf))
  const fences = rips.flatMap(({ label, steps }) =>
    steps.map(
      ({ setting }) =>
        `rip fence: ${show.mark(setting, 'mark', true)} ${show.unit} (${label}${setting < settings.safeRip ? ', push block' : ''})`,
    ),
  )
  return {
    title: 'Steps',
    blocks: [
      {
        block: 'words',
        text: `${all.length} steps, about ${timeWords(minutes)} without drying (common practice). Fences and stops are to the nearest tooth.`,
      },
      { block: 'tasks', items: all.map((standing) => taskOf(standing, fences, show)) },
    ],
  }
}

function taskOf(
  { step, number, mark, changed }: Standing,
  fences: readonly string[],
  show: Show,
): HandoutTask {
  const parts = step.cuts.length > 0 ? ` (${step.cuts.join(', ')})` : ''
  const state = changed
    ? ', done, but its numbers have changed since'
    : mark?.state === 'skipped'
      ? ', skipped'
      : ''
  // The plan's own board may be another than the one that the layout takes.
  const isRip = step.stage === 'rip' && fences.length > 0
  return {
    ticked: mark?.state === 'done' && !changed,
    heading: `${number}. ${step.id}${parts}${state}`,
    settings: isRip ? fences : step.settings.map((setting) => settingLine(step, setting, show)),
    words: step.how,
  }
}

/** `end diagonals: 21 5/32 in, 1/32 apart at most`. */
function settingLine(step: Step, setting: Setting, show: Show): string {
  const { what, length, within } = setting
  const size =
    length === undefined
      ? settingWords(setting, show)
      : `${show.mark(length, purposeIn(step, setting), true)} ${show.unit}`
  return `${what}: ${size}${within === undefined ? '' : `, ${show.mark(within, 'mark', true)} apart at most`}`
}
