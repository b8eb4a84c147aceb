import { z } from 'zod'
import type { ListedPart } from '../core/cutting/job.ts'
import { nanometres } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'

const stored = z.int().positive().transform(nanometres)

/** One row of the channel's cut list. */
export const listedPartSchema = z.strictObject({
  label: z.string().min(1).max(12),
  count: z.int().min(1).max(10_000),
  from: z.enum(['sheet', 'board', 'strip']),
  length: stored,
  width: stored.optional(),
  thickness: stored.optional(),
  grain: z.boolean(),
  later: z.boolean(),
  /** What it is, in words: `side panel`. */
  name: z.string().max(60).optional(),
})
export type Listed = z.output<typeof listedPartSchema>

/** What a channel keeps of its cut list. */
export const cutListSchema = z.strictObject({ parts: z.array(listedPartSchema).max(2000) })
export type CutList = z.output<typeof cutListSchema>

/** The parts of a plan as rows of a cut list, under the plan's own labels. */
export const partsOfPlan = (plan: Plan): readonly Listed[] =>
  plan.parts.map(({ label, name, material, count, length, width, thickness }) => ({
    label,
    count,
    from: material,
    length,
    width,
    thickness,
    grain: false,
    later: name.endsWith('brace') || name === 'corner stile',
    name,
  }))

/** The next free label: A, B, ... Z, AA, AB, ... */
export function nextLabel(taken: ReadonlySet<string>): string {
  for (let number = 0; ; number += 1) {
    const label = lettersOf(number)
    if (!taken.has(label)) return label
  }
}

const lettersOf = (number: number): string =>
  (number >= 26 ? lettersOf(Math.floor(number / 26) - 1) : '') + String.fromCharCode(65 + (number % 26))

/** `parts` without what only the chat keeps. */
export const asListed = (parts: readonly Listed[]): readonly ListedPart[] =>
  parts.map(({ name: _name, ...part }) => part)
