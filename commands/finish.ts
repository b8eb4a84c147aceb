import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { area, choice, count, first, product } from '../src/bot/option.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import { exposedArea, type Faces } from '../src/core/quantities/finishArea.ts'
import { finishNeeded } from '../src/core/quantities/finish.ts'

export default defineCommand({
  name: 'finish',
  summary: 'How much paint, stain or varnish to buy, by the can',
  examples: [
    'finish 40 sq ft product="latex paint" coats=2',
    'finish 3.5m2 product=varnish surface=rough',
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
    const { show, reference, settled } = context
    const surface = input.surface ?? 'smooth'
    const faces = input.faces ?? 'all'
    const chosen = input.product ?? reference.finishes[0]
    if (!chosen) throw new Refusal('fault', 'the settings know no finish; add one to config/finishes.yaml')
    const covered = input.area?.area ?? planArea(faces, context)
    const need = finishNeeded({
      area: covered,
      product: chosen,
      coats: input.coats,
      surface,
      region: settled.region,
      containers: reference.containers,
    })
    if (need.status === 'unknown')
      throw new Refusal('invalid', `${need.reason}; write surface=smooth, or another product`)
    const cans = need.containers.map(({ name, count: cans }) => `${cans} x ${name}`).join(' + ')
    return {
      answer: `Buy ${cans} of ${chosen.name}: ${show.volume(need.volume)} for ${need.coats} ${need.coats === 1 ? 'coat' : 'coats'} on ${show.area(covered)}`,
      cautions: context.cautions({ coats: need.coats, finishKind: chosen.kind }),
      notes: [
        `${show.volume(need.perCoat)} a coat: one ${show.units === 'inch' ? 'gallon' : 'litre'} covers ${show.area(coverageArea(need.coverage, show.units))}, the low end of what is claimed`,
        ...(need.waste > 0 ? [`${Math.round(need.waste * 100)} % added for tray, brush and rag`] : []),
        ...(input.area
          ? []
          : [
              `the parts of this channel's project, ${faces === 'all' ? 'both faces and all edges' : 'outside faces and all edges'} (faces=)`,
            ]),
        ...(input.product ? [] : [`reckoned with ${chosen.name} (product=)`]),
        ...(input.surface ? [] : ['smooth wood; sawn or weathered takes more (surface=rough)']),
      ],
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
const coverageArea = (coverage: number, units: 'inch' | 'metric'): number =>
  coverage * 1_000_000 * (units === 'inch' ? LITRES_IN_GALLON : 1)
