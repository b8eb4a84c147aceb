import { type Area, areaOf, joined } from './area.ts'
import { BIG, SMALL } from './marks.ts'
import type { Point, Scene, Shape, Text } from './scene.ts'
import { LACKING_WORDS, shownSigns } from './signs.ts'
import { textWidth } from './textWidth.ts'

/** A page is as wide as this, so that a size of writing is a share of its width. */
export const PAGE = 1000
export const MARGIN = 36

/** One entry at the foot of a page: a letter and what it stands for, or only words. */
export interface Entry {
  readonly key?: string | undefined
  /** A letter that the drawing has no room for: left out where it is in the drawing, alone or with a number after it. */
  readonly unwritten?: string | undefined
  readonly words: string
}

/** What goes on a page. */
export interface Sheet {
  readonly title: string
  /** How large the thing is in nanometres, as it lies on the page. */
  readonly size: { readonly width: number; readonly height: number }
  /** The drawing at a scale, in units of the page for a nanometre, anywhere on the page. */
  readonly draw: (scale: number) => readonly Shape[]
  /** What is put on the drawing once its scale is settled, as letters are; the scale gives way where they stick out. */
  readonly name?: ((shapes: readonly Shape[], scale: number) => readonly Shape[]) | undefined
  /** An entry whose letter is not in the drawing is left out. What depends on the drawing is told from its shapes. */
  readonly foot: readonly Entry[] | ((shapes: readonly Shape[]) => readonly Entry[])
  /** The drawing is never taller. */
  readonly tallest?: number | undefined
  /** The largest scale that is sensible. */
  readonly largest?: number | undefined
  /** False for a drawing that is not true to scale. */
  readonly toScale?: boolean | undefined
}

const ROOM = PAGE - 2 * MARGIN
const TALLEST = 860

/** Lays out a page: a title, the drawing as large as it goes with all its sizes, and what the letters mean. */
export function layPage({
  title,
  size,
  draw,
  name,
  foot,
  tallest = TALLEST,
  largest,
  toScale = true,
}: Sheet): Scene {
  const over = (area: Area): number =>
    Math.max(area.right - area.left - ROOM, area.bottom - area.top - tallest)
  const highest = Math.min(ROOM / size.width, tallest / size.height, largest ?? Number.POSITIVE_INFINITY)
  const { scale, shapes, area } = withNames(largestThatFits(highest, draw, over), { draw, name }, over)
  const heading = titleLines(title)
  const top = MARGIN + heading.height
  const width = Math.max(PAGE, area.right - area.left + 2 * MARGIN)
  const moved = shapes.map((shape) =>
    moveShape(shape, [(width - area.right - area.left) / 2, top - area.top]),
  )
  const bottom = top + area.bottom - area.top
  const written = new Set(shapes.map((shape) => (shape.shape === 'text' ? shape.text : '')))
  const isWritten = (letter: string): boolean =>
    written.has(letter) || [...written].some((text) => text.startsWith(`${letter} `))
  const explained = (typeof foot === 'function' ? foot(shapes) : foot).filter(
    ({ key, unwritten }) =>
      (key === undefined || written.has(key)) && (unwritten === undefined || !isWritten(unwritten)),
  )
  const isLacking = [...written].some((text) => shownSigns(text) !== text.normalize('NFC'))
  const words = isLacking ? [{ words: LACKING_WORDS }] : []
  const footer = footLines([...explained, ...words], bottom + 28)
  return {
    width,
    height: footer.bottom + MARGIN - 8,
    shapes: [...moved, ...heading.shapes, ...footer.shapes].map(withShownSigns),
    ...(toScale ? { scale } : {}),
  }
}

const withShownSigns = (shape: Shape): Shape =>
  shape.shape === 'text' ? { ...shape, text: shownSigns(shape.text) } : shape

interface Fitted {
  readonly scale: number
  readonly shapes: readonly Shape[]
  readonly area: Area
}

const TRIES = 12
/** Near enough to the largest. */
const CLOSE = 0.985

/**
 * What is drawn grows nearly in step with the scale, beside numbers that keep their size: the largest scale is between one that
 * fits and one that does not, about where a straight line between them has it.
 */
