import { z } from 'zod'
import type { Length } from '../core/measure/length.ts'
import { type Board, type BoardLength, REGIONS, type Region } from '../core/stock/stock.ts'
import { sizeText, written, writtenLength } from './amounts.ts'
import { type NamedRow, nameIssues, namedRows } from './names.ts'

type Section = readonly [thickness: Length, width: Length]

const section = sizeText.refine(([thickness, width]) => thickness <= width, {
  error: 'the thickness first, no more than the width',
})

const group = z.strictObject({
  source: z.string(),
  boards: z.record(z.string(), section),
  alsoCalled: z.record(z.string(), z.string()).default({}),
})

const soldLength = written('a length such as "8 ft" or "2.4 m"', (name) => {
  const length = writtenLength(name)
  return length === undefined ? undefined : { name, length }
})

const block = z.strictObject({
  groups: z.array(group).min(1),
  lengths: z.strictObject({ source: z.string(), sold: z.array(soldLength).min(1) }),
})

/**
 * The shape of config/lumber.yaml, read as boards (a row for every name, aliases too) and the lengths they are sold in.
 */
export const lumberFile = z
  .strictObject({ US: block, UK: block, AU: block, EU: block })
  .transform((blocks, context) => {
    const rows = REGIONS.flatMap((region) => blockRows(region, blocks[region]))
    for (const issue of nameIssues(rows)) context.addIssue(issue)
    const lengths = REGIONS.flatMap((region) =>
      blocks[region].lengths.sold.map((sold): BoardLength => ({ region, ...sold })),
    )
    return { boards: rows.flatMap(boards), lengths }
  })

const blockRows = (region: Region, { groups }: z.output<typeof block>): readonly NamedRow<Section>[] =>
  groups.flatMap(({ boards: rows, alsoCalled }, index) =>
    namedRows(region, { rows, alsoCalled }, [region, 'groups', index], 'boards'),
  )

/** No board for an alias of nothing, which is an issue already. */
function boards({ region, name, aliasOf, value }: NamedRow<Section>): readonly Board[] {
  if (!value) return []
  const [thickness, width] = value
  return [{ region, name, thickness, width, ...(aliasOf !== undefined && { aliasOf }) }]
}
