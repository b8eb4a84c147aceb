import { z } from 'zod'
import { celsius } from '../core/moisture/equilibrium.ts'
import type { Seasons } from '../core/moisture/seasons.ts'
import { lengthOrZero, written } from './amounts.ts'

const percent = z.number().min(0).max(30)

const place = z
  .strictObject({ driest: percent, wettest: percent, source: z.string() })
  .refine(({ driest, wettest }) => driest <= wettest, { error: 'the driest month, then the wettest' })
  .transform(({ driest, wettest }) => ({ driest, wettest }))

const temperature = written('a temperature such as "70 F" or "21 C"', (text) => {
  const [, degrees, unit] = /^(-?\d+(?:\.\d+)?) ([FC])$/.exec(text) ?? []
  if (degrees === undefined) return undefined
  return unit === 'F' ? celsius(Number(degrees)) : Number(degrees)
})

/** The shape of config/seasons.yaml: what wood, air and paint are taken for. */
export const seasonsFile = z
  .strictObject({
    wood: z.string().min(1),
    woodSource: z.string(),
    temperature,
    temperatureSource: z.string(),
    humidity: z.number().min(0).max(100),
    humiditySource: z.string(),
    moisture: percent,
    moistureSource: z.string(),
    places: z.strictObject({ heated: place, unheated: place, outdoors: place }),
    coats: z.int().min(0).max(10),
    pushFit: lengthOrZero,
  })
  .transform(({ wood, temperature, humidity, moisture, places, coats, pushFit }): { seasons: Seasons } => ({
    seasons: { wood, temperature, humidity, moisture, places, coats, pushFit },
  }))