function largestThatFits(highest: number, draw: Sheet['draw'], over: (area: Area) => number): Fitted {
  const at = (scale: number): Fitted => {
    const shapes = draw(scale)
    return { scale, shapes, area: joined(shapes.map(areaOf)) }
  }
  let high = at(highest)
  if (over(high.area) <= 0) return high
  let low = at(highest / 16)
  for (let tries = 0; tries < TRIES && low.scale < high.scale * CLOSE; tries += 1) {
    const [below, above] = [over(low.area), over(high.area)]
    // Not even the smallest fits: the page will have to grow.
    if (below > 0) return low
    const part = Math.min(0.95, Math.max(0.05, (-below / (above - below)) * 0.995))
    const tried = at(low.scale + (high.scale - low.scale) * part)
    if (over(tried.area) <= 0) low = tried
    else high = tried
  }
  return low
}

const SHRINKS = 5

/** Names added, at a scale that leaves them room. */
function withNames(
  fitted: Fitted,
  { draw, name }: Pick<Sheet, 'draw' | 'name'>,
  over: (area: Area) => number,
): Fitted {
  if (!name) return fitted
  let { scale } = fitted
  let best = fitted
  for (let shrinks = 0; shrinks <= SHRINKS; shrinks += 1) {
    const drawn = shrinks === 0 ? fitted.shapes : draw(scale)
    const shapes = [...drawn, ...name(drawn, scale)]
    best = { scale, shapes, area: joined(shapes.map(areaOf)) }
    if (over(best.area) <= 0) return best
    scale *= 1 - Math.min(0.4, (over(best.area) / ROOM) * 1.1 + 0.01)
  }
  return best
}

/** A shape moved over the page. */
export function moveShape(shape: Shape, [dx, dy]: Point): Shape {
  const moved = ([x, y]: Point): Point => [x + dx, y + dy]
  return shape.shape === 'text'
    ? { ...shape, at: moved(shape.at) }
    : { ...shape, points: shape.points.map(moved) }
}

function titleLines(title: string): { readonly shapes: readonly Text[]; readonly height: number } {
  const size = BIG
  const lines = wrap(title.split(' '), (text) => textWidth({ text, size, bold: true }) <= ROOM)
  return {
    shapes: lines.map((text, row) => ({
      shape: 'text',
      text,
      size,
      bold: true,
      at: [MARGIN, MARGIN + size * (0.76 + 1.25 * row)],
    })),
    height: lines.length * size * 1.25 + 34,
  }
}

/** Words into lines that fit. */
export function wrap(words: readonly string[], fits: (line: string) => boolean): readonly string[] {
  const lines: string[] = []
  for (const word of words) {
    const last = lines.at(-1)
    if (last !== undefined && fits(`${last} ${word}`)) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}

const ENTRY_GAP = 36
const LINE = SMALL * 1.5

/** Entries side by side, in as many lines as they take. */
function footLines(entries: readonly Entry[], from: number) {
  const shapes: Text[] = []
  let [x, y] = [MARGIN, from + SMALL * 0.76]
  for (const { key, words } of entries.flatMap(inParts)) {
    const keyWidth = key === undefined ? 0 : textWidth({ text: `${key} `, size: SMALL, bold: true })
    const width = keyWidth + textWidth({ text: words, size: SMALL })
    if (x > MARGIN && x + width > PAGE - MARGIN) {
      x = MARGIN
      y += LINE
    }
    if (key !== undefined) shapes.push({ shape: 'text', text: key, size: SMALL, bold: true, at: [x, y] })
    shapes.push({ shape: 'text', text: words, size: SMALL, at: [x + keyWidth, y], tone: 'soft' })
    x += width + ENTRY_GAP
  }
  return { shapes, bottom: shapes.length === 0 ? from - 28 : y + SMALL * 0.24 }
}

/** Between two words, but not between a whole number and its fraction. */
const BETWEEN = / (?!\d+\/\d)/u

/** An entry too long for a line goes on in the next. */
function inParts({ key, words }: Entry): readonly Entry[] {
  const indent = key === undefined ? 0 : textWidth({ text: `${key} `, size: SMALL, bold: true })
  const lines = wrap(words.split(BETWEEN), (text) => textWidth({ text, size: SMALL }) + indent <= ROOM)
  return lines.map((line, index) => (index === 0 ? { key, words: line } : { words: line }))
}
