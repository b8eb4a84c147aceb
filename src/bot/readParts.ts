import { readPartList } from '../core/cutting/partList.ts'
import type { ListedPart } from '../core/cutting/partList/listedPart.ts'
import { findBoard } from '../core/stock/boards.ts'
import { readSheet } from '../core/measure/readSheet.ts'
import type { Board } from '../core/stock/stock.ts'
import { type Length, toMillimetres } from '../core/measure/length.ts'
import type { ReadingSettings, UnitSystem } from '../core/measure/reading.ts'
import { defaultSheet } from './completePlan.ts'
import type { Context } from './context.ts'
import { type Listed, LONGEST_LABEL, nextLabel } from './cutList.ts'
import { quoted, Refusal } from './refusal.ts'

/** Parts that were typed or pasted, as rows of the cut list, and what was assumed of them. */
export interface PartsRead {
  readonly parts: readonly Listed[]
  readonly notes: readonly string[]
  readonly units: UnitSystem | undefined
  /** Labels of the parts of which no line says how many. */
  readonly uncounted: readonly string[]
}

/** What is said once for every part of a list. */
export interface ForAll extends Pick<Listed, 'grain' | 'later'> {
  /** Parts without a width are crosscut from strips so thick, ripped from boards; from the boards as they are without it. */
  readonly strip?: Length | undefined
}

/**
 * Reads one part or a pasted list, a part on each line or parted by semicolons. All or nothing: throws a Refusal that
 * names the first line that is no part, so that no line is ever lost. Labels are kept where they are free.
 */
export function readParts(
  text: string,
  forAll: ForAll,
  before: readonly Listed[],
  context: Context,
): PartsRead {
  const lines = linesOf(text)
  const { parts, problems, notes, units } = readPartList(lines, {
    ...context.settled,
    stock: context.reference.stock,
  })
  const [first, ...others] = problems
  if (first) {
    const more = others.length === 0 ? '' : `; ${others.length} more like it`
    throw new Refusal('invalid', `nothing was added: ${first.problem}${more}`)
  }
  if (parts.length === 0) throw new Refusal('invalid', 'no part was found; write one as: 4x 24in x 12in ply')
  const named = parts.flatMap(({ label }) => (label ? [label.toLowerCase()] : []))
  const taken = new Set(before.map(({ label }) => label.toLowerCase()))
  const renamed: string[] = []
  const rows = parts.map((part) => {
    // A part without a label does not take one that another line of the same list has chosen.
    const label = part.label ? labelFor(part.label, taken) : nextLabel(new Set([...taken, ...named]))
    if (part.label && label !== part.label) renamed.push(`${quoted(part.label)} is called ${label}`)
    taken.add(label.toLowerCase())
    return rowOf(part, label, forAll, context)
  })
  return {
    parts: rows,
    notes: [...notes, ...parts.flatMap(({ note }) => (note ? [note] : [])), ...shortened(renamed)],
    units,
    uncounted: rows.flatMap(({ label }, at) => (parts[at]?.counted ? [] : [label])),
  }
}

/** One line with semicolons is a list, unless a piece of it cannot be a part: then it is one row of a table. */
function linesOf(text: string): string {
  if (text.includes('\n')) return text
  const pieces = text.split(';').filter((piece) => piece.trim() !== '')
  const isRow = pieces.some((piece) => !/\d/u.test(piece) || /^\s*\d+\s*$/u.test(piece))
  return isRow ? text : pieces.join('\n')
}

/** So many new names are said; a long list has the rest in its table. */
const MOST_SAID = 4

const shortened = (said: readonly string[]): readonly string[] =>
  said.length > MOST_SAID
    ? [
        ...said.slice(0, MOST_SAID),
        `${said.length - MOST_SAID} more labels were made shorter or unlike others`,
      ]
    : said

function labelFor(label: string, taken: ReadonlySet<string>): string {
  const short = label.slice(0, LONGEST_LABEL).trim()
  if (!taken.has(short.toLowerCase())) return short
  for (let number = 2; ; number += 1) {
    const next = `${short.slice(0, LONGEST_LABEL - String(number).length)}${number}`
    if (!taken.has(next.toLowerCase())) return next
  }
}

function rowOf(part: ListedPart, label: string, { strip, ...flags }: ForAll, context: Context): Listed {
  const { count, length, width, label: name, board } = part
  const named = name && name.length > LONGEST_LABEL ? { name: name.slice(0, 60) } : {}
  const common = { label, count, ...flags, ...named }
  if (board === undefined && width !== undefined) {
    if (strip) throw stripHasWidth(label)
    return { ...common, from: 'sheet', length, width, ...sheetOf(part, context) }
  }
  const section = board === undefined ? usualBoard(context) : part
  return strip === undefined
    ? { ...common, from: 'board', length, thickness: section?.thickness, width: section?.width }
    : { ...common, from: 'strip', length, thickness: strip, width: section?.thickness }
}

const stripHasWidth = (label: string): Refusal =>
  new Refusal(
    'invalid',
    `nothing was added: part ${label} has a width, but a strip gets its width from the board; write only its length, and the board: 4x 24in 2x4 strip=1/2in`,
  )

/** The section of parts that name none. */
const usualBoard = ({ settled, reference, settings }: Context): Board | undefined =>
  findBoard(settings.usual[settled.region].board, settled.region, reference.stock)

/** A thickness that is a label stands for what the sheet really measures; without one it is the usual sheet's. */
function sheetOf({ thickness, material }: ListedPart, context: Context) {
  const { settled, reference, settings, project } = context
  const reading = { ...settled, stock: reference.stock }
  const usual = defaultSheet(settings.usual[settled.region].sheet, reading)
  const typed =
    thickness === undefined
      ? undefined
      : readSheet(`${toMillimetres(thickness)}mm ${material ?? 'plywood'}`, reading)
  const made = material === undefined ? undefined : materialNamed(material, reading)
  const depth =
    typed?.status === 'read'
      ? typed.thickness
      : (thickness ?? project?.choices.sheet?.thickness ?? usual.thickness)
  return { thickness: depth, ...(made === undefined ? {} : { material: made }) }
}

/** `ply` is plywood in the tables of stock; undefined for a wood that no sheet is made of. */
function materialNamed(words: string, reading: ReadingSettings): string | undefined {
  const sheet = readSheet(`18mm ${words}`, reading)
  return sheet.status === 'read' ? sheet.material : undefined
}
