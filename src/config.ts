import type { BotSettings } from './bot/settings.ts'
import type { Container, FinishProduct } from './core/quantities/product.ts'
import type { StockTables } from './core/stock/stock.ts'

/** Everything that config/ says, checked. */
export interface Config {
  readonly bot: BotSettings
  readonly stock: StockTables
  readonly finishes: readonly FinishProduct[]
  readonly containers: readonly Container[]
}

/** Reads and checks every file of a config folder. Throws a ConfigError that names every problem, one a line. */
export declare function readConfig(folder: string): Config
