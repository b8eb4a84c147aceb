import { z } from 'zod'
import { type Container, DRYING_STEPS, FINISH_KINDS, type FinishProduct } from '../core/quantities/product.ts'
import type { Sanding } from '../core/quantities/shoppingSandpaper.ts'
import { REGIONS } from '../core/stock/stock.ts'
import { ratio, written } from './amounts.ts'
import { celsiusText, coverageText, hoursText, volumeText } from './rates.ts'

const drying = z.strictObject({
  source: z.string(),
  touch: hoursText.optional(),
  recoat: hoursText.optional(),
  handle: hoursText.optional(),
  assemble: hoursText.optional(),
  full: hoursText.optional(),
  fromMemory: z.array(z.enum(DRYING_STEPS)).optional(),
  cold: z
    .strictObject({ at: celsiusText, recoat: hoursText })
    .transform(({ at, recoat }) => ({ temperature: at.low, recoat: recoat.low }))
    .optional(),
  temperature: celsiusText.optional(),
  humidityBelow: z.number().min(1).max(100).optional(),
  note: z.string().optional(),
})

const product = z.strictObject({
  name: z.string().min(1),
  alsoCalled: z.array(z.string().min(1)).default([]),
  kind: z.enum(FINISH_KINDS),
  source: z.string(),
  smooth: coverageText,
  rough: coverageText.optional(),
  coats: z.int().min(1).max(10),
  solids: ratio.optional(),
  drying: drying.optional(),
})

const waste = z.strictObject({ source: z.string(), smooth: ratio, rough: ratio })

const rules = z
  .strictObject({
    source: z.string(),
    ratedAt: celsiusText,
    /** Degrees Celsius of difference. */
    doublesPer: z.number().positive(),
    humid: z.number().min(1).max(100),
    humidTimes: z.number().min(1).max(10),
  })
  .transform(({ source: _source, ratedAt, ...rest }) => ({ ...rest, ratedAt: ratedAt.low }))

/** mm2 in a square foot. */
const SQUARE_FOOT = 92_903.04

/** An area in mm2. */
const areaText = written('an area such as "16 ft2" or "1.5 m2"', (text) => {
  const [, amount, unit] = /^(\d+(?:\.\d+)?) (ft2|m2)$/.exec(text) ?? []
  return Number(amount) > 0 ? Number(amount) * (unit === 'ft2' ? SQUARE_FOOT : 1_000_000) : undefined
})

const grit = z.int().min(16).max(5000)

const sanding = z
  .strictObject({
    source: z.string(),
    grits: z.array(grit).min(1),
    covers: areaText,
    betweenGrit: grit,
    betweenCovers: areaText,
  })
  .transform(({ source: _source, ...rest }): Sanding => rest)

const containerGroup = z.strictObject({
  regions: z.array(z.enum(REGIONS)).min(1),
  source: z.string(),
  sizes: z.record(z.string(), volumeText),
})

/** The shape of config/finishes.yaml, read as products (each with the waste that is allowed for) and cans as sold. */
export const finishesFile = z
  .strictObject({
    waste,
    drying: rules,
    sanding,
    products: z.array(product).min(1),
    containers: z.array(containerGroup).min(1),
  })
  .transform((file, context) => {
    for (const issue of repeatedProducts(file.products)) context.addIssue(issue)
    return {
      finishes: file.products.map((row) => finishProduct(row, file.waste)),
      containers: file.containers.flatMap(containers),
      drying: file.drying,
      sanding: file.sanding,
    }
  })

function finishProduct(
  { source: _source, drying, ...row }: z.output<typeof product>,
  { smooth, rough }: z.output<typeof waste>,
): FinishProduct {
  const { source: _from, ...times } = drying ?? { source: '' }
  return { ...row, waste: { smooth, rough }, ...(drying && { drying: times }) }
}

const containers = ({ regions, sizes }: z.output<typeof containerGroup>): readonly Container[] =>
  regions.flatMap((region) => Object.entries(sizes).map(([name, volume]) => ({ region, name, volume })))

function repeatedProducts(products: readonly z.output<typeof product>[]) {
  const seen = new Set<string>()
  return products.flatMap(({ name, alsoCalled }, index) =>
    [name, ...alsoCalled].flatMap((each) => {
      if (!seen.has(each.toLowerCase())) return seen.add(each.toLowerCase()) && []
      const message = `names that no other finish has ("${each}" is taken)`
      return [{ code: 'custom' as const, path: ['products', index, 'name'], message }]
    }),
  )
}
