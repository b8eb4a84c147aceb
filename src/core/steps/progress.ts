import { printOf, type Step } from './step.ts'

/** A step ticked off or passed over: by whom and when, and the numbers that it had. */
export interface Mark {
  readonly state: 'done' | 'skipped'
  readonly by: string
  /** ISO 8601. */
  readonly at: string
  readonly print: string
}

/** What is kept of a build: marks by the step's id, those of steps that the plan has no more among them. */
export type Marks = Readonly<Record<string, Mark>>

/** One step and how it stands. */
export interface Standing {
  readonly step: Step
  /** From 1. */
  readonly number: number
  readonly mark: Mark | undefined
  /** Its numbers are others than when it was ticked off. */
  readonly changed: boolean
}

/** Every step with its mark. */
export const standings = (steps: readonly Step[], marks: Marks): readonly Standing[] =>
  steps.map((step, index) => {
    const mark = Object.hasOwn(marks, step.id) ? marks[step.id] : undefined
    const changed = mark?.state === 'done' && mark.print !== printOf(step)
    return { step, number: index + 1, mark, changed }
  })

/** The step to do now: the first that nobody has ticked off or passed over; undefined when there is none. */
export const currentOf = (all: readonly Standing[]): Standing | undefined =>
  all.find(({ mark }) => mark === undefined)

/** `marks` with steps ticked off or passed over; one that somebody has marked so with the same numbers keeps that mark. */
export function withMark(
  marks: Marks,
  steps: readonly Step[],
  { state, by, at }: Pick<Mark, 'state' | 'by' | 'at'>,
): Marks {
  const fresh = steps.filter((step) => {
    const mark = Object.hasOwn(marks, step.id) ? marks[step.id] : undefined
    return mark?.state !== state || mark.print !== printOf(step)
  })
  const added = fresh.map((step): [string, Mark] => [step.id, { state, by, at, print: printOf(step) }])
  return { ...marks, ...Object.fromEntries(added) }
}

/** `marks` without those of `steps`. */
export const withoutMarks = (marks: Marks, steps: readonly Step[]): Marks =>
  Object.fromEntries(Object.entries(marks).filter(([id]) => !steps.some((step) => step.id === id)))
