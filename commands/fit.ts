import { z } from 'zod'
import { type CornerYear, cornerYear } from '../src/bot/capturedCorner.ts'
import { defineCommand } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { choice, count, first, length, percent, sheet, species, temperature } from '../src/bot/option.ts'
import { gapPicture } from '../src/bot/picturesOfCuts.ts'
import type { Figure, Picture } from '../src/bot/reply.ts'
import type { Show } from '../src/bot/show.ts'
import { stockSize } from '../src/bot/stockSize.ts'
import { inches, millimetres, minus, toMillimetres } from '../src/core/measure/length.ts'
import { showPercent } from '../src/core/measure/showAir.ts'
import { caliperMark, showCaliper } from '../src/core/measure/showCaliper.ts'
import type { Fits } from '../src/core/moisture/cornerFit.ts'
import { PLACES } from '../src/core/moisture/seasons.ts'
import { CUTS } from '../src/core/moisture/species.ts'

export default defineCommand({
  name: 'fit',
  summary: 'Will the knock-down corner slide after paint, all year, and what to take off if not',
  examples: [
    'fit 1/32in where=outdoors coats=2',
    'fit 1mm sheet=12.3mm tolerance=0.2mm coats=3 driest=30% wettest=75%',
    'fit 1/16in sheet=1/2 ply wood=SPF moisture=9%',
  ],
  options: z.strictObject({
    fit: first(length('gap at each end of a corner stile, as cut', '1/32in', { zero: true })).optional(),
    sheet: sheet('the sheet as you measured it, or its label').optional(),
    tolerance: length('how much thicker or thinner it gets', '1/64in', { zero: true }).optional(),
    coats: count('coats of finish on every face', 0, 10).optional(),
    where: choice('where it stands all year', PLACES).optional(),
    driest: percent('humidity of the air in the driest month', '30%').optional(),
    wettest: percent('humidity of the air in the wettest month', '75%').optional(),
    temperature: temperature('of that air').optional(),
    moisture: percent('of the wood now, by a meter', '9%').optional(),
    wood: species('what the strips are').optional(),
    cut: choice('how the rings lie to the face of the strips', CUTS).optional(),
    width: length('face width of the strips', '1 1/2in').optional(),
    strip: length('thickness of the strips', '1/2in').optional(),
  }),
  idle: [
    {
      option: 'where',
      what: 'a month whose air was not said',
      how: 'leave driest= or wettest= out',
      isUsed: ({ input }) => !(input.driest && input.wettest),
    },
    {
      option: 'temperature',
      what: 'air whose humidity was said',
      how: 'driest= or wettest=',
      isUsed: ({ input }) => input.driest !== undefined || input.wettest !== undefined,
    },
  ],
  run: (input, context) => {
    const corner = cornerYear(input, context)
    const { show } = context
    return {
      answer: answer(corner, show),
      cautions: context.cautions({}),
      pictures: [gapOfYear(corner, show)],
      tables: [
        {
          title: `Gap at each end (${show.unit})`,
          columns: ['Month', 'Wood', 'Gap'],
          rows: [
            ['driest', showPercent(corner.year.driest), caliperMark(corner.fit.loosest, show.units)],
            ['wettest', showPercent(corner.year.wettest), caliperMark(corner.fit.tightest, show.units)],
          ],
        },
      ],
      notes: [
        allowanceNote(corner, show),
        ...looseNotes(corner, show),
        ...flushNotes(corner, show),
        ...corner.notes,
      ],
      buttons: button(corner, context),
      figures: figures(corner),
    }
  },
})

/** Less than this to take off, over both ends, is a stroke of sandpaper: 0.1 mm. */
const SANDED = millimetres(0.1)

/** Whether the stiles are to be cut: they bind, or want more than a stroke of sandpaper. */
const isCut = ({ fit }: CornerYear): boolean => fit.fits !== 'always' || fit.takeFrom.amount > SANDED

