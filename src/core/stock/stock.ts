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
  /** The name on the rack, where `name` is what people call it: the UK's `4x2` is sold as `47x100`. */
  readonly aliasOf?: string | undefined
}

/** A length that boards are sold in, wherever `region` is. */
export interface BoardLength {
  readonly region: Region
  /** As the shop says it: `8 ft`, `2.4 m`. */
  readonly name: string
  readonly length: Length
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
  /** The thinnest and the thickest that the standard or the maker allows, where a source gives them. */
  readonly low?: Length | undefined
  readonly high?: Length | undefined
  /** The maker's mean thickness, where a data sheet gives it. */
  readonly mean?: Length | undefined
  /** kg/m3, where a data sheet gives it. */
  readonly density?: number | undefined
}

/** A size that sheets are sold in. */
export interface SheetSize {
  readonly region: Region
  readonly name: string
  /** The longer side. */
  readonly length: Length
  readonly width: Length
  /** The name on the rack, where `name` is what people call it. */
  readonly aliasOf?: string | undefined
}

/** Every size the shop sells, from config/lumber.yaml and config/sheets.yaml. */
export interface StockTables {
  readonly boards: readonly Board[]
  readonly lengths: readonly BoardLength[]
  readonly labels: readonly SheetLabel[]
  readonly sizes: readonly SheetSize[]
}
