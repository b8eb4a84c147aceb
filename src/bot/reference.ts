import type { CautionRule } from '../core/checks/caution.ts'
import type { Container, FinishProduct } from '../core/quantities/product.ts'
import type { StockTables } from '../core/stock/stock.ts'

/** The tables of the trade that answers are reckoned from, as config/ holds them. */
export interface Reference {
  readonly stock: StockTables
  readonly finishes: readonly FinishProduct[]
  readonly containers: readonly Container[]
  readonly cautions: readonly CautionRule[]
}
