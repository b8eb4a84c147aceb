import type { Group, NoStock, SheetGroup } from '../core/cutting/job.ts'
import type { LengthProblem, SheetPart, StockSheet } from '../core/cutting/problem.ts'
import { inches, type Length, millimetres } from '../core/measure/length.ts'
import { Refusal } from './refusal.ts'
import type { Show } from './show.ts'
import { stockMark } from './stockSize.ts'

/** A part that was not cut; `proven` that no time would change it. */
interface Misfit {
  readonly part: string
  readonly proven: boolean
}

/** The refusal of a list with a part that cannot be cut. */
export class PartMisfit extends Refusal implements Misfit {
  readonly part: string
  readonly proven: boolean
  constructor({ part, proven }: Misfit, sentence: string) {
    super('invalid', sentence)
    this.part = part
    this.proven = proven
  }
}

/** Why `part` cannot be cut from the stock of its group, in the units of the person who asked, and what would do. */
export function misfitSentence({ part, proven }: Misfit, group: Group, show: Show): string {
  const sentence = group.kind === 'sheet' ? largeSheet(part, group, show) : longBoard(part, group, show)
  return sentence ?? tooFew(part, group, proven)
}

const size = ({ length, width }: { length: number; width: number }, show: Show): string =>
  `${show.mark(length as Length, 'mark', true)} x ${show.length(width as Length, 'mark', true)}`

const within = (part: SheetPart, { length, width, net }: StockSheet, trim: number): boolean => {
  const off = net ? 0 : 2 * trim
  return part.length <= length - off && part.width <= width - off
}

const turned = (part: SheetPart): SheetPart => ({ ...part, length: part.width, width: part.length })

function largeSheet(id: string, group: SheetGroup, show: Show): string | undefined {
  const { parts, stock, trim } = group.problem
  const part = parts.find((one) => one.id === id)
  if (!part || stock.length === 0) return undefined
  const fits = (one: SheetPart) => stock.some((sheet) => within(one, sheet, trim))
  if (fits(part) || (part.turnable && fits(turned(part)))) return undefined
  if (fits(turned(part)))
    return `part ${id}, ${size(part, show)} with the grain along its length, fits a sheet only when turned; let it turn with: cutlist change ${id} grain=no`
  const largest = stock.reduce((a, b) => (b.length * b.width > a.length * a.width ? b : a))
  const trimmed =
    trim > 0 && !largest.net ? `, less ${show.length(trim as Length)} of trim on every edge` : ''
  return `part ${id}, ${size(part, show)}, is larger than any sheet: the largest is ${largest.id}, ${size(largest, show)}${trimmed}${instead(part, group, show)}`
}

/** Sheets sold to order, larger than the usual one: long side and short side (sizes: config/sheets.yaml). */
const TO_ORDER = {
  inch: [
    { length: inches(120), width: inches(48), words: '4ft x 10ft' },
    { length: inches(144), width: inches(48), words: '4ft x 12ft' },
    { length: millimetres(3050), width: millimetres(1525), words: '1525mm x 3050mm' },
  ],
  metric: [
    { length: millimetres(3050), width: millimetres(1220), words: '1220mm x 3050mm' },
    { length: millimetres(3050), width: millimetres(1525), words: '1525mm x 3050mm' },
  ],
} as const

/** The line that lists a sheet sold to order on which a panel fits: `stock add 4ft x 10ft sheet=1/2in`; undefined where none is large enough. */
export function largerSheet(
  { length, width }: { readonly length: number; readonly width: number },
  thickness: Length,
  show: Show,
): string | undefined {
  const [long, short] = [Math.max(length, width), Math.min(length, width)]
  const found = TO_ORDER[show.units].find((sheet) => long <= sheet.length && short <= sheet.width)
  return found && `stock add ${found.words} sheet=${stockMark(thickness, show)}${show.unit}`
}

const piecesOf = (id: string): string =>
  `list its pieces to be joined in its place (cutlist remove ${id}, cutlist add)`

/** What would do in place of a sheet that is too small. */
function instead(part: SheetPart, { thickness }: SheetGroup, show: Show): string {
  const larger = largerSheet(part, thickness, show)
  const join = piecesOf(part.id)
  return larger === undefined ? `. Or ${join}` : `. Some shops order larger ones: ${larger}; or ${join}`
}

function longBoard(
  id: string,
  { kind, problem }: { readonly kind: string; readonly problem: LengthProblem },
  show: Show,
): string | undefined {
  const { parts, stock, trim } = problem
  const part = parts.find((one) => one.id === id)
  if (!part || stock.length === 0) return undefined
  const longest = stock.reduce((a, b) => (b.length > a.length ? b : a))
  if (part.length <= longest.length - trim) return undefined
  const trimmed = trim > 0 ? `, less ${show.length(trim as Length)} of trim` : ''
  const what = kind === 'strip' ? 'board that it can be ripped from' : 'board that suits it'
  return `part ${id}, ${show.length(part.length as Length, 'mark', true)} long, is longer than any ${what}: the longest is ${longest.id}, ${show.length(longest.length as Length, 'mark', true)}${trimmed}. List a longer one where a yard has it (stock add), or ${piecesOf(id)}`
}

const tooFew = (part: string, { kind }: Group, proven: boolean): string => {
  const [what, example] =
    kind === 'sheet'
      ? ['sheets', 'stock add 4ft x 8ft sheet=1/2 ply']
      : ['boards', 'stock add 2x4x8 price=4.20']
  if (!proven)
    return `no way was found in the time given to cut part ${part} from the ${what} on hand; more time may find one (layout seconds=8), or add what the shop sells, such as: ${example}`
  return `the ${what} on hand run out before part ${part} is cut; add what the shop sells, such as: ${example}`
}

/** Nothing on the list suits these parts, and the region has nothing usual that does. */
export function noStockSentence({ parts, from }: NoStock, show: Show): string {
  const [first] = parts
  const label = first?.label ?? ''
  if (!first || from === 'sheet')
    return `no sheet on the stock list suits part ${label}; add one, such as: stock add 4ft x 8ft sheet=1/2 ply`
  const longest = parts.reduce((a, b) => (b.length > a.length ? b : a))
  const section = [first.thickness, first.width]
    .flatMap((side) => (side === undefined ? [] : [show.length(side, 'mark', true)]))
    .join(' x ')
  const what = from === 'strip' ? `strips ${section}` : section || 'any section'
  return `no board suits part ${longest.label}, ${show.length(longest.length, 'mark', true)} of ${what}; add one, such as: stock add 2x4x8`
}
