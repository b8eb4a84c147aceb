import type { LengthLayout } from '../core/cutting/problem.ts'
import type { Length } from '../core/measure/length.ts'
import { type Area, areaOf, overlap, textArea } from './area.ts'
import { BIG, centred, NAME, rectangle, SMALL } from './marks.ts'
import { type Numbers, unitLine } from './numbers.ts'
import { type Entry, layPage } from './page.ts'
import type { Polygon, Scene, Shape, Text } from './scene.ts'

/** Boards or strips cut across, one row for each way of cutting one. */
export interface BoardsAsked {
  readonly kind: 'board' | 'strip'
  readonly layouts: readonly LengthLayout[]
  /** The length of each by its name. */
  readonly stock: readonly (readonly [name: string, length: number])[]
  readonly parts: readonly (readonly [name: string, length: number])[]
  readonly kerf: number
  readonly trim: number
  /** A remainder from here up is kept. */
  readonly keepable: number
}

interface Lengths {
  readonly stock: ReadonlyMap<string, number>
  readonly parts: ReadonlyMap<string, number>
}

/** More rows than these are left to the table. */
const MOST = 9

const DEEP = 74
const ROW = 138

/** Boards one under the other, lengths to one scale: parts in order from the trimmed end, and what is kept. */
export function drawBoardLayouts(asked: BoardsAsked, numbers: Numbers): Scene {
  const { layouts, kind } = asked
  const lengths = { stock: new Map(asked.stock), parts: new Map(asked.parts) }
  const shown = layouts.slice(0, MOST)
  const left = layouts.length - shown.length
  const longest = Math.max(...shown.map((layout) => lengths.stock.get(layout.stock) ?? 0))
  return layPage({
    title: kind === 'board' ? 'Boards, cut from the left' : 'Strips, cut from the left',
    size: { width: longest, height: longest / 1000 },
    draw: (scale) =>
      shown.flatMap((layout, row) => rowShapes(layout, row, { ...asked, ...lengths }, numbers, scale)),
    foot: [
      ...(left > 0 ? [{ words: `and ${left} more in the table` }] : []),
      ...unwritten(shown, lengths, numbers),
      ...(shown.some((layout) => isKept(layout, asked)) ? [{ words: 'hatched: keep' }] : []),
      { words: 'dotted: waste' },
      { words: `sizes in ${unitLine(numbers)}; lengths to scale` },
    ],
    tallest: MOST * ROW,
  })
}

const isKept = ({ offcut }: LengthLayout, { keepable }: Pick<BoardsAsked, 'keepable'>): boolean =>
  offcut > 0 && offcut >= keepable

/** Parts too short for their letter, by their length. */
const unwritten = (shown: readonly LengthLayout[], { parts }: Lengths, numbers: Numbers): readonly Entry[] =>
  [...new Set(shown.flatMap((layout) => layout.parts))].map((part) => ({
    unwritten: part,
    words: `no room for ${part}: ${numbers.mark((parts.get(part) ?? 0) as Length, 'into')}`,
  }))

function rowShapes(
  layout: LengthLayout,
  row: number,
  { stock, parts, kerf, trim, keepable, kind }: Omit<BoardsAsked, keyof Lengths> & Lengths,
  numbers: Numbers,
  scale: number,
): readonly Shape[] {
  const long = stock.get(layout.stock) ?? 0
  const top = row * ROW + 46
  const piece = (from: number, to: number, look: Pick<Polygon, 'fill' | 'of' | 'stroke'>): Polygon =>
    rectangle([from * scale, top], [to * scale, top + DEEP], look)
  const many = `${layout.count} ${kind}${layout.count === 1 ? '' : 's'} of ${numbers.mark(long as Length)}`
  const shapes: Shape[] = [
    { shape: 'text', text: many, size: SMALL, at: [0, top - 16], tone: 'soft' },
    piece(0, long, { fill: 'dotted', stroke: 'outline', of: layout.stock }),
  ]
  let at = trim
  const taken: Area[] = []
  for (const part of layout.parts) {
    const length = parts.get(part) ?? 0
    const shape = piece(at, at + length, { fill: 'strip', stroke: 'thin', of: part })
    shapes.push(shape, ...nameIn(areaOf(shape), part, numbers.mark(length as Length, 'into'), taken))
    at += length + kerf
  }
  if (isKept(layout, { keepable })) {
    const shape = piece(long - layout.offcut, long, { fill: 'hatched', stroke: 'thin', of: 'offcut' })
    const size = numbers.mark(layout.offcut as Length, 'into')
    shapes.push(shape, ...nameIn(areaOf(shape), `keep ${size}`, '', taken, SMALL))
  }
  return shapes
}

/** A letter with its length after it where that goes, else the letter alone, upright at last, else nothing. */
function nameIn(area: Area, name: string, size: string, taken: Area[], letter = BIG): readonly Text[] {
  const [x, y] = [(area.left + area.right) / 2, (area.top + area.bottom) / 2]
  const bold = size !== ''
  const choices: readonly (readonly Text[])[] = [
    ...(size === '' ? [] : [[centred(`${name} ${size}`, [x, y], NAME, { bold, rim: false })]]),
    [centred(name, [x, y], letter, { bold, rim: !bold })],
    [centred(name, [x, y], SMALL, { bold, rim: !bold })],
    ...(size === '' ? [] : [[centred(name, [x, y], SMALL, { bold, turn: -90, rim: !bold })]]),
    ...(size === '' ? [[centred('keep', [x, y], SMALL)]] : []),
  ]
  const found = choices.find((texts) =>
    texts.every((text) => {
      const own = textArea(text)
      return (
        own.left >= area.left + 5 &&
        own.right <= area.right - 5 &&
        own.top >= area.top &&
        own.bottom <= area.bottom &&
        taken.every((each) => !overlap(own, each, 4))
      )
    }),
  )
  taken.push(...(found ?? []).map(textArea))
  return found ?? []
}