/** What is wrong with the corner as it is, for one that should be changed. */
const WRONG: Readonly<Record<Fits, string>> = {
  always: 'it slides all year, but too tight for a hand in the wettest month',
  'dry only': 'it binds in the wettest month',
  'unpainted only': 'once painted it never goes in',
  never: 'it never goes in',
}

function answer(corner: CornerYear, show: Show): string {
  const { fit, gap, label } = corner
  const { amount } = fit.takeFrom
  const stile = label === undefined ? 'corner stile' : `corner stile ${label}`
  if (isCut(corner))
    return `Cut ${show.mark(amount, 'cover', true)} ${show.unit} off the length of each ${stile}: ${WRONG[fit.fits]}`
  return `Leave each ${stile} as it is: a fit of ${stockSize(gap, show)} slides all year, ${showCaliper(fit.tightest, show.units)} at the tightest`
}

/** The gap in the driest and the wettest month, each as a calliper reads it. */
const gapOfYear = ({ fit, label }: CornerYear, { units }: Show): Picture =>
  gapPicture({
    loosest: showCaliper(fit.loosest, units),
    tightest: showCaliper(fit.tightest, units),
    binds: fit.tightest <= 0,
    label,
  })

const allowanceNote = ({ fit }: CornerYear, { units }: Show): string => {
  const of = (length: CornerYear['gap']) => showCaliper(length, units)
  return `each end asks for ${of(fit.allowance)}: paint ${of(fit.film)}, two rails swelling ${of(fit.growth)}, push fit ${of(fit.pushFit)}`
}

/** A gap wider than asked for by this shows, and lets the corner rattle: 1/8 in. */
const SHOWS = inches(1, 8)

const looseNotes = ({ fit, gap }: CornerYear, show: Show): readonly string[] =>
  minus(gap, fit.allowance) > SHOWS
    ? [
        `so wide a gap shows and rattles: fit=${show.mark(fit.allowance, 'cover', true)}${show.unit} would do, by longer stiles`,
      ]
    : []

function flushNotes({ flush }: CornerYear, { units }: Show): readonly string[] {
  const { proudest, shyest, lip, overhang } = flush
  const side = (length: CornerYear['gap']): string =>
    length >= 0
      ? `${showCaliper(length, units)} proud`
      : `${showCaliper(Math.abs(length) as CornerYear['gap'], units)} back`
  return [
    `the face of an end comes between ${side(shyest)} and ${side(proudest)} of the rail ends; thickness never binds`,
    ...(proudest > 0
      ? [`for none to stand proud, overhang the side rails ${showCaliper(overhang, units)}`]
      : []),
    lip.least > 0
      ? `the lip keeps ${showCaliper(lip.least, units)} at the least`
      : 'a thick sheet takes the whole lip: measure it, and use wider strips (width=)',
  ]
}

/** One tap cuts the plan's stiles to the allowance. */
function button(corner: CornerYear, { show }: Context) {
  const { fit, label } = corner
  if (label === undefined || !isCut(corner)) return []
  return [
    {
      label: 'Change the plan',
      line: `project change fit=${show.mark(fit.allowance, 'cover', true)}${show.unit}`,
    },
  ]
}

const figures = ({ fit, flush, year }: CornerYear): Readonly<Record<string, Figure>> => ({
  moisture: year.assembled,
  // Of one rail across its face, from the driest month to the wettest.
  change: toMillimetres(fit.seasonal) / 2,
  loosest: toMillimetres(fit.loosest),
  tightest: toMillimetres(fit.tightest),
  allowance: toMillimetres(fit.allowance),
  takeOff: toMillimetres(fit.takeFrom.amount),
  fits: fit.fits,
  film: toMillimetres(fit.film),
  growth: toMillimetres(fit.growth),
  pushFit: toMillimetres(fit.pushFit),
  driest: year.driest,
  wettest: year.wettest,
  proudest: toMillimetres(flush.proudest),
  shyest: toMillimetres(flush.shyest),
  lipLeast: toMillimetres(flush.lip.least),
  lipMost: toMillimetres(flush.lip.most),
  overhang: toMillimetres(flush.overhang),
})
