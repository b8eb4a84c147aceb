import type { Reference } from './bot/reference.ts'
import type { BotSettings } from './bot/settings.ts'
import { didYouMean } from './bot/suggest.ts'
import { adhesivesFile } from './config/adhesives.ts'
import { botFile } from './config/bot.ts'
import { cautionsFile } from './config/cautions.ts'
import { ConfigError } from './config/configError.ts'
import { fastenersFile } from './config/fasteners.ts'
import { readFiles } from './config/files.ts'
import { finishesFile } from './config/finishes.ts'
import { lumberFile } from './config/lumber.ts'
import { pricesFile } from './config/prices.ts'
import { seasonsFile } from './config/seasons.ts'
import { sheetsFile } from './config/sheets.ts'
import type { Source } from './config/source.ts'
import { speciesFile } from './config/species.ts'
import { timesFile } from './config/times.ts'
import type { Seasons } from './core/moisture/seasons.ts'
import { findSpecies, type Species } from './core/moisture/species.ts'
import { REGIONS, type StockTables } from './core/stock/stock.ts'
import { boardNames, findBoard } from './core/stock/boards.ts'

export { ConfigError } from './config/configError.ts'
export { type Environment, readEnvironment } from './config/environment.ts'

/** Everything that config/ says, checked: the settings, and the tables of the trade. */
export interface Config extends Reference {
  readonly bot: BotSettings
}

/** Every file of the config folder, `<name>.yaml`, and what it must look like. */
const FILES = {
  bot: botFile,
  lumber: lumberFile,
  sheets: sheetsFile,
  finishes: finishesFile,
  cautions: cautionsFile,
  species: speciesFile,
  fasteners: fastenersFile,
  adhesives: adhesivesFile,
  seasons: seasonsFile,
  prices: pricesFile,
  times: timesFile,
}

/** Reads and checks every file of a config folder. Throws a ConfigError that names every problem, one a line. */
export function readConfig(folder: string): Config {
  const { values, sources } = readFiles(folder, FILES)
  const { bot, lumber, sheets, finishes, cautions, species, fasteners, adhesives, seasons, prices, times } =
    values
  const stock = { ...lumber, ...sheets }
  checkBoards(bot, stock, sources.bot)
  checkWood(seasons.seasons, species.species, sources.seasons)
  return {
    bot,
    stock,
    ...finishes,
    cautions,
    ...species,
    ...fasteners,
    ...adhesives,
    ...seasons,
    ...prices,
    ...times,
  }
}

/** Two files must agree: each region's usual board in bot.yaml is one that lumber.yaml has. */
function checkBoards({ usual }: BotSettings, stock: StockTables, { file, lineOf }: Source): void {
  const problems = REGIONS.flatMap((region) => {
    const { board } = usual[region]
    if (findBoard(board, region, stock)) return []
    const near = didYouMean(board, boardNames(region, stock))
    const sentence = `usual.${region}.board: expected a board sold in ${region}, read "${board}".${near}`
    return [{ file, line: lineOf(['usual', region, 'board']), sentence }]
  })
  if (problems.length > 0) throw new ConfigError(problems)
}

/** The wood that lumber is taken for has to be one that species.yaml knows the movement and the weight of. */
function checkWood({ wood }: Seasons, species: readonly Species[], { file, lineOf }: Source): void {
  const found = findSpecies(wood, species)
  if (found?.growth && found.gravity) return
  const near = didYouMean(
    wood,
    species.map(({ name }) => name),
  )
  const sentence = `wood: expected a wood of species.yaml with growth and gravity, read "${wood}".${near}`
  throw new ConfigError([{ file, line: lineOf(['wood']), sentence }])
}
