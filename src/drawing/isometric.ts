import { areaRound, overlap } from './area.ts'
import { contains, edgeDistance } from './crowd.ts'
import type { Facing, Point } from './scene.ts'
import type { Place, Solid } from './solids.ts'

/** Of 30 degrees, which the level edges of an isometric view make with the page. */
export const COSINE = Math.cos(Math.PI / 6)
export const SINE = 0.5

/** Where a place of the box is seen from the front right and above, in an isometric view: length, width and height to one scale. */
export const project = ([x, y, z]: Place, scale: number): Point => [
  (x + y) * COSINE * scale,
  ((x - y) * SINE - z) * scale,
]

/** A face of a solid that can be seen. */
export interface SeenFace {
  readonly facing: Facing
  readonly corners: readonly Place[]
}

/** The three faces of a block that are seen: its top, its front and its right end. */
export const seenFaces = ({
  low: [x, y, z],
  high: [X, Y, Z],
}: Pick<Solid, 'low' | 'high'>): readonly SeenFace[] => [
  {
    facing: 'up',
    corners: [
      [x, y, Z],
      [X, y, Z],
      [X, Y, Z],
      [x, Y, Z],
    ],
  },
  {
    facing: 'left',
    corners: [
      [x, y, z],
      [X, y, z],
      [X, y, Z],
      [x, y, Z],
    ],
  },
  {
    facing: 'right',
    corners: [
      [X, y, z],
      [X, Y, z],
      [X, Y, Z],
      [X, y, Z],
    ],
  },
]

type Block = Pick<Solid, 'low' | 'high'>

/** True where `one` lies behind `other`, on the far side of a plane between them, and on the near side of none. */
export function isBehind(one: Block, other: Block): boolean {
  const behind = one.high[0] <= other.low[0] || one.low[1] >= other.high[1] || one.high[2] <= other.low[2]
  const before = one.low[0] >= other.high[0] || one.high[1] <= other.low[1] || one.low[2] >= other.high[2]
  return behind && !before
}

/** Blocks in the order to paint them: each after all that lie behind it. */
export function farToNear<Each extends Block>(blocks: readonly Each[]): readonly Each[] {
  const ordered: Each[] = []
  const done = new Set<Each>()
  const visit = (block: Each): void => {
    if (done.has(block)) return
    done.add(block)
    for (const other of blocks) if (isBehind(other, block)) visit(other)
    ordered.push(block)
  }
  blocks.forEach(visit)
  return ordered
}

/** A point of an outline that can be seen, and how far it is from the nearest edge of anything. */
export interface SeenPoint {
  readonly at: Point
  readonly clear: number
}

const SPOTS = [0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92]

/** The point with most room round it that no later outline covers; undefined where all of the outline is covered. */
export function visiblePoint(
  outline: readonly Point[],
  later: readonly (readonly Point[])[],
): SeenPoint | undefined {
  const [a = [0, 0], b = [0, 0], , d = [0, 0]] = outline
  const at = (along: number, across: number): Point => [
    a[0] + (b[0] - a[0]) * along + (d[0] - a[0]) * across,
    a[1] + (b[1] - a[1]) * along + (d[1] - a[1]) * across,
  ]
  const own = areaRound(outline)
  const near = later.filter((each) => overlap(areaRound(each), own))
  let best: SeenPoint | undefined
  for (const across of SPOTS)
    for (const along of SPOTS) {
      const point = at(along, across)
      if (near.some((cover) => contains(cover, point))) continue
      let clear = edgeDistance(outline, point)
      for (const each of near) clear = Math.min(clear, edgeDistance(each, point))
      // The first is the middle, which looks best unless it is much too near to something.
      if (!best || clear > best.clear * 1.25) best = { at: point, clear }
    }
  return best
}
