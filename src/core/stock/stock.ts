import type { Length } from '../measure/length.ts'

/** Where the wood is bought: names mean different sizes in each. */
export const REGIONS = ['US', 'UK', 'AU', 'EU'] as const
export type Region = (typeof REGIONS)[number]

/** A board as sold: its name in the shop and the size it really has. */
export interface Board {
  readonly region: Region
  /** As written on the rack: `2x6`, `5/4x6`, `38x140`. */
  readonly name: string
  readonly thickness: Length
  readonly width: Length
}

/** A sheet material as sold: what the label says and how thick it is when measured. */
export interface SheetLabel {
  readonly region: Region
  /** `plywood`, `birch plywood`, `MDF`, `OSB`, ... */
  readonly material: string
  /** The thickness on the label. */
  readonly label: Length
  /** The thickness to reckon with until the sheet is measured. */
  readonly actual: Length
}

/** A size that sheets are sold in. */
export interface SheetSize {
  readonly region: Region
  readonly name: string
  readonly length: Length
  readonly width: Length
}

/** Every size the shop sells, from config/lumber.yaml and config/sheets.yaml. */
export interface StockTables {
  readonly boards: readonly Board[]
  readonly labels: readonly SheetLabel[]
  readonly sizes: readonly SheetSize[]
}
