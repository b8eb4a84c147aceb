import type { CautionRule } from '../core/checks/caution.ts'
import type { Seasons } from '../core/moisture/seasons.ts'
import type { Species } from '../core/moisture/species.ts'
import type { PanelDensity } from '../core/quantities/density.ts'
import type { FastenerTables } from '../core/quantities/fastenerSize.ts'
import type { GlueTables } from '../core/quantities/glueProduct.ts'
import type { Container, DryingRules, FinishProduct } from '../core/quantities/product.ts'
import type { PriceList } from '../core/quantities/shoppingPrices.ts'
import type { Sanding } from '../core/quantities/shoppingSandpaper.ts'
import type { Times } from '../core/steps/times.ts'
import type { StockTables } from '../core/stock/stock.ts'

/** The tables of the trade that answers are reckoned from, as config/ holds them. */
export interface Reference {
  readonly stock: StockTables
  readonly finishes: readonly FinishProduct[]
  readonly containers: readonly Container[]
  readonly drying: DryingRules
  readonly sanding: Sanding
  /** What things cost, where the channel has not said. */
  readonly prices: readonly PriceList[]
  /** The part of sheets, boards and hardware that is bought over. */
  readonly spare: number
  readonly cautions: readonly CautionRule[]
  readonly species: readonly Species[]
  readonly panelDensities: readonly PanelDensity[]
  readonly fasteners: FastenerTables
  readonly glue: GlueTables
  readonly seasons: Seasons
  /** What the steps of a build take, minutes. */
  readonly times: Times
}
