import type { HandoutCell, HandoutColumn, HandoutTable } from '../bot/handout/handout.ts'
import { columnWidths, type Wish } from './columnWidths.ts'
import type { Desk } from './desk.ts'
import { GREY, INK, TINT, TYPE } from './paper.ts'
import type { Strip } from './strip.ts'
import { BOX, BOX_GAP, drawBox } from './tickBox.ts'
import { BASELINE, lineHeight, type Style } from './type.ts'

const HEAD: Style = { face: 'strong', size: TYPE.body - 1 }
const PAD = 5
const ROW_PAD = 3.5
/** Boxes side by side in one cell. */
const MOST_BOXES = 4

const styleOf = ({ strong }: HandoutColumn): Style => ({ face: strong ? 'strong' : 'body', size: TYPE.body })

/** A table as strips, a row each. */
export function tableStrips(desk: Desk, { title, columns, rows }: HandoutTable): readonly Strip[] {
  const room = desk.width - 2 * PAD * columns.length
  const widths = columnWidths(
    columns.map((column, index) =>
      wishOf(
        desk,
        column,
        rows.map((row) => row[index] ?? ''),
      ),
    ),
    room,
  )
  const grid: Grid = { desk, columns, widths }
  const head = headStrip(grid)
  const name = title === undefined ? [] : [titleStrip(desk, title)]
  return [
    ...name,
    { ...head, gap: title === undefined ? 8 : 3 },
    ...rows.map((row, index) => ({
      ...rowStrip(grid, row),
      head,
      // Neither the first row nor the last stands alone.
      keep: rows.length > 1 && (index === 0 || index === rows.length - 2) && index < rows.length - 1,
    })),
  ]
}

interface Grid {
  readonly desk: Desk
  readonly columns: readonly HandoutColumn[]
  readonly widths: readonly number[]
}

function wishOf({ setter }: Desk, column: HandoutColumn, cells: readonly HandoutCell[]): Wish {
  const style = styleOf(column)
  const whole = cells.map((cell) =>
    typeof cell === 'string' ? setter.width(cell, style) : boxesWidth(cell.boxes),
  )
  const words = cells.map((cell) =>
    typeof cell === 'string'
      ? Math.max(0, ...cell.split(' ').map((word) => setter.width(word, style)))
      : boxesWidth(cell.boxes),
  )
  const heading = column.heading.split(' ').map((word) => setter.width(word, HEAD))
  return {
    natural: Math.max(setter.width(column.heading, HEAD), ...whole) + 0.5,
    least: Math.max(...heading, ...words) + 0.5,
  }
}

const boxesWidth = (boxes: number): number => {
  const across = Math.min(boxes, MOST_BOXES)
  return across * BOX + Math.max(0, across - 1) * BOX_GAP
}

function titleStrip({ setter, left, width }: Desk, title: string): Strip {
  const style: Style = { face: 'strong', size: TYPE.heading }
  const height = lineHeight(style)
  const lines = setter.wrap(title, style, width)
  return {
    height: height * lines.length,
    gap: 14,
    keep: true,
    draw: (y) =>
      lines.forEach((line, row) => {
        setter.draw(line, { x: left, y: y + height * (row + BASELINE) }, style)
      }),
  }
}

function headStrip(grid: Grid): Strip {
  const { desk, columns, widths } = grid
  const texts = columns.map(({ heading }, index) => desk.setter.wrap(heading, HEAD, widths[index] ?? 0))
  const height = lineHeight(HEAD) * Math.max(...texts.map(({ length }) => length)) + 2 * ROW_PAD
  return {
    height,
    keep: true,
    draw: (y) => {
      desk.doc.rect(desk.left, y, desk.width, height).fill(TINT)
      rule(desk, y + height, 1, INK)
      eachCell(grid, (x, width, index) => {
        writeLines(desk, texts[index] ?? [], { x, y: y + ROW_PAD, width, right: columns[index]?.right }, HEAD)
      })
    },
  }
}

function rowStrip(grid: Grid, row: readonly HandoutCell[]): Strip {
  const { desk, columns, widths } = grid
  const texts = row.map((cell, index) =>
    typeof cell === 'string'
      ? desk.setter.wrap(cell, styleOf(columns[index] ?? NONE), widths[index] ?? 0)
      : [],
  )
  const line = lineHeight({ face: 'body', size: TYPE.body })
  const inside = Math.max(
    ...row.map((cell, index) =>
      typeof cell === 'string' ? line * (texts[index]?.length ?? 1) : boxesHeight(cell.boxes),
    ),
  )
  const height = inside + 2 * ROW_PAD
  return {
    height,
    draw: (y) => {
      eachCell(grid, (x, width, index) => {
        const cell = row[index] ?? ''
        const column = columns[index] ?? NONE
        if (typeof cell !== 'string') drawBoxes(desk, cell, x, y + ROW_PAD + (line - BOX) / 2)
        else
          writeLines(
            desk,
            texts[index] ?? [],
            { x, y: y + ROW_PAD, width, right: column.right },
            styleOf(column),
          )
      })
      rule(desk, y + height, 0.5, GREY)
    },
  }
}

const NONE: HandoutColumn = { heading: '' }

const boxesHeight = (boxes: number): number => {
  const line = lineHeight({ face: 'body', size: TYPE.body })
  return line + (Math.ceil(boxes / MOST_BOXES) - 1) * (BOX + BOX_GAP)
}

function drawBoxes(
  { doc }: Desk,
  { boxes, ticked = 0 }: Exclude<HandoutCell, string>,
  x: number,
  y: number,
): void {
  for (let index = 0; index < boxes; index += 1) {
    const [column, row] = [index % MOST_BOXES, Math.floor(index / MOST_BOXES)]
    drawBox(doc, x + column * (BOX + BOX_GAP), y + row * (BOX + BOX_GAP), index < ticked)
  }
}

function eachCell(
  { desk, columns, widths }: Grid,
  visit: (x: number, width: number, index: number) => void,
): void {
  let x = desk.left
  columns.forEach((_, index) => {
    const width = widths[index] ?? 0
    visit(x + PAD, width, index)
    x += width + 2 * PAD
  })
}

function writeLines(
  { setter }: Desk,
  lines: readonly string[],
  {
    x,
    y,
    width,
    right = false,
  }: { readonly x: number; readonly y: number; readonly width: number; readonly right: boolean | undefined },
  style: Style,
): void {
  const height = lineHeight(style)
  lines.forEach((line, row) => {
    setter.draw(
      line,
      { x: right ? x + width : x, y: y + height * (row + BASELINE), anchor: right ? 'end' : 'start' },
      style,
    )
  })
}

const rule = ({ doc, left, width }: Desk, y: number, thick: number, colour: string): void => {
  doc
    .lineWidth(thick)
    .strokeColor(colour)
    .moveTo(left, y)
    .lineTo(left + width, y)
    .stroke()
}
