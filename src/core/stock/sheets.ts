import type { Length } from '../measure/length.ts'
import type { Region, SheetLabel, SheetSize, StockTables } from './stock.ts'

/** What a label of `label` on `material` means in `region`; undefined where the table has no such sheet. */
export const findSheetLabel = (
  material: string,
  label: Length,
  region: Region,
  stock: StockTables,
): SheetLabel | undefined => sheetLabels(material, region, stock).find((sheet) => sheet.label === label)

/** Every label of `material` sold in `region`, thinnest first. */
export const sheetLabels = (material: string, region: Region, stock: StockTables): readonly SheetLabel[] =>
  stock.labels
    .filter(
      (sheet) => sheet.region === region && sheet.material.toLowerCase() === material.trim().toLowerCase(),
    )
    .sort((a, b) => a.label - b.label)

/** The sheet materials sold in `region`, each once, in the order of the config. */
export const materials = (region: Region, stock: StockTables): readonly string[] => [
  ...new Set(stock.labels.filter((sheet) => sheet.region === region).map((sheet) => sheet.material)),
]

/** The sheet size of that name, aliases too; undefined where the region has none. */
export function findSheetSize(name: string, region: Region, stock: StockTables): SheetSize | undefined {
  const wanted = name.toLowerCase().replaceAll('×', 'x').replace(/\s+/g, '')
  return stock.sizes.find((size) => size.region === region && size.name === wanted)
}
