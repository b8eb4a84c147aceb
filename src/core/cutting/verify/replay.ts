import type { CutTree, Rectangle } from '../problem.ts'

/** A part that the cuts set free: where, and how its leaf is marked. */
export interface FreedPart {
  readonly part: string
  readonly turned: boolean
  readonly at: Rectangle
}

/** What the cuts, made one after another, come to. `wrong` holds a sentence for each cut that cannot be made. */
export interface Replayed {
  readonly parts: readonly FreedPart[]
  readonly rests: readonly Rectangle[]
  readonly wrong: readonly string[]
}

type Cut = Extract<CutTree, { kind: 'cut' }>

/** The two rectangles beside a cut; the second has nothing left when the blade takes all of it. */
function cutApart(rectangle: Rectangle, cut: Cut, kerf: number): [Rectangle, Rectangle] {
  const { x, y, length, width } = rectangle
  if (cut.across === 'x') {
    const left = Math.max(0, length - cut.at - kerf)
    return [
      { x, y, length: cut.at, width },
      { x: x + cut.at + kerf, y, length: left, width },
    ]
  }
  const left = Math.max(0, width - cut.at - kerf)
  return [
    { x, y, length, width: cut.at },
    { x, y: y + cut.at + kerf, length, width: left },
  ]
}

const canCut = (rectangle: Rectangle, cut: Cut): boolean =>
  Number.isSafeInteger(cut.at) &&
  cut.at > 0 &&
  cut.at < (cut.across === 'x' ? rectangle.length : rectangle.width)

/** Makes every cut of `tree` in `whole`, and says what comes free. */
export function replayCuts(whole: Rectangle, tree: CutTree, kerf: number): Replayed {
  const parts: FreedPart[] = []
  const rests: Rectangle[] = []
  const wrong: string[] = []
  const waiting: [Rectangle, CutTree][] = [[whole, tree]]
  while (waiting.length > 0) {
    const [rectangle, node] = waiting.pop()!
    if (node.kind === 'part') parts.push({ part: node.part, turned: node.turned, at: rectangle })
    else if (node.kind === 'rest') rests.push(rectangle)
    else if (!canCut(rectangle, node))
      wrong.push(
        `a cut across ${node.across} at ${node.at} misses its piece at (${rectangle.x}, ${rectangle.y})`,
      )
    else {
      const [first, second] = cutApart(rectangle, node, kerf)
      waiting.push([second, node.second], [first, node.first])
    }
  }
  return { parts, rests, wrong }
}
