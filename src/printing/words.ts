import type { HandoutTask } from '../bot/handout/handout.ts'
import type { Desk } from './desk.ts'
import { GREY, INK, TYPE } from './paper.ts'
import type { Strip } from './strip.ts'
import { BOX, drawBox } from './tickBox.ts'
import { BASELINE, lineHeight, type Style } from './type.ts'

const BODY: Style = { face: 'body', size: TYPE.body }
const STRONG: Style = { face: 'strong', size: TYPE.body }

interface Lines {
  readonly text: string
  readonly style: Style
  readonly indent?: number
  readonly gap?: number
  readonly colour?: string
}

/** A text as strips, a line each, none of which stands alone on a page when there are few. */
function lineStrips(desk: Desk, { text, style, indent = 0, gap = 0, colour = INK }: Lines): readonly Strip[] {
  const { setter, left, width } = desk
  const height = lineHeight(style)
  const lines = setter.wrap(text, style, width - indent)
  return lines.map((line, index) => ({
    height,
    ...(index === 0 ? { gap } : {}),
    keep: index < lines.length - 1 && (index === 0 || index === lines.length - 2),
    draw: (y) => setter.draw(line, { x: left + indent, y: y + height * BASELINE }, style, colour),
  }))
}

/** A text over the whole width. */
export const wordStrips = (desk: Desk, text: string, strong: boolean): readonly Strip[] =>
  lineStrips(desk, { text, style: strong ? STRONG : BODY, gap: 6 })

const POINT_INDENT = 14

/** Lines with a dot before each. */
export const pointStrips = (desk: Desk, items: readonly string[]): readonly Strip[] =>
  items.flatMap((text, index) => {
    const gap = index === 0 ? 9 : 4
    const lines = lineStrips(desk, { text, style: BODY, indent: POINT_INDENT, gap })
    // The last of several never stands alone at the top of a page.
    const kept = index === items.length - 2 ? lines.map((strip) => ({ ...strip, keep: true })) : lines
    return withMark(kept, (y) => {
      const middle = y + lineHeight(BODY) * 0.5
      desk.doc.circle(desk.left + 4, middle, 1.8).fill(INK)
    })
  })

/** The first strip with something drawn beside it. */
function withMark(strips: readonly Strip[], mark: (y: number) => void): readonly Strip[] {
  const [first, ...rest] = strips
  if (!first) return strips
  const draw = (y: number, height: number): void => {
    mark(y)
    first.draw(y, height)
  }
  return [{ ...first, draw }, ...rest]
}

const TASK_INDENT = 24

/** Things to do, each with its box, its numbers in bold and how it is done; one is never broken over two pages. */
export const taskStrips = (desk: Desk, items: readonly HandoutTask[]): readonly Strip[] =>
  items.flatMap(({ ticked, heading, settings, words }) => {
    const heads = lineStrips(desk, { text: heading, style: STRONG, indent: TASK_INDENT, gap: 9 })
    const rest = [
      ...settings.flatMap((text) =>
        lineStrips(desk, { text, style: STRONG, indent: TASK_INDENT + 12, gap: 1 }),
      ),
      ...lineStrips(desk, { text: words, style: BODY, indent: TASK_INDENT, gap: 1 }),
    ]
    const boxed = withMark(heads, (y) =>
      drawBox(desk.doc, desk.left, y + (lineHeight(STRONG) - BOX) / 2, ticked),
    )
    const all = [...boxed, ...rest]
    return all.map((strip, index) => ({ ...strip, keep: index < all.length - 1 }))
  })

/** The name of a section, large, with a line under it. */
export function headingStrips(
  desk: Desk,
  title: string,
  onNewPage: boolean,
  begin: () => void,
): readonly Strip[] {
  const style: Style = { face: 'strong', size: TYPE.section }
  const lines = lineStrips(desk, { text: title, style, gap: 24 })
  const rule: Strip = {
    height: 6,
    keep: true,
    draw: (y) =>
      void desk.doc
        .lineWidth(1.2)
        .strokeColor(INK)
        .moveTo(desk.left, y + 2)
        .lineTo(desk.left + desk.width, y + 2)
        .stroke(),
  }
  const kept = lines.map((strip, index) => ({ ...strip, keep: true, onNewPage: onNewPage && index === 0 }))
  return [...withMark(kept, begin), rule]
}

/** The name of the whole, and which version of it this is. */
export const titleStrips = (desk: Desk, title: string, subtitle: string): readonly Strip[] => [
  ...lineStrips(desk, { text: title, style: { face: 'strong', size: TYPE.title } }),
  ...lineStrips(desk, { text: subtitle, style: { face: 'body', size: TYPE.subtitle }, gap: 2, colour: GREY }),
]
