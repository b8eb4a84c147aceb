import type { Placement, Rectangle, SheetLayout } from '../core/cutting/problem.ts'
import type { Length } from '../core/measure/length.ts'
import { type Area, areaOf, overlap, textArea } from './area.ts'
import { numberCuts } from './cuts.ts'
import { dimensionRows } from './dimensionRows.ts'
import { textAreas } from './labels.ts'
import { BIG, centred, line, rectangle, SMALL } from './marks.ts'
import { type Numbers, unitLine } from './numbers.ts'
import { type Entry, layPage } from './page.ts'
import type { Point, Polygon, Scene, Shape, Text } from './scene.ts'
import { DESCENT, textWidth } from './textWidth.ts'

/** One way that sheets are cut. `trim` is what comes off every edge before the first cut. */
export interface SheetAsked {
  readonly layout: SheetLayout
  readonly stock: { readonly length: number; readonly width: number }
  readonly kerf: number
  readonly trim: number
  /** Which of how many different sheets this is. */
  readonly which: { readonly number: number; readonly of: number }
  /** Numbers to show on the parts in place of those on the cuts: the saw setting that each comes free at. */
  readonly settings?: readonly (number | undefined)[] | undefined
}

/** A sheet with its parts, the cuts in order, the offcuts to keep and the waste. */
export function drawSheetLayout(asked: SheetAsked, numbers: Numbers): Scene {
  const { layout, stock, which, settings } = asked
  const copies = layout.count === 1 ? '' : `, cut ${layout.count} like this`
  const title = which.of === 1 ? `Sheet layout${copies}` : `Sheet ${which.number} of ${which.of}${copies}`
  return layPage({
    title,
    size: { width: stock.length, height: stock.width },
    draw: (scale) => drawn(asked, numbers, scale),
    foot: (shapes) => [
      ...(settings ? [{ words: 'after a letter: the saw setting it comes free at' }] : []),
      ...(settings ? [] : [{ words: orderWords(asked) }]),
      ...unwritten(asked, numbers),
      ...(layout.offcuts.length > 0 ? [{ words: 'hatched: keep' }] : []),
      ...unsized(layout, shapes, numbers),
      { words: 'dotted: waste' },
      { words: `sizes in ${unitLine(numbers)}` },
    ],
    tallest: 900,
  })
}

/** Beyond so many pieces some cuts find no room for their numbers, and beyond so many the numbers would hide the parts. */
const MANY_PIECES = 12
const MOST_PIECES = 40

const piecesOf = ({ layout }: SheetAsked): number => layout.placements.length + layout.offcuts.length

function orderWords(asked: SheetAsked): string {
  if (!isNumbered(asked)) return 'too many cuts to number: see the cut order'
  return `numbers are the cuts in order${piecesOf(asked) > MANY_PIECES ? ', where there is room' : ''}`
}

/** Parts too small for their letter, by their size. */
function unwritten({ layout }: SheetAsked, numbers: Numbers): readonly Entry[] {
  const parts = new Map(layout.placements.map((each) => [each.part, each]))
  return [...parts.values()].map(({ part, length, width }) => ({
    unwritten: part,
    words: `no room for ${part}: ${sizeText({ length, width }, numbers)}`,
  }))
}

/** The name of the text that says how large an offcut is. */
const keptSize = (index: number): string => `size of offcut ${index + 1}`

/** Offcuts to keep that are too narrow for their size, each size once. */
function unsized({ offcuts }: SheetLayout, shapes: readonly Shape[], numbers: Numbers): readonly Entry[] {
  const written = new Set(shapes.map(({ of }) => of))
  const sizes = offcuts.flatMap((each, index) =>
    written.has(keptSize(index)) ? [] : [sizeText(each, numbers)],
  )
  return [...new Set(sizes)].map((size) => {
    const count = sizes.filter((other) => other === size).length
    return { words: `no room for a size: keep ${size}${count > 1 ? ` (${count} of these)` : ''}` }
  })
}

const sizeText = ({ length, width }: Pick<Rectangle, 'length' | 'width'>, numbers: Numbers): string =>
  `${numbers.mark(length as Length, 'into')} x ${numbers.mark(width as Length, 'into')}`

