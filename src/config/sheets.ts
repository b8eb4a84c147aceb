import { z } from 'zod'
import type { Length } from '../core/measure/length.ts'
import { REGIONS, type SheetLabel, type SheetSize } from '../core/stock/stock.ts'
import { lengthText, sizeText } from './amounts.ts'
import { type NamedRow, nameIssues, namedRows } from './names.ts'

const regions = z.array(z.enum(REGIONS)).min(1)

const sheet = z
  .strictObject({
    label: lengthText,
    actual: lengthText.optional(),
    low: lengthText.optional(),
    high: lengthText.optional(),
    mean: lengthText.optional(),
    density: z.number().min(100).max(1500).optional(),
  })
  .transform((row) => ({ ...row, actual: row.actual ?? row.label }))
  .refine(
    ({ low, mean, actual, high }) => (low ?? 0) <= (mean ?? actual) && (mean ?? actual) <= (high ?? Infinity),
    {
      error: 'low, then the mean or the actual thickness, then high, in order',
    },
  )

const labelGroup = z.strictObject({
  material: z.string().min(1),
  regions,
  source: z.string(),
  sheets: z.array(sheet).min(1),
})

const sizeGroup = z.strictObject({
  regions,
  source: z.string(),
  sizes: z.record(z.string(), sizeText),
  alsoCalled: z.record(z.string(), z.string()).default({}),
})

/** The shape of config/sheets.yaml, read as a row for every region's label and for every name of a sheet size. */
export const sheetsFile = z
  .strictObject({ labels: z.array(labelGroup).min(1), sizes: z.array(sizeGroup).min(1) })
  .transform((file, context) => {
    const labels = file.labels.flatMap(labelRows)
    const sizes = file.sizes.flatMap(sizeRows)
    for (const issue of [...nameIssues(labels), ...nameIssues(sizes)]) context.addIssue(issue)
    return { labels: labels.flatMap(({ value }) => value ?? []), sizes: sizes.flatMap(sheetSizes) }
  })

/** The name is the material and its label, so that a label which stands twice is found. */
const labelRows = (
  { material, regions, sheets }: z.output<typeof labelGroup>,
  group: number,
): readonly NamedRow<SheetLabel>[] =>
  regions.flatMap((region) =>
    sheets.map((row, index) => ({
      region,
      name: `${material} ${row.label}`,
      value: { region, material, ...row },
      path: ['labels', group, 'sheets', index, 'label'],
    })),
  )

const sizeRows = ({ regions, sizes, alsoCalled }: z.output<typeof sizeGroup>, index: number) =>
  regions.flatMap((region) => namedRows(region, { rows: sizes, alsoCalled }, ['sizes', index], 'sizes'))

/** The longer side is the length; no size for an alias of nothing, which is an issue already. */
function sheetSizes({
  region,
  name,
  aliasOf,
  value,
}: NamedRow<readonly [Length, Length]>): readonly SheetSize[] {
  if (!value) return []
  const [width, length] = value[0] <= value[1] ? value : [value[1], value[0]]
  return [{ region, name, length, width, ...(aliasOf !== undefined && { aliasOf }) }]
}
