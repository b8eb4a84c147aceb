import { MOST_COPIES } from './listedPart.ts'

/** A line with its count taken out; `rest` is what is left of it. */
export type Counted =
  | { readonly status: 'counted'; readonly count: number | undefined; readonly rest: string }
  | { readonly status: 'problem'; readonly problem: string }

const SPOKEN = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]
const PIECES = "(?:off|pcs?|pieces?|ea|each|required|req'?d|nos?|nr|sets?)"

/** The ways people write how many, each with the number as its group `count`; tried in this order. */
const FORMS: readonly RegExp[] = [
  /\(\s*(?:[x×*]\s*|qty\.?\s*:?\s*)?(?<count>\d+)\s*(?:[x×*]|off|pcs?\.?|pieces?|ea\.?|each)?\s*\)/giu,
  /(?<![\p{L}\d])(?:qty|quantity|count)\b\.?\s*[:=]?\s*(?<count>\d+)(?![\d./])/giu,
  /(?<![\p{L}\d./])(?<count>\d+)\s*@/gu,
  new RegExp(String.raw`(?<![\p{L}\d./])(?<count>\d+)\s*${PIECES}(?!\p{L})\.?(?:\s+of\b)?`, 'giu'),
  // "4x 23 15/16 x 18": a size has the same room on both sides of its x.
  /(?<![\p{L}\d./]|[x×*]\s*)(?<count>\d+)[x×*]\s+(?=[\d¼½¾⅛⅜⅝⅞])/giu,
  new RegExp(String.raw`^(?<count>${SPOKEN.join('|')})(?=\s)`, 'giu'),
]

const numberOf = (text: string): number => {
  const spoken = SPOKEN.indexOf(text.toLowerCase())
  return spoken < 0 ? Number(text) : spoken + 1
}

/** `2x4`, `2x4x8`: whether a word begins with the name of a board. */
const isBoard = (word: string, boards: ReadonlySet<string>): boolean =>
  boards.has(/^\d+(?:\/\d+)?[x×]\d+/iu.exec(word)?.[0]?.toLowerCase().replace('×', 'x') ?? '')

/** A board and its length in `text`, in whatever order; then nothing but a count can follow. */
function isWholeBoard(text: string, boards: ReadonlySet<string>): boolean {
  const numbers = text.split(/\s+/u).filter((word) => /\d/u.test(word))
  const board = numbers.find((word) => isBoard(word, boards))
  return board !== undefined && (numbers.length > 1 || /[x×].+[x×]/iu.test(board))
}

/** A count that stands before or after a board: `10 x 2x4x8`, `8ft 2x4 x3`, `2x4 8ft 3x`, and `x3` in front of anything. */
function takeBeside(line: string, boards: ReadonlySet<string>): { count: string; rest: string } | undefined {
  const [, first, afterFirst = ''] = /^[x×*](\d+)\s+(.*)$/iu.exec(line) ?? []
  if (first !== undefined) return { count: first, rest: afterFirst }
  const [, before, board = ''] = /^(\d+)\s*[x×*]\s+(\S.*)$/iu.exec(line) ?? []
  if (before !== undefined && isBoard(board, boards)) return { count: before, rest: board }
  const [, text = '', times, timed] = /^(.*\S)\s+(?:[x×*]\s*(\d+)|(\d+)\s*[x×*])$/iu.exec(line) ?? []
  const count = times ?? timed
  return count !== undefined && isWholeBoard(text, boards) ? { count, rest: text } : undefined
}

/**
 * Takes how many out of a line: `3 @`, `(x4)`, `4x `, `4 off`, `2 pcs`, `qty 4`, `three `, `8ft 2x4 x3`; `boards` are the
 * names of boards. Two counts are a problem.
 */
export function takeCount(line: string, boards: ReadonlySet<string> = new Set()): Counted {
  const beside = takeBeside(line, boards)
  const counts: number[] = beside ? [Number(beside.count)] : []
  let rest = beside?.rest ?? line
  for (const form of FORMS)
    rest = rest.replace(form, (match: string, ...groups: unknown[]) => {
      const { count } = groups.at(-1) as { count: string }
      counts.push(numberOf(count))
      return ' '.repeat(Math.min(1, match.length))
    })
  if (counts.length > 1)
    return {
      status: 'problem',
      problem: `gives two counts, ${counts.join(' and ')}; write one, such as 4 @ 24 x 18in`,
    }
  const [count] = counts
  if (count !== undefined && (count < 1 || count > MOST_COPIES))
    return { status: 'problem', problem: `asks for ${count} of them; write a count from 1 to ${MOST_COPIES}` }
  return { status: 'counted', count, rest: rest.trim() }
}
