import { z } from 'zod'
import type { FastenerKind, FastenerSize, FastenerTables } from '../core/quantities/fastenerSize.ts'
import { REGIONS, type Region } from '../core/stock/stock.ts'
import { lengthText } from './amounts.ts'

const regions = z.array(z.enum(REGIONS)).min(1)
const boxes = z.array(z.int().positive()).min(1)
const lengths = z.array(lengthText).min(1)

const rules = z.strictObject({
  source: z.string(),
  tipShort: lengthText,
  leastBite: lengthText,
  leastBiteGlued: lengthText,
  nailTimes: z.number().min(1).max(10),
  screwTimes: z.number().min(1).max(10),
  endGrainMore: lengthText,
  edgeBite: lengthText,
})

const diameters = z.strictObject({
  edge: z.number().positive(),
  end: z.number().positive(),
  row: z.number().positive(),
})

const distances = z.strictObject({
  source: z.string(),
  drilled: diameters,
  undrilled: diameters,
  leastEnd: lengthText,
  brad: lengthText,
  nail: lengthText,
  screw: lengthText,
})

const bradGroup = z.strictObject({
  regions,
  source: z.string(),
  gauges: z.record(
    z.string(),
    z.strictObject({ diameter: lengthText, heldUpTo: lengthText, lengths, boxes }),
  ),
})

const nailGroup = z.strictObject({
  regions,
  source: z.string(),
  sizes: z.record(
    z.string(),
    z.strictObject({ length: lengthText, diameter: lengthText, perPound: z.int().positive() }),
  ),
})

const screw = z
  .strictObject({
    shank: lengthText,
    root: lengthText,
    clear: lengthText,
    soft: lengthText,
    hard: lengthText,
    heldUpTo: lengthText,
    lengths,
    boxes,
  })
  .refine(({ soft, hard, root, shank }) => soft <= hard && hard < root && root < shank, {
    error: 'the soft pilot, the hard pilot, the root and the shank in order of size',
  })

const screwGroup = z.strictObject({ regions, source: z.string(), numbers: z.record(z.string(), screw) })

/** The shape of config/fasteners.yaml, read as a row for every length of every gauge in every region, and the rules. */
export const fastenersFile = z
  .strictObject({
    rules,
    distances,
    brads: z.array(bradGroup).min(1),
    nails: z.array(nailGroup).min(1),
    screws: z.array(screwGroup).min(1),
  })
  .transform(({ rules, distances, brads, nails, screws }): { fasteners: FastenerTables } => ({
    fasteners: {
      sizes: [...brads.flatMap(bradRows), ...nails.flatMap(nailRows), ...screws.flatMap(screwRows)],
      rules: {
        ...rules,
        times: { brad: rules.nailTimes, nail: rules.nailTimes, screw: rules.screwTimes },
      },
      distances: {
        ...distances,
        apart: { brad: distances.brad, nail: distances.nail, screw: distances.screw },
      },
    },
  }))

type SizeRow = Omit<FastenerSize, 'kind' | 'region'>

const rows = (
  kind: FastenerKind,
  regions: readonly Region[],
  sizes: readonly SizeRow[],
): readonly FastenerSize[] => regions.flatMap((region) => sizes.map((size) => ({ kind, region, ...size })))

function bradRows({ regions, gauges }: z.output<typeof bradGroup>): readonly FastenerSize[] {
  const sizes = Object.entries(gauges).flatMap(([name, { lengths, ...gauge }]) =>
    lengths.map((length) => ({ name, length, ...gauge })),
  )
  return rows('brad', regions, sizes)
}

function nailRows({ regions, sizes }: z.output<typeof nailGroup>): readonly FastenerSize[] {
  const nails = Object.entries(sizes).map(([name, { perPound, ...size }]) => ({
    name,
    ...size,
    boxes: [perPound, 5 * perPound],
  }))
  return rows('nail', regions, nails)
}

function screwRows({ regions, numbers }: z.output<typeof screwGroup>): readonly FastenerSize[] {
  const sizes = Object.entries(numbers).flatMap(([name, number]) => {
    const { shank: diameter, root, clear, soft, hard, heldUpTo, lengths, boxes } = number
    const holes = { root, clear, soft, hard }
    return lengths.map((length) => ({ name, length, diameter, heldUpTo, boxes, holes }))
  })
  return rows('screw', regions, sizes)
}
