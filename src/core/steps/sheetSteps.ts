import type { Length } from '../measure/length.ts'
import type { Part } from '../plan.ts'
import type { Setting, Step } from './step.ts'

/** Parts that a setting finishes; `whole` is the part of the plan, of which `label` is a piece where it is joined from two. */
export interface FinishedParts {
  readonly label: string
  readonly count: number
  readonly whole: string
}

/** One setting of the saw while the sheets are cut: which way it cuts, how it is set, and which parts it finishes. */
export interface SheetSetting {
  /** `rip` along the sheet, `crosscut` across it, `trim` a raw edge off. */
  readonly kind: 'rip' | 'crosscut' | 'trim'
  readonly length: Length
  /** Passes of the saw. */
  readonly cuts: number
  readonly parts: readonly FinishedParts[]
  /** Some piece is narrower than a hand may be near: a push block. */
  readonly narrow: boolean
}

const isBreakDown = ({ parts }: SheetSetting): boolean => parts.length === 0

/**
 * The sheets cut as their layout lies, setting after setting in the order given, so that every part comes out of the
 * sheets that were bought for it: settings that finish nothing are joined in one step, the others are a step each. A part
 * is cut where the last of its kind is finished.
 */
export function sheetSteps(parts: readonly Part[], settings: readonly SheetSetting[]): readonly Step[] {
  const runs: SheetSetting[][] = []
  for (const setting of settings) {
    const run = runs.at(-1)
    if (run?.[0] && isBreakDown(run[0]) && isBreakDown(setting)) run.push(setting)
    else runs.push([setting])
  }
  const labels = runs.map((run) => new Set(run.flatMap((setting) => setting.parts.map(({ whole }) => whole))))
  const names = new Map<string, number>()
  return runs.map((run, at): Step => {
    const inHand = parts.filter(({ label }) => labels[at]?.has(label))
    const later = new Set(labels.slice(at + 1).flatMap((each) => [...each]))
    const finishes = inHand.length > 0
    const name = finishes ? `cut ${inHand.map((part) => part.name).join(' and ')}` : 'break down sheets'
    const times = (names.get(name) ?? 0) + 1
    names.set(name, times)
    return {
      id: times === 1 ? name : `${name}, setting ${times}`,
      stage: finishes ? 'cut panel' : 'break down',
      parts: finishes ? inHand : parts.filter(({ label }) => later.has(label)),
      cuts: inHand.map(({ label }) => label).filter((label) => !later.has(label)),
      settings: run.map(settingOf),
      work: run.reduce((sum, setting) => sum + setting.cuts, 0),
      how: finishes
        ? 'every piece that needs this setting before it is changed, as the layout lies'
        : 'in this order, as the layout lies; every piece that needs a setting before the next',
      facts: {
        sheetCut: true,
        ...(finishes ? {} : { dust: true }),
        ...(run.some(({ kind }) => kind === 'crosscut') ? { crosscut: true } : {}),
      },
    }
  })
}

const settingOf = ({ kind, length, parts, narrow }: SheetSetting): Setting => ({
  what: kind,
  length,
  ...(parts.length > 0 ? { of: parts.map(({ label, count }) => `${count} ${label}`).join(', ') } : {}),
  ...(narrow ? { narrow } : {}),
})
