import type { CautionRule } from '../core/checks/caution.ts'
import type { Seasons } from '../core/moisture/seasons.ts'
import type { Species } from '../core/moisture/species.ts'
import type { PanelDensity } from '../core/quantities/density.ts'
import type { FastenerTables } from '../core/quantities/fastenerSize.ts'
import type { GlueTables } from '../core/quantities/glueProduct.ts'
import type { Container, FinishProduct } from '../core/quantities/product.ts'
import type { StockTables } from '../core/stock/stock.ts'

/** The tables of the trade that answers are reckoned from, as config/ holds them. */
export interface Reference {
  readonly stock: StockTables
  readonly finishes: readonly FinishProduct[]
  readonly containers: readonly Container[]
  readonly cautions: readonly CautionRule[]
  readonly species: readonly Species[]
  readonly panelDensities: readonly PanelDensity[]
  readonly fasteners: FastenerTables
  readonly glue: GlueTables
  readonly seasons: Seasons
}
