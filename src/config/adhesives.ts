import { z } from 'zod'
import { celsius } from '../core/moisture/equilibrium.ts'
import type { GlueTables } from '../core/quantities/glueProduct.ts'
import type { Container, Range } from '../core/quantities/product.ts'
import { REGIONS } from '../core/stock/stock.ts'
import { lengthText, ratio, written } from './amounts.ts'
import { coverageText, hoursText, volumeText } from './rates.ts'

/** Pascals of one pound to the square inch. */
const POUND_PER_SQUARE_INCH = 6894.757293168

/** A temperature as the source prints it, in degrees Celsius. */
const temperatureText = written('a temperature such as "40 F" or "4 C"', (text) => {
  const [, degrees, unit] = /^(-?\d+(?:\.\d+)?) ([FC])$/.exec(text) ?? []
  if (degrees === undefined) return undefined
  return unit === 'F' ? celsius(Number(degrees)) : Number(degrees)
})

const oneTime = hoursText.transform(({ high }) => high)

const psi = z
  .tuple([z.number().positive(), z.number().positive()])
  .transform(
    ([low, high]): Range => ({ low: low * POUND_PER_SQUARE_INCH, high: high * POUND_PER_SQUARE_INCH }),
  )

const span = z.tuple([lengthText, lengthText]).transform(([low, high]) => ({ low, high }))

const adhesive = z.strictObject({
  name: z.string().min(1),
  alsoCalled: z.array(z.string().min(1)).default([]),
  source: z.string(),
  coverage: coverageText,
  lowest: temperatureText,
  open: hoursText,
  clamp: oneTime,
  full: oneTime,
  waterproof: z.boolean(),
})

const bottleGroup = z.strictObject({
  regions: z.array(z.enum(REGIONS)).min(1),
  source: z.string(),
  sizes: z.record(z.string(), volumeText),
})

const bottleRows = ({ regions, sizes }: z.output<typeof bottleGroup>): readonly Container[] =>
  regions.flatMap((region) => Object.entries(sizes).map(([name, volume]) => ({ region, name, volume })))

/** The shape of config/adhesives.yaml, read as glues, their timing, the clamps and the bottles. */
export const adhesivesFile = z
  .strictObject({
    waste: z.strictObject({ source: z.string(), part: ratio }),
    timing: z.strictObject({
      source: z.string(),
      ratedAt: temperatureText,
      /** Degrees Fahrenheit of difference. */
      doublesPer: z.number().positive(),
    }),
    clamping: z.strictObject({
      source: z.string(),
      pressure: z.strictObject({ soft: psi, medium: psi, hard: psi }),
      apart: span,
      fromEnds: span,
    }),
    adhesives: z.array(adhesive).min(1),
    bottles: z.array(bottleGroup).min(1),
  })
  .transform(({ waste, timing, clamping, adhesives, bottles }, context): { glue: GlueTables } => {
    for (const issue of repeatedAdhesives(adhesives)) context.addIssue(issue)
    return {
      glue: {
        adhesives,
        timing: { ratedAt: timing.ratedAt, doublesPer: (timing.doublesPer * 5) / 9 },
        clamping,
        waste: waste.part,
        bottles: bottles.flatMap(bottleRows),
      },
    }
  })

function repeatedAdhesives(adhesives: readonly z.output<typeof adhesive>[]) {
  const seen = new Set<string>()
  return adhesives.flatMap(({ name, alsoCalled }, index) =>
    [name, ...alsoCalled].flatMap((each) => {
      if (!seen.has(each.toLowerCase())) return seen.add(each.toLowerCase()) && []
      const message = `names that no other glue has ("${each}" is taken)`
      return [{ code: 'custom' as const, path: ['adhesives', index, 'name'], message }]
    }),
  )
}
