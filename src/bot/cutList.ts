import { z } from 'zod'
import type { ListedPart } from '../core/cutting/job.ts'
import { nanometres } from '../core/measure/length.ts'
import type { Context } from './context.ts'
import type { Document } from './document.ts'
import type { CutPart } from './joinLines.ts'
import { Refusal } from './refusal.ts'
import { LONGEST_LABEL } from './stockKept.ts'

export { LONGEST_LABEL } from './stockKept.ts'

const stored = z.int().positive().transform(nanometres)

/** One row of the channel's cut list. */
export const listedPartSchema = z.strictObject({
  label: z.string().min(1).max(LONGEST_LABEL),
  count: z.int().min(1).max(10_000),
  from: z.enum(['sheet', 'board', 'strip']),
  length: stored,
  width: stored.optional(),
  thickness: stored.optional(),
  /** Of a sheet part: `plywood`, `MDF`. */
  material: z.string().max(40).optional(),
  grain: z.boolean(),
  later: z.boolean(),
  /** What it is, in words: `side panel`. */
  name: z.string().max(60).optional(),
})
export type Listed = z.output<typeof listedPartSchema>

/** Rows that a list may have, and parts in all of them together. */
export const MOST_ROWS = 2000
export const MOST_PARTS = 10_000

/** What a channel keeps of its cut list. */
export const cutListSchema = z.strictObject({
  parts: z.array(listedPartSchema).max(MOST_ROWS),
  /** The units that it was written in, as far as they could be told. */
  units: z.enum(['inch', 'metric']).optional(),
})
export type CutList = z.output<typeof cutListSchema>

export const cutListOf = (context: Context): Document<CutList> => context.ofChannel('cutlist', cutListSchema)

/** `list` as it may be kept. Throws a Refusal that names the part with which it is too long. */
export function withinBounds(list: CutList): CutList {
  if (list.parts.length > MOST_ROWS)
    throw new Refusal(
      'invalid',
      `nothing was changed: that makes ${list.parts.length} rows, and a cut list takes ${MOST_ROWS}`,
    )
  let sum = 0
  const over = list.parts.find(({ count }) => {
    sum += count
    return sum > MOST_PARTS
  })
  if (!over) return list
  throw new Refusal(
    'invalid',
    `nothing was changed: with ${over.count} of part ${over.label} there are more than ${MOST_PARTS} parts, the most that a cut list takes`,
  )
}

/** Parts of a plan as rows of a cut list, under the plan's own labels. */
export const partsOfPlan = ({ parts }: { readonly parts: readonly CutPart[] }): readonly Listed[] =>
  parts.map(({ label, name, material, count, length, width, thickness }) => ({
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

/** The next free label: A, B, ... Z, AA, AB, ... `taken` in small letters, since a label is found in either case. */
export function nextLabel(taken: ReadonlySet<string>): string {
  for (let number = 0; ; number += 1) {
    const label = lettersOf(number)
    if (!taken.has(label.toLowerCase())) return label
  }
}

const lettersOf = (number: number): string =>
  (number >= 26 ? lettersOf(Math.floor(number / 26) - 1) : '') + String.fromCharCode(65 + (number % 26))

/** `parts` without what only the chat keeps. */
export const asListed = (parts: readonly Listed[]): readonly ListedPart[] =>
  parts.map(({ name: _name, ...part }) => part)