const isNumbered = (asked: SheetAsked): boolean =>
  asked.settings === undefined && piecesOf(asked) <= MOST_PIECES

function drawn(asked: SheetAsked, numbers: Numbers, scale: number): readonly Shape[] {
  const { layout, stock } = asked
  const [wide, tall] = [stock.length * scale, stock.width * scale]
  const outline = rectangle([0, 0], [wide, tall], { fill: 'dotted', stroke: 'outline', of: 'sheet' })
  const place = ({ x, y, length, width }: Rectangle, look: Pick<Polygon, 'fill' | 'of'>): Polygon =>
    rectangle([x * scale, y * scale], [(x + length) * scale, (y + width) * scale], {
      ...look,
      stroke: 'thin',
    })
  const offcuts = layout.offcuts.map((each) => place(each, { fill: 'hatched', of: 'offcut' }))
  const parts = layout.placements.map((each) => place(each, { fill: 'sheet', of: each.part }))
  const sizes = [
    ...dimensionRows({ side: 'bottom', at: tall }, [
      { from: 0, to: wide, text: numbers.mark(stock.length as Length) },
    ]),
    ...dimensionRows({ side: 'left', at: 0 }, [
      { from: 0, to: tall, text: numbers.mark(stock.width as Length) },
    ]),
  ]
  const taken = [...textAreas(sizes)]
  const isCrowded = isNumbered(asked) && piecesOf(asked) > MANY_PIECES
  const names = layout.placements.flatMap((each, index) => {
    // Of many parts alike one says how large they are, and leaves the others room for the numbers of the cuts.
    const isSized = !isCrowded || layout.placements.findIndex(({ part }) => part === each.part) === index
    const area = areaOf(parts[index] ?? outline)
    const big = isCrowded && Math.min(area.right - area.left, area.bottom - area.top) < TIGHT ? SMALL : BIG
    return nameOf(
      each,
      area,
      { setting: asked.settings?.[index], isSized: isSized && big === BIG, big },
      numbers,
      taken,
    )
  })
  const kept = layout.offcuts.flatMap((each, index) =>
    sizeOf(sizeText(each, numbers), keptSize(index), areaOf(offcuts[index] ?? outline), taken),
  )
  const [lines, marks] = isNumbered(asked) ? cutShapes(asked, scale, taken) : [[], []]
  return [outline, ...offcuts, ...parts, ...lines, ...sizes, ...names, ...kept, ...marks]
}

const fits = (text: Text, area: Area, taken: readonly Area[]): boolean => {
  const own = textArea(text)
  // What reaches below the line is rare and small: the feet of a few letters.
  const foot = text.size * DESCENT
  const [right, bottom] = text.turn === -90 ? [own.right - foot, own.bottom] : [own.right, own.bottom - foot]
  return (
    own.left >= area.left + 4 &&
    right <= area.right - 4 &&
    own.top >= area.top + 2 &&
    bottom <= area.bottom - 2 &&
    taken.every((other) => !overlap(own, other, 4))
  )
}

/** The first of some texts that all fit, which is then taken. */
function firstThatFits(choices: readonly (readonly Text[])[], area: Area, taken: Area[]): readonly Text[] {
  const found = choices.find((texts) => texts.every((text) => fits(text, area, taken))) ?? []
  taken.push(...found.map(textArea))
  return found
}

/** How a part is named: the number of its setting, whether with its size, and how large its letter is. */
interface Lettering {
  readonly setting: number | undefined
  readonly isSized: boolean
  readonly big: number
}

/** A part smaller than this has a small letter, so that numbers of cuts find room beside it. */
const TIGHT = 100

