import { z } from 'zod'
import { defineAction, defineVerbs } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import type { Listed } from '../src/bot/cutList.ts'
import { isSheets } from '../src/bot/laidJob.ts'
import { layoutFigures } from '../src/bot/layoutFigures.ts'
import { layOut, partsToCut, searchTerms } from '../src/bot/layoutJob.ts'
import { BY, type By, findMost } from '../src/bot/layoutMost.ts'
import { fromPiece, NO_END, readPiece, readWorths, sectionLike } from '../src/bot/layoutMostParts.ts'
import { jobOf, madeTable, mostAnswer, mostFigures, mostNotes } from '../src/bot/layoutMostReply.ts'
import { jobNotes, layoutAnswer, takeTable } from '../src/bot/layoutReply.ts'
import { layoutTables } from '../src/bot/layoutTables.ts'
import { wasteOf } from '../src/bot/layoutValue.ts'
import { nearMissNotes } from '../src/bot/nearMiss.ts'
import { choice, count, first, length, words, yes } from '../src/bot/option.ts'
import { layoutPictures } from '../src/bot/picturesOfLayouts.ts'
import { stockMoney } from '../src/bot/prices.ts'
import { readParts } from '../src/bot/readParts.ts'
import { Refusal } from '../src/bot/refusal.ts'
import { sawKerf } from '../src/bot/sawKerf.ts'
import { sawTerms, shopStockSchema, type Stocked } from '../src/bot/shopStock.ts'
import { showKept } from '../src/bot/showKept.ts'

const seconds = count('how long to look for better', 1, 8).optional()

const least = defineAction({
  summary: 'The least stock for the list: how many sheets and boards, and which part comes out of which',
  options: z.strictObject({ seconds }),
  run: async ({ seconds = 0 }, context) => {
    const { settings, settled } = context
    const job = await layOut(context, seconds || settings.search.seconds, searchTerms(context))
    const waste = Math.round(wasteOf(job) * 100)
    const more = job.groups.some(({ optimal }) => !optimal) && seconds < 8
    return {
      answer: layoutAnswer(job, await stockMoney(context)),
      cautions: context.cautions({ sheetCut: job.groups.some(isSheets), crosscut: true }),
      tables: [...takeTable(job), ...layoutTables(job)],
      pictures: layoutPictures(job),
      notes: [
        `${waste} % waste, kept offcuts not counted; kerf ${job.show.length(settled.kerf, 'mark', true)}`,
        ...nearMissNotes(job),
        ...jobNotes(job),
        ...(more ? ['more time may find better: layout seconds=8'] : []),
      ],
      buttons: [{ label: 'Cut order', line: 'cutorder' }],
      figures: layoutFigures(job),
    }
  },
})

