import type { ReadingSettings, UnitSystem } from '../measure/reading.ts'
import { readLine } from './partList/line.ts'
import type { LineRead, ListedPart, ListProblem } from './partList/listedPart.ts'
import { problemOf } from './partList/listedPart.ts'
import { cellsUnder, guessCells, readCells } from './partList/row.ts'
import type { Heading } from './partList/table.ts'
import { readHeader, separatorOf, splitRow } from './partList/table.ts'

/** A pasted list, read: every line that is not blank is a part, a problem, or is told of in `notes`. */
export interface PartList {
  readonly parts: readonly ListedPart[]
  readonly problems: readonly ListProblem[]
  /** Lines that are no parts and need not be: a header, a title, a column that is not used. */
  readonly notes: readonly string[]
  /** The unit of the first part that has one, or that a title gives; undefined where no line says. */
  readonly units: UnitSystem | undefined
}

interface Line {
  readonly number: number
  readonly text: string
}

const hasDigit = (text: string): boolean => /[\d¼-¾⅐-⅞]/u.test(text)

/** `Kit 1:`, `Panels`: a title, not a part. */
const isTitle = ({ text }: Line): boolean => !hasDigit(text) || /:\**$/u.test(text)

const linesOf = (text: string): Line[] =>
  text
    .split(/\r\n|\r|\n/u)
    .map((line, at) => ({ number: at + 1, text: line.replace(/^ +|\s+$/gu, '') }))
    // Rules and fences only set a list off; the bars round a row are no cells.
    .filter((line) => line.text !== '' && !/^[-=_*|+:`\s]+$/u.test(line.text))
    .map(({ number, text: own }) => ({ number, text: own.replace(/^\|(.*)\|$/u, '$1') }))

/** A title such as `all sizes in mm`: the unit it gives. */
function unitOf(text: string): UnitSystem | undefined {
  if (/\b(?:mm|cm|millimet(?:re|er)s?|centimet(?:re|er)s?)\b/iu.test(text)) return 'metric'
  return /\b(?:inch(?:es)?|in)[.)\]:]*$/iu.test(text) ? 'inch' : undefined
}

/** A minus that touches its number, where a cell or line begins, or a size goes on: a count or size below nothing. */
const NEGATIVE = /(?:^|[,;|\t:=(]|\s[x×*@])\s*[-−](?=[\d.½¼¾])/u

function readOne(
  text: string,
  headings: readonly Heading[] | undefined,
  settings: ReadingSettings,
): LineRead {
  if (NEGATIVE.test(text)) return problemOf('has a number below zero; counts and sizes are above it')
  const separator = separatorOf(text)
  const row = splitRow(text, separator)
  if (headings !== undefined && row.length > 1) {
    const spare = row.slice(headings.length).filter((cell) => cell !== '')
    if (spare.length > 0) return problemOf(`has more cells than the header; "${spare[0]}" is under none`)
    return readCells(cellsUnder(headings, row), settings)
  }
  // A comma within a number may be for decimals: with three or fewer it is not taken to part cells.
  const isTable = row.length > 1 && (separator !== ',' || row.length > 3 || !/\d,\d/u.test(text))
  const cells = isTable ? guessCells(row, settings) : undefined
  return cells === undefined ? readLine(text, settings) : readCells(cells, settings)
}

/** The unit that all lines which have one share. */
function sharedUnits(reads: readonly LineRead[]): UnitSystem | undefined {
  const units = new Set(reads.flatMap((read) => (read.status === 'part' && read.units ? [read.units] : [])))
  return units.size === 1 ? [...units][0] : undefined
}

function readAll(
  lines: readonly Line[],
  headings: readonly Heading[] | undefined,
  settings: ReadingSettings,
): LineRead[] {
  const reads = lines.map(({ text }) => readOne(text, headings, settings))
  const units = settings.units ?? sharedUnits(reads)
  if (units === undefined || settings.units !== undefined) return reads
  return reads.map((read, at) =>
    read.status === 'ambiguous' ? readOne(lines[at]!.text, headings, { ...settings, units }) : read,
  )
}

const describeHeader = (line: Line, headings: readonly Heading[]): string[] => [
  `line ${line.number} read as a header`,
  ...headings
    .filter(({ column, text }) => column === undefined && text !== '')
    .map(({ text }) => `column "${text}" is not used`),
]

/**
 * Reads a part list as people paste them: a line a part (`3 @ 4 ft`, `A 4x 23 15/16 x 18 ply`, `24x12 (x4)`), or a
 * table with commas, semicolons, tabs or bars, with or without a header. Where nobody has said the unit, bare numbers
 * take the one that all other lines share. Nothing is lost silently: what is no part is a problem or a note.
 */
export function readPartList(text: string, settings: ReadingSettings): PartList {
  const lines = linesOf(text)
  const [first] = lines
  const headings = first === undefined ? undefined : readHeader(first.text)
  const body = headings === undefined ? lines : lines.slice(1)
  const titles = body.filter(isTitle)
  const units = settings.units ?? titles.map((line) => unitOf(line.text)).find((unit) => unit !== undefined)
  const rows = body.filter((line) => !isTitle(line))
  const reads = readAll(rows, headings, { ...settings, units })
  const [own] = reads.flatMap((read) => (read.status === 'part' && read.units ? [read.units] : []))
  return {
    units: units ?? own,
    parts: reads.flatMap((read, at) =>
      read.status === 'part' ? [{ line: rows[at]!.number, ...read.part }] : [],
    ),
    problems: reads.flatMap((read, at) => {
      if (read.status === 'part') return []
      const { number, text: own } = rows[at]!
      return [{ line: number, text: own, problem: `line ${number}, "${own}": ${read.problem}` }]
    }),
    notes: [
      ...(headings === undefined ? [] : describeHeader(first!, headings)),
      ...titles.map((line) => `line ${line.number}, "${line.text}", has no size and was passed over`),
    ],
  }
}
