import { z } from 'zod'
import { defineCommand, type Idle } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { board, count, first, length } from '../src/bot/option.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Cell, Reply } from '../src/bot/reply.ts'
import { stockMark, stockSize } from '../src/bot/stockSize.ts'
import { FOOT, type Length, times, toMillimetres } from '../src/core/measure/length.ts'
import type { BoardRead } from '../src/core/measure/readBoard.ts'
import { showDecimal } from '../src/core/measure/showDecimal.ts'
import { boardFeet, linearTotals, nominalSection } from '../src/core/quantities/boardFeet.ts'

const options = z.strictObject({
  board: first(board('the board, by name or by measured section', '2x4x14')).optional(),
  length: length('length of each', '8ft').optional(),
  count: count('how many', 1, 10_000).optional(),
})
type Asked = z.output<typeof options>

export default defineCommand({
  name: 'boardfeet',
  summary: 'Board feet by nominal and by actual size, and how much length in all',
  examples: [
    'boardfeet 2x4x14 count=24',
    'boardfeet 1x12 length=10ft',
    'boardfeet 38mm x 140mm length=2.4m count=6',
  ],
  options,
  idle: (['length', 'count'] as const).map(
    (option): Idle<Asked> => ({
      option,
      what: 'boards',
      how: 'write one first, such as 2x4x14',
      isUsed: ({ input }) => input.board !== undefined,
    }),
  ),
  run: (input, context) => {
    if (input.board) return countBoards(input, input.board, context)
    if (context.project) return countStrips(context)
    throw new Refusal(
      'invalid',
      'which boards? Write them first, such as 2x4x14, or start a project in this channel for its strips',
    )
  },
})

/** One board foot is 144 in3: 0.00235974 m3. */
const CUBIC_METRES = 144 * 0.0254 ** 3

function countBoards(input: Asked, read: BoardRead, context: Context): Reply {
  const { show, settled } = context
  const { thickness, width, name } = read
  const long = input.length ?? read.length
  if (long === undefined)
    throw new Refusal('invalid', 'how long is the board? Add length=8ft, or write it as 2x4x8')
  const pieces = input.count ?? read.count ?? 1
  const all = times(long, pieces)
  const actual = boardFeet({ thickness, width, basis: 'actual' }, all)
  // Elsewhere a name is the size in mm, which is nominal too, but nobody sells by the board foot.
  const section = settled.region === 'US' && name !== undefined ? nominalSection(name) : undefined
  const nominal = section && boardFeet(section, all)
  const counted = nominal ?? actual
  return {
    answer: `${showDecimal(counted, 2)} board feet${nominal === undefined ? '' : ' nominal, as lumber is sold'}; ${linear(all, context)} in all`,
    notes: [
      ...(nominal === undefined
        ? ['by its actual size; a US name such as 2x4 counts as lumber is sold']
        : [
            `${showDecimal(actual, 2)} board feet of wood by actual size, ${show.mark(thickness, 'mark', true)} x ${show.length(width, 'mark', true)}`,
          ]),
      `${showDecimal(actual * CUBIC_METRES, 4)} m³ of wood`,
    ],
    figures: {
      nominal: nominal ?? null,
      actual,
      each: counted / pieces,
      linear: toMillimetres(all),
      count: pieces,
    },
  }
}

/** `112 ft` or `34.1 m`. */
const linear = (total: Length, { show }: Context): string =>
  show.units === 'inch'
    ? `${showDecimal(total / FOOT, 2)} ft`
    : `${showDecimal(toMillimetres(total) / 1000, 2)} m`

function countStrips(context: Context): Reply {
  const { show } = context
  const { plan } = planned(context.project?.choices ?? {}, context)
  const { strip, width } = plan.spec
  const strips = plan.parts.filter(({ material }) => material === 'strip')
  const total = linearTotals(
    strips.map(({ name, length: long, count: pieces }) => ({ section: name, length: long, count: pieces })),
  )
  const all = total.reduce((sum, { length: long }) => sum + long, 0) as Length
  const actual = boardFeet({ thickness: strip, width, basis: 'actual' }, all)
  return {
    answer: `${linear(all, context)} of strip ${stockMark(strip, show)} x ${stockSize(width, show)}, ${showDecimal(actual, 2)} board feet of wood`,
    tables: [
      {
        title: `Length in all (${show.units === 'inch' ? 'ft' : 'm'})`,
        columns: ['No', 'Length', 'For'],
        rows: total.map(({ count: pieces, length: long, section }): Cell[] => [
          pieces,
          linear(long, context).replace(/ \D+$/u, ''),
          section,
        ]),
      },
    ],
    notes: [
      'by actual size, kerf and waste left out; layout says which boards to take',
      "the strips of this channel's project",
    ],
    figures: {
      nominal: null,
      actual,
      linear: toMillimetres(all),
      count: strips.reduce((sum, { count: pieces }) => sum + pieces, 0),
      sections: total.map(({ section, count: pieces, length: long }) => ({
        section,
        count: pieces,
        length: toMillimetres(long),
      })),
    },
  }
}
