import { z } from 'zod'
import { cans } from '../src/bot/cans.ts'
import { defineCommand } from '../src/bot/command.ts'
import {
  dewFigure,
  dryingFigures,
  dryingNotes,
  dryingOf,
  dryingTables,
  isTooDamp,
  recoatFigure,
} from '../src/bot/finishDrying.ts'
import { coverageLine, filmNotes, finishWanted, volumeUnits } from '../src/bot/finishNeed.ts'
import { coveredArea, finishPlanOptions, surfaceFigures, surfaceTables } from '../src/bot/finishPlan.ts'
import { area, choice, count, first, percent, product, temperature } from '../src/bot/option.ts'
import { exampleNote, priceBook } from '../src/bot/prices.ts'
import { showVolume } from '../src/core/measure/showAmounts.ts'
import type { FinishNeed } from '../src/core/quantities/finish.ts'

const options = z.strictObject({
  area: first(area('the area of one coat, or the sides of a rectangle')).optional(),
  product: product('what goes on', 'latex paint').optional(),
  coats: count('how many coats', 1, 10).optional(),
  faces: choice('the outside of the panels, or all of them', ['outside', 'all']).optional(),
  surface: choice('planed and sanded, or sawn and weathered', ['smooth', 'rough']).optional(),
  temperature: temperature('of the air and the wood while it dries').optional(),
  humidity: percent('of the air while it dries', '50%').optional(),
  ...finishPlanOptions,
})
type Asked = z.output<typeof options>

export default defineCommand({
  name: 'finish',
  summary: 'Paint, stain or varnish: how much to buy by the can, part by part, and when it is dry',
  examples: [
    'finish 40 sq ft product=latex paint coats=2',
    'finish 3.5m2 product=oil stain surface=rough',
    'finish 4ft x 8ft coats=3 temperature=60F humidity=70%',
    'finish object=17in x 13in height=15in grooves=3 product=varnish',
  ],
  options,
  idle: [
    {
      option: 'faces',
      what: 'the parts of a box',
      how: 'object= in place of the area',
      isUsed: ({ input }) => input.area === undefined,
    },
  ],
  run: async (input, context) => {
    const { settled, show } = context
    const { product: typed, coats, surface, temperature: degrees, humidity, ...box } = input
    const covered = coveredArea(box, context)
    const book = await priceBook(context)
    const { chosen, need } = finishWanted({ ...covered, product: typed, coats, surface }, book, context)
    const air = { temperature: degrees, humidity }
    const drying = dryingOf(chosen, need.coats, air, context)
    const volume = showVolume(need.volume, volumeUnits(settled.region, context))
    const on = `${need.coats} ${need.coats === 1 ? 'coat' : 'coats'} on ${show.area(covered.area)}`
    const example = need.containers
      .map(({ name }) => `${chosen.name} ${name}`)
      .find((item) => book.priceOf(item)?.isExample)
    return {
      answer: `Buy ${cans(need.containers)} of ${chosen.name}: ${volume} for ${on}${isTooDamp(drying) ? '; too damp to put on now' : ''}`,
      cautions: context.cautions({
        coats: need.coats,
        finishKind: chosen.kind,
        temperature: degrees?.celsius,
      }),
      tables: [...surfaceTables(covered, context), ...dryingTables(drying, context)],
      notes: [
        coverageLine(need, context),
        ...(need.waste > 0 ? [`${Math.round(need.waste * 100)} % added for tray, brush and rag`] : []),
        ...(covered.note === '' ? [] : [covered.note]),
        ...filmNotes(need, show),
        ...dryingNotes(drying, chosen, air, context),
        ...assumptions(input, need, chosen.name),
        ...(need.cost === undefined ? [] : [`${book.show(need.cost)}, the least that holds it`]),
        ...exampleNote(book, example !== undefined, example),
      ],
      figures: {
        area: covered.area,
        perCoat: need.perCoat,
        volume: need.volume,
        containers: need.containers.map(({ name, millilitres, count: bought }) => ({
          name,
          millilitres,
          count: bought,
        })),
        product: chosen.name,
        coats: need.coats,
        left: need.left,
        cost: need.cost === undefined ? null : need.cost / 100,
        wetFilm: need.wetFilm,
        dryFilm: need.dryFilm ?? null,
        parts: surfaceFigures(covered),
        drying: dryingFigures(drying),
        recoatHours: recoatFigure(drying),
        dewPoint: dewFigure(drying),
      },
    }
  },
})

const assumptions = (input: Asked, need: FinishNeed, name: string): readonly string[] => [
  ...(input.product ? [] : [`reckoned with ${name} (product=)`]),
  ...(input.coats
    ? []
    : [`${need.coats} ${need.coats === 1 ? 'coat' : 'coats'}, as is usual for it (coats=)`]),
  ...(input.surface ? [] : ['smooth wood; sawn or weathered takes more (surface=rough)']),
]
