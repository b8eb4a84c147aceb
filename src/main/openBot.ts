import { randomUUID } from 'node:crypto'
import { availableParallelism } from 'node:os'
import { type Logger, pino } from 'pino'
import { type Catalogue, describe, loadCatalogue } from '../bot/catalogue.ts'
import { createComplete } from '../bot/complete.ts'
import type { PlatformParts } from '../bot/platform.ts'
import { createRouter } from '../bot/router.ts'
import type { Store } from '../bot/state.ts'
import { type Config, type Environment, readConfig } from '../config.ts'
import { createMetrics, type Metrics } from '../health/metrics.ts'
import { createPainter } from '../painting/painter.ts'
import { createPrinter } from '../printing/printer.ts'
import { createSearch } from '../search/pool.ts'
import { createKeeping } from '../store/keeping.ts'
import { openSqlite } from '../store/sqlite.ts'
import { type Places, place } from './places.ts'

/** The whole bot but for the platforms it is asked on. */
export interface Bot {
  readonly config: Config
  readonly catalogue: Catalogue
  readonly store: Store
  readonly dataFolder: string
  readonly log: Logger
  readonly metrics: Metrics
  /** What a platform of this name is given. */
  readonly partsFor: (platform: string) => PlatformParts
  readonly close: () => Promise<void>
}

/** Opens the store and puts commands, search, painter and router together. `dataFolder` goes before the environment's. */
export async function openBot(
  environment: Environment,
  places: Places,
  dataFolder: string | undefined,
): Promise<Bot> {
  const config = readConfig(environment.configFolder ?? places.config)
  const folder = dataFolder ?? environment.dataFolder ?? config.bot.dataFolder
  const log = pino(
    { level: environment.logLevel ?? config.bot.logLevel },
    pino.destination({ dest: 2, sync: true }),
  )
  const store = await openStore(environment, folder, config)
  const catalogue = await loadCatalogue(places.commands)
  const commands = describe(catalogue)
  const threads = Math.max(1, availableParallelism() - 1)
  const search = createSearch({
    ...place('start', places.searchThread),
    threads,
    queue: config.bot.search.queue,
    failed: (error) => log.error({ err: error }, 'a search thread died'),
  })
  const painter = createPainter({ ...place('start', places.painterThread), threads: 1 })
  const printer = createPrinter({ ...place('start', places.printerThread), threads: 1 })
  const metrics = createMetrics()
  const answer = metrics.counted(
    createRouter({
      store,
      search,
      print: printer.print,
      catalogue,
      log,
      settings: config.bot,
      reference: config,
      faultNumber: () => randomUUID().slice(0, 8),
    }),
  )
  const complete = createComplete({ store, commands, reference: config, settings: config.bot })
  const now = () => new Date()
  return {
    config,
    catalogue,
    store,
    dataFolder: folder,
    log,
    metrics,
    partsFor: (platform) => ({
      answer,
      commands,
      complete,
      paint: painter.paint,
      keeping: createKeeping(store, platform, now),
      log: log.child({ platform }),
      now,
    }),
    close: async () => {
      await Promise.allSettled([search.close(), painter.close(), printer.close()])
      await store.close()
    },
  }
}

/** Postgres where an address of one is given, else a file in the data folder. */
async function openStore({ database }: Environment, folder: string, { bot }: Config): Promise<Store> {
  const settings = { revisionsKept: bot.revisionsKept }
  if (database === undefined) return openSqlite(`${folder}/battenbot.sqlite`, settings)
  const { openPostgres } = await import('../store/postgres.ts')
  return openPostgres(database, settings)
}
