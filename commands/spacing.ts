import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import { choice, count, first, length } from '../src/bot/option.ts'
import { spacingPicture } from '../src/bot/picturesOfCuts.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Show } from '../src/bot/show.ts'
import { type Length, toMillimetres } from '../src/core/measure/length.ts'
import { type Spacing, type SpacingObstacle, spaceEvenly } from '../src/core/panelling/spacing.ts'

export default defineCommand({
  name: 'spacing',
  summary: 'Equal gaps between slats, screws or balusters',
  examples: [
    'spacing 36in piece=3 1/2in count=6',
    'spacing 75in piece=2in gap=3in',
    'spacing 900mm piece=70mm count=7 ends=flush',
  ],
  options: z.strictObject({
    span: first(length('the length to share out', '36in')),
    piece: length('width of one piece', '3 1/2in'),
    count: count('how many pieces', 1, 500).optional(),
    gap: length('the widest gap you want', '3in').optional(),
    ends: choice('a gap outside the end pieces, or pieces flush with the ends', ['gaps', 'flush']).optional(),
  }),
  run: ({ span, piece, count: pieces, gap, ends = 'gaps' }, { show }) => {
    if (pieces !== undefined && gap !== undefined)
      throw new Refusal('invalid', 'count= and gap= both settle the gap; keep one')
    if (pieces === undefined && gap === undefined)
      throw new Refusal('invalid', 'how many pieces, or how wide a gap at most? Add count=6 or gap=3in')
    const spaced = spaceEvenly({ span, piece, ends, count: pieces, gap })
    if (piece > span)
      throw new Refusal(
        'invalid',
        `one piece of ${show.length(piece)} is longer than the span of ${show.length(span)}; check both`,
      )
    if (spaced.status === 'impossible') throw new Refusal('invalid', sentence(spaced, show, piece, span))
    if (spaced.count === 0)
      throw new Refusal(
        'invalid',
        `the whole span of ${show.length(span)} is no wider than that gap, so no piece is needed; make gap= smaller`,
      )
    return {
      answer: answer(spaced, show),
      tables: [
        {
          title: `Where each piece starts (${show.unit})`,
          columns: ['Piece', 'Starts'],
          rows: spaced.starts.map((start, index) => [index + 1, { length: start }]),
        },
      ],
      pictures: [spacingPicture(span, piece, spaced, show)],
      notes: [
        ...(spaced.gap === 0 ? [] : [ENDS[ends]]),
        ...(gap ? [`no gap is wider than the ${show.length(gap)} asked for`] : []),
        'every start is measured from the same end, so that no error adds up',
      ],
      figures: { count: spaced.count, gap: toMillimetres(spaced.gap) },
    }
  },
})

const ENDS = {
  gaps: 'a gap outside the first and the last piece, so one gap more than pieces',
  flush: 'a piece flush at both ends, so one gap fewer than pieces',
} as const

function answer({ count: pieces, gaps, gap }: Spacing, show: Show): string {
  const said = pieces === 1 ? '1 piece' : `${pieces} pieces`
  if (gaps === 0 || gap === 0) return `${said} edge to edge: no gap is left`
  return gaps === 1
    ? `${said} with 1 gap of ${show.length(gap)}`
    : `${said} with ${gaps} gaps of ${show.length(gap)}`
}

function sentence(obstacle: SpacingObstacle, show: Show, piece: Length, span: Length): string {
  switch (obstacle.kind) {
    case 'tooMany':
      return `that many pieces of ${show.length(piece)} are longer than the span of ${show.length(span)}; ${obstacle.most} fit at most`
    case 'alone':
      return 'one piece cannot be flush with both ends; ask for two or more, or leave ends= out'
    case 'noCount':
      return obstacle.fewer
        ? `no number of pieces gives gaps that narrow; ${obstacle.fewer.count} pieces leave gaps of ${show.length(obstacle.fewer.gap)}, and one more does not fit`
        : 'no number of pieces gives gaps that narrow; ask for a wider gap'
    case 'notPositive':
      return 'the span, the piece and the gap must all be more than nothing'
  }
}
