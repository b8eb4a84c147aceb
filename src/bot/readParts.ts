import { readPartList } from '../core/cutting/partList.ts'
import type { ListedPart } from '../core/cutting/partList/listedPart.ts'
import { findBoard } from '../core/stock/boards.ts'
import { findSheetLabel } from '../core/stock/sheets.ts'
import type { Length } from '../core/measure/length.ts'
import { defaultSheet } from './completePlan.ts'
import type { Context } from './context.ts'
import { type Listed, listedPartSchema, nextLabel } from './cutList.ts'
import { Refusal } from './refusal.ts'

/** Parts that were typed or pasted, as rows of the cut list, and what was assumed of them. */
export interface PartsRead {
  readonly parts: readonly Listed[]
  readonly notes: readonly string[]
}

/**
 * Reads one part or a pasted list, a part on each line or parted by semicolons. All or nothing: throws a Refusal that
 * names the first line that is no part, so that no line is ever lost. Labels are kept where they are free.
 */
export function readParts(
  text: string,
  flags: Pick<Listed, 'grain' | 'later'>,
  before: readonly Listed[],
  context: Context,
): PartsRead {
  const lines = text.includes('\n') ? text : text.replaceAll(/;\s*/gu, '\n')
  const { parts, problems, notes } = readPartList(lines, {
    ...context.settled,
    stock: context.reference.stock,
  })
  const [first, ...others] = problems
  if (first) {
    const more = others.length === 0 ? '' : `; ${others.length} more like it`
    throw new Refusal('invalid', `nothing was added: ${first.problem}${more}`)
  }
  if (parts.length === 0) throw new Refusal('invalid', 'no part was found; write one as: 4x 24in x 12in ply')
  const named = parts.flatMap(({ label }) => (label ? [label] : []))
  const taken = new Set(before.map(({ label }) => label))
  const rows = parts.map((part) => {
    // A part without a label does not take one that another line of the same list has chosen.
    const label = part.label ? labelFor(part.label, taken) : nextLabel(new Set([...taken, ...named]))
    taken.add(label)
    return rowOf(part, label, flags, context)
  })
  return { parts: rows, notes: [...notes, ...parts.flatMap(({ note }) => (note ? [note] : []))] }
}

const LONGEST_LABEL = 12

function labelFor(label: string, taken: ReadonlySet<string>): string {
  const short = label.slice(0, LONGEST_LABEL).trim()
  if (!taken.has(short)) return short
  let number = 2
  while (taken.has(`${short.slice(0, LONGEST_LABEL - 3)}${number}`)) number += 1
  return `${short.slice(0, LONGEST_LABEL - 3)}${number}`
}

function rowOf(
  part: ListedPart,
  label: string,
  flags: Pick<Listed, 'grain' | 'later'>,
  context: Context,
): Listed {
  const { count, length, width, label: name } = part
  const named = name && name.length > LONGEST_LABEL ? { name: name.slice(0, 60) } : {}
  const common = { label, count, length, ...flags, ...named }
  const row =
    width === undefined
      ? { ...common, from: 'board', ...sectionOf(part, context) }
      : { ...common, from: 'sheet', width, thickness: thicknessOf(part, context) }
  return listedPartSchema.parse(row)
}

/** A thickness that is a label stands for what the sheet really measures. */
function thicknessOf({ thickness, material = 'plywood' }: ListedPart, context: Context): Length {
  const { settled, reference, settings, project } = context
  if (thickness !== undefined) {
    return findSheetLabel(material, thickness, settled.region, reference.stock)?.actual ?? thickness
  }
  return (
    project?.choices.sheet?.thickness ??
    defaultSheet(settings.usual[settled.region].sheet, { ...settled, stock: reference.stock }).thickness
  )
}

/** The section of a part without a width: the board it names, else the board of the settings. */
function sectionOf({ material }: ListedPart, { settled, reference, settings }: Context) {
  const board =
    (material ? findBoard(material, settled.region, reference.stock) : undefined) ??
    findBoard(settings.usual[settled.region].board, settled.region, reference.stock)
  return board ? { thickness: board.thickness, width: board.width } : {}
}
