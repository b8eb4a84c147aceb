import type { Paper } from '../bot/handout/handout.ts'

/** Sizes in points, 72 to the inch: ISO 216 A4 is 210 x 297 mm, Letter is 8 1/2 x 11 in. */
export const SIZES: Readonly<Record<Paper, readonly [width: number, height: number]>> = {
  a4: [(210 / 25.4) * 72, (297 / 25.4) * 72],
  letter: [8.5 * 72, 11 * 72],
}

/** Every printer leaves a rim; this is wide enough for a clipboard too. */
export const MARGIN = 46

/** Kept free under the text for the foot and the page number. */
export const FOOT = 26

/** Sizes of type in points: the body is read at arm's length. */
export const TYPE = { title: 22, section: 16, subtitle: 11, heading: 12, body: 11, foot: 9 } as const

/** From one line to the next, as a part of the size. */
export const LEADING = 1.32

/** Ink, and a grey that still prints dark on every printer. */
export const INK = '#000000'
export const GREY = '#555555'
/** Behind the head of a table. */
export const TINT = '#e8e8e8'
