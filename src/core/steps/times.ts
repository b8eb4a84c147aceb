import type { Stage, Step } from './step.ts'

/** Minutes that a stage takes: for each setting of the saw, and for each piece. */
export interface StageTime {
  readonly set: number
  readonly each: number
}

/** Of every stage. */
export type Times = Readonly<Record<Stage, StageTime>>

/** Whole minutes of one step, set up at least once; an estimate. */
export function minutesOf({ stage, settings, work }: Step, times: Times): number {
  const { set, each } = times[stage]
  return Math.max(1, Math.round(set * Math.max(1, settings.length) + each * work))
}
