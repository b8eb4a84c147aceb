import { breakLine, centred, line, NAME, rectangle, SMALL } from './marks.ts'
import { layPage } from './page.ts'
import type { Point, Scene, Shape } from './scene.ts'

/** The gap at each end of a captured corner stile over the year, in words with their unit. */
export interface GapAsked {
  readonly loosest: string
  readonly tightest: string
  /** True where the tightest is no gap at all. */
  readonly binds: boolean
  /** The stile's letter, where it is a part of a plan. */
  readonly label?: string | undefined
}

const WIDE = 150
const RAIL = 110
const STILE = 250
const GAP = { loose: 46, tight: 18, none: 0 } as const

/** A corner stile between its rails twice, in the driest month and in the wettest; gaps drawn wider than they are. */
export function drawCornerGap(asked: GapAsked): Scene {
  return layPage({
    title: 'The corner stile over a year',
    size: { width: 1, height: 1 },
    largest: 1,
    toScale: false,
    draw: () => [
      ...month(asked, 0, GAP.loose, 'driest month', asked.loosest, false),
      ...month(asked, 440, asked.binds ? GAP.none : GAP.tight, 'wettest month', asked.tightest, asked.binds),
    ],
    foot: [{ words: 'the gap at each end is drawn wider than it is' }],
  })
}

function month(
  { label }: GapAsked,
  left: number,
  gap: number,
  when: string,
  size: string,
  binds: boolean,
): readonly Shape[] {
  const right = left + WIDE
  const lower = RAIL + gap
  const foot = lower + STILE
  const rail = (top: number): Shape =>
    rectangle([left - 50, top], [right + 50, top + RAIL], {
      fill: 'strip',
      stroke: 'outline',
      of: 'side rail',
    })
  const stile = rectangle([left, lower], [right, foot], {
    fill: 'stripCut',
    stroke: 'outline',
    of: 'corner stile',
  })
  const middle: Point = [(left + right) / 2, lower + STILE / 2]
  const y = RAIL + gap / 2
  return [
    rail(0),
    stile,
    rail(foot + gap),
    line(breakLine([left - 50, foot + gap + RAIL], [right + 50, foot + gap + RAIL]), 'thin'),
    line(
      [
        [right, y],
        [right + 84, y],
      ],
      'pointer',
    ),
    { shape: 'text', text: size, size: NAME, at: [right + 92, y + 13], bold: true, tone: 'accent' },
    ...(binds ? [{ shape: 'text', text: 'binds', size: SMALL, at: [right + 92, y + 56] } as const] : []),
    ...(label === undefined ? [] : [centred(label, middle, NAME, { bold: true })]),
    centred(when, [middle[0], -40], NAME),
  ]
}
