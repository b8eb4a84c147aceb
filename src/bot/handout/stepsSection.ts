import type { Standing } from '../../core/steps/progress.ts'
import type { Setting, Step } from '../../core/steps/step.ts'
import type { Context } from '../context.ts'
import type { Show } from '../show.ts'
import type { Build } from '../stepsKept.ts'
import { ofWords, settingMark, settingWords, timeWords } from '../stepsReply.ts'
import type { HandoutTask, Section } from './handout.ts'

/** Every step of the build with what to set and how, ticked where it is done. */
export function stepsSection(all: readonly Standing[], build: Build, { show }: Context): Section {
  const minutes = all.reduce((sum, { step }) => sum + build.minutes(step), 0)
  return {
    title: 'Steps',
    blocks: [
      {
        block: 'words',
        text: `${all.length} steps, about ${timeWords(minutes)} without drying (common practice). Fences and stops are to the nearest tooth.`,
      },
      { block: 'tasks', items: all.map((standing) => taskOf(standing, show)) },
    ],
  }
}

function taskOf({ step, number, mark, changed }: Standing, show: Show): HandoutTask {
  const parts = step.cuts.length > 0 ? ` (${step.cuts.join(', ')})` : ''
  const state = changed
    ? ', done, but its numbers have changed since'
    : mark?.state === 'skipped'
      ? ', skipped'
      : ''
  return {
    ticked: mark?.state === 'done' && !changed,
    heading: `${number}. ${step.id}${parts}${state}`,
    settings: step.settings.map((setting) => settingLine(step, setting, show)),
    words: step.how,
  }
}

/** `end diagonals: 21 5/32 in, 1/32 apart at most`; `rip fence: 4 7/8 in (2x6 8 ft)`. */
function settingLine(step: Step, setting: Setting, show: Show): string {
  const { what, within } = setting
  const size =
    setting.length === undefined
      ? settingWords(setting, show)
      : `${settingMark(setting, show, step)} ${show.unit}`
  const of = ofWords(setting)
  return `${what}: ${size}${of === '' ? '' : ` (${of})`}${within === undefined ? '' : `, ${show.mark(within, 'mark', true)} apart at most`}`
}