const most = defineAction({
  summary: 'The most that one piece, or the stock on hand, gives: of one part, or of several by their worth',
  options: z.strictObject({
    parts: first(words('parts as in a cut list; the list itself where left out', '12in x 5in')).optional(),
    from: words(
      'the piece: a sheet, a board or a length; the stock on hand where left out',
      '2ft x 4ft',
    ).optional(),
    by: choice('the most pieces, the most wood in them, or the most worth', BY).optional(),
    worth: words('what each part is worth', 'A 12, B 7.50').optional(),
    strip: length('crosscut the parts from strips so thick, ripped from boards', '1/2in').optional(),
    kerf: length('what the blade takes', '1/8in', { zero: true }).optional(),
    grain: yes('the grain runs along the length, so they may not be turned').optional(),
    seconds,
  }),
  run: async (input, context) => {
    const terms = searchTerms(context)
    const shop = await context.ofChannel('stock', shopStockSchema).read()
    const wanted = await partsOf(input, context)
    const piece = input.from === undefined ? undefined : readPiece(input.from, context)
    const parts = piece ? fromPiece(wanted.parts, piece) : wanted.parts
    const worths = input.worth === undefined ? new Map<string, number>() : readWorths(input.worth, parts)
    const show = showKept(context, wanted.units)
    const kerf = sawKerf(input.kerf, show) ?? context.settled.kerf
    const saw = { ...sawTerms(shop, context), kerf }
    const by = input.by ?? chosenBy(parts, worths)
    if (by === 'worth' && worths.size === 0)
      throw new Refusal('invalid', 'worth of what? Say what each part is worth, such as worth=A 12, B 7.50')
    const asked = {
      parts,
      stock: piece ? [sectionLike(piece, wanted.parts)] : onHand(shop?.items),
      saw,
      by,
      worths,
    }
    const found = await findMost(asked, input.seconds ?? context.settings.search.seconds, context, terms)
    const replied = { asked, found, show, currency: shop?.currency }
    const job = jobOf(replied)
    return {
      answer: mostAnswer(replied),
      cautions: context.cautions({ sheetCut: job.groups.some(isSheets), crosscut: true }),
      tables: [madeTable(replied, wanted.limited), ...layoutTables(job)],
      pictures: layoutPictures(job),
      notes: [
        ...wanted.notes,
        ...mostNotes(replied),
        `kerf ${show.length(kerf, 'mark', true)}${mayTurn(parts) ? '; parts may be turned (grain=yes if not)' : ''}`,
        ...(job.groups.some(({ optimal }) => !optimal) && (input.seconds ?? 0) < 8
          ? ['more time may find more: seconds=8']
          : []),
      ],
      figures: mostFigures(replied),
    }
  },
})

const mayTurn = (parts: readonly Listed[]): boolean =>
  parts.some(({ from, grain }) => from === 'sheet' && !grain)

interface Wanted {
  readonly parts: readonly Listed[]
  /** Labels of the parts of which there shall be no more than their count. */
  readonly limited: ReadonlySet<string>
  readonly units: 'inch' | 'metric' | undefined
  readonly notes: readonly string[]
}

/** The parts that were typed, of which as many as can be are wanted where no line says how many; else the channel's. */
async function partsOf(
  {
    parts: typed,
    strip,
    grain = false,
  }: {
    readonly parts?: string | undefined
    readonly strip?: Listed['length'] | undefined
    readonly grain?: boolean | undefined
  },
  context: Context,
): Promise<Wanted> {
  if (typed === undefined) {
    const { parts, units } = await partsToCut(context)
    return { parts, limited: new Set(parts.map(({ label }) => label)), units, notes: [] }
  }
  const { parts, uncounted, units, notes } = readParts(typed, { strip, grain, later: false }, [], context)
  const free = new Set(uncounted)
  return {
    parts: parts.map((part) => (free.has(part.label) ? { ...part, count: NO_END } : part)),
    limited: new Set(parts.flatMap(({ label }) => (free.has(label) ? [] : [label]))),
    units,
    notes,
  }
}

/** What nobody said: worth where it is given, pieces where there is one kind, else wood. */
const chosenBy = (parts: readonly Listed[], worths: ReadonlyMap<string, number>): By =>
  worths.size > 0 ? 'worth' : parts.length === 1 ? 'count' : 'size'

function onHand(items: readonly Stocked[] = []): readonly Stocked[] {
  const own = items.filter((item) => item.onHand !== undefined)
  if (own.length > 0) return own
  throw new Refusal(
    'invalid',
    'nothing is on hand; say what it comes out of, such as from=2ft x 4ft, or list it: stock add 2ft x 4ft sheet=1/2 ply count=1',
  )
}

export default defineVerbs({
  name: 'layout',
  summary: 'Which part comes out of which sheet or board: the least stock for the list, or the most of it',
  examples: [
    'layout',
    'layout seconds=5',
    'layout most 12in x 5in from=2ft x 4ft',
    'layout most 11 13/16in from=2x4x8',
    'layout most 14in x 9in; 8in x 8in from=2ft x 4ft worth=A 12, B 7.50',
  ],
  verbs: { least, most },
  fallback: 'least',
})