/** The part's letter, with its size where there is room; the number of its setting after it. */
function nameOf(
  { part, length, width }: Placement,
  area: Area,
  { setting, isSized, big }: Lettering,
  numbers: Numbers,
  taken: Area[],
): readonly Text[] {
  const [x, y] = [(area.left + area.right) / 2, (area.top + area.bottom) / 2]
  const size = sizeText({ length, width }, numbers)
  const label = setting === undefined ? part : `${part} ${setting}`
  const above = (turn: 0 | -90): readonly Text[] =>
    turn === 0
      ? [
          centred(label, [x, y - BIG * 0.62], BIG, { bold: true, rim: false }),
          centred(size, [x, y + SMALL * 0.72], SMALL, { tone: 'soft', rim: false }),
        ]
      : [
          centred(label, [x - BIG * 0.62, y], BIG, { bold: true, turn, rim: false }),
          centred(size, [x + SMALL * 0.72, y], SMALL, { tone: 'soft', turn, rim: false }),
        ]
  const inLine = (turn: 0 | -90): readonly Text[] => {
    const [first, second] = [
      textWidth({ text: label, size: BIG, bold: true }),
      textWidth({ text: size, size: SMALL }),
    ]
    const start = (first + second + 20) / 2
    const at = (from: number, long: number): Point =>
      turn === 0 ? [x - start + from + long / 2, y] : [x, y + start - from - long / 2]
    return [
      centred(label, at(0, first), BIG, { bold: true, turn, rim: false }),
      centred(size, at(first + 20, second), SMALL, { tone: 'soft', turn, rim: false }),
    ]
  }
  return firstThatFits(
    [
      ...(isSized ? [above(0), inLine(0), above(-90), inLine(-90)] : []),
      [centred(label, [x, y], big, { bold: true, rim: false })],
      [centred(label, [x, y], big, { bold: true, turn: -90, rim: false })],
      [centred(label, [x, y], SMALL, { bold: true, rim: false })],
      [centred(label, [x, y], SMALL, { bold: true, turn: -90, rim: false })],
    ],
    area,
    taken,
  )
}

/** `keep` with the size, under the name `of`, where there is room; else `keep` alone. */
function sizeOf(size: string, of: string, area: Area, taken: Area[]): readonly Text[] {
  const at: Point = [(area.left + area.right) / 2, (area.top + area.bottom) / 2]
  return firstThatFits(
    [
      [centred(`keep ${size}`, at, SMALL, { of })],
      [
        centred('keep', [at[0], at[1] - SMALL * 0.7], SMALL),
        centred(size, [at[0], at[1] + SMALL * 0.7], SMALL, { of }),
      ],
      [centred(`keep ${size}`, at, SMALL, { turn: -90, of })],
      [centred('keep', at, SMALL)],
      [centred('keep', at, SMALL, { turn: -90 })],
    ],
    area,
    taken,
  )
}

/** Where along a cut its number may stand. */
const SPOTS = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]

/** Half of the disc that a cut's number stands in. */
const DISC = 21

/** Every cut as a line, with its number where it goes: at its start, further along, or not at all. */
function cutShapes(
  { layout, stock, kerf, trim }: SheetAsked,
  scale: number,
  taken: Area[],
): readonly [readonly Shape[], readonly Shape[]] {
  const whole = { x: trim, y: trim, length: stock.length - 2 * trim, width: stock.width - 2 * trim }
  const cuts = numberCuts(layout.cuts, whole, kerf)
  const lines = cuts.map(({ across, at, from, to }): Shape => {
    const ends = [from, to].map(
      (along): Point => (across === 'x' ? [at * scale, along * scale] : [along * scale, at * scale]),
    )
    return line(ends, 'cut', 'cut')
  })
  const discs = cuts.flatMap(({ number, across, at, from, to }): readonly Shape[] => {
    const text = String(number)
    const half = Math.max(DISC, textWidth({ text, size: SMALL, bold: true }) / 2 + 7)
    const spot = SPOTS.map((part): Point => {
      const inset = Math.min(half + 6, ((to - from) * scale) / 2)
      const along = (from + (to - from) * part) * scale + inset * (1 - 2 * part)
      return across === 'x' ? [at * scale, along] : [along, at * scale]
    }).find(([x, y]) => {
      const own = { left: x - half, right: x + half, top: y - DISC, bottom: y + DISC }
      return (to - from) * scale > 2 * DISC && taken.every((other) => !overlap(own, other, 3))
    })
    if (!spot) return []
    const [x, y] = spot
    taken.push({ left: x - half, right: x + half, top: y - DISC, bottom: y + DISC })
    return [
      rectangle([x - half, y - DISC], [x + half, y + DISC], { fill: 'paper', stroke: 'cut' }),
      centred(text, [x, y], SMALL, { bold: true, tone: 'accent' }),
    ]
  })
  return [lines, discs]
}
