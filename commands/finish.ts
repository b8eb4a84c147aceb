import { z } from 'zod'
import { cans } from '../src/bot/cans.ts'
import { defineCommand } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { area, choice, count, first, product } from '../src/bot/option.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { AreaRead } from '../src/core/measure/readArea.ts'
import type { UnitSystem } from '../src/core/measure/reading.ts'
import { showArea, showVolume } from '../src/core/measure/showAmounts.ts'
import { type FinishNeed, finishNeeded, type Surface } from '../src/core/quantities/finish.ts'
import { exposedArea, type Faces } from '../src/core/quantities/finishArea.ts'
import type { FinishProduct } from '../src/core/quantities/product.ts'
import type { Region } from '../src/core/stock/stock.ts'

export default defineCommand({
  name: 'finish',
  summary: 'How much paint, stain or varnish to buy, by the can',
  examples: [
    'finish 40 sq ft product=latex paint coats=2',
    'finish 3.5m2 product=oil stain surface=rough',
    'finish 4ft x 8ft coats=3',
  ],
  options: z.strictObject({
    area: first(area('the area of one coat, or the sides of a rectangle')).optional(),
    product: product('what goes on', 'latex paint').optional(),
    coats: count('how many coats', 1, 10).optional(),
    faces: choice('the outside of the panels, or all of them', ['outside', 'all']).optional(),
    surface: choice('planed and sanded, or sawn and weathered', ['smooth', 'rough']).optional(),
  }),
  run: (input, context) => {
    const { reference, settled } = context
    const chosen = input.product ?? reference.finishes[0]
    if (!chosen) throw new Refusal('fault', 'the settings know no finish; add one to config/finishes.yaml')
    const covered = input.area?.area ?? planArea(input.faces ?? 'all', context)
    const need = finishNeeded({
      area: covered,
      product: chosen,
      coats: input.coats,
      surface: input.surface ?? 'smooth',
      region: settled.region,
      containers: reference.containers,
    })
    if (need.status === 'unknown')
      throw new Refusal('invalid', `${need.reason}; write surface=smooth, or another product`)
    const volume = (millilitres: number) => showVolume(millilitres, canUnits(settled.region, context))
    const on = `${need.coats} ${need.coats === 1 ? 'coat' : 'coats'} on ${context.show.area(covered)}`
    return {
      answer: `Buy ${cans(need.containers)} of ${chosen.name}: ${volume(need.volume)} for ${on}`,
      cautions: context.cautions({ coats: need.coats, finishKind: chosen.kind }),
      notes: notes(input, need, chosen.name, context),
      figures: {
        area: covered,
        perCoat: need.perCoat,
        volume: need.volume,
        containers: need.containers.map((can) => ({ ...can })),
        product: chosen.name,
        coats: need.coats,
      },
    }
  },
})

interface Asked {
  readonly area?: AreaRead | undefined
  readonly product?: FinishProduct | undefined
  readonly coats?: number | undefined
  readonly faces?: Faces | undefined
  readonly surface?: Surface | undefined
}

/** A fluid ounce is not the same in every country that has one: where cans are metric, so is what goes in. */
const canUnits = (region: Region, { show }: Context): UnitSystem => (region === 'US' ? show.units : 'metric')

function notes(input: Asked, need: FinishNeed, name: string, context: Context): readonly string[] {
  const { show, settled } = context
  const units = canUnits(settled.region, context)
  const covers = showArea(coverageArea(need.coverage, units), show.units)
  return [
    `${showVolume(need.perCoat, units)} a coat: one ${units === 'inch' ? 'gallon' : 'litre'} covers ${covers}, the low end of what is claimed`,
    need.waste > 0 ? `${Math.round(need.waste * 100)} % added for tray, brush and rag` : '',
    facesLine(input),
    input.product ? '' : `reckoned with ${name} (product=)`,
    input.coats ? '' : `${need.coats} ${need.coats === 1 ? 'coat' : 'coats'}, as is usual for it (coats=)`,
    input.surface ? '' : 'smooth wood; sawn or weathered takes more (surface=rough)',
  ].filter((line) => line !== '')
}

function facesLine({ area, faces }: Asked): string {
  if (area) return faces ? 'faces= counts for the parts of a plan only; the area stands as you typed it' : ''
  return faces === 'outside'
    ? "the parts of this channel's project, outside faces and all edges (faces=)"
    : "the parts of this channel's project, both faces and all edges (faces=)"
}

function planArea(faces: Faces, context: Context): number {
  if (!context.project) {
    throw new Refusal(
      'invalid',
      'how much area? Write it first, such as 40 sq ft or 3.5 m2, or start a project in this channel',
    )
  }
  return exposedArea(planned(context.project.choices, context).plan.parts, faces)
}

const LITRES_IN_GALLON = 3.785411784

/** mm2 that a gallon or a litre covers, from m2/L. */
const coverageArea = (coverage: number, units: UnitSystem): number =>
  coverage * 1_000_000 * (units === 'inch' ? LITRES_IN_GALLON : 1)
