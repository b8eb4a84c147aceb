import type { Region } from '../stock/stock.ts'
import { type ContainerCount, containersFor } from './containers.ts'
import { dryFilm, wetFilm } from './finishFilm.ts'
import type { Container, FinishProduct } from './product.ts'

/** Planed or sanded wood and sheet, or sawn and weathered wood, which drinks more. */
export type Surface = 'smooth' | 'rough'

/** What is to be covered, with what, and in which cans it is sold. */
export interface FinishRequest {
  /** All that one coat has to cover, mm2. */
  readonly area: number
  readonly product: FinishProduct
  /** As many as the product asks for when left out. */
  readonly coats?: number | undefined
  readonly surface: Surface
  readonly region: Region
  /** Every can that is sold, with its price where that is known; those of the region are used. */
  readonly containers: readonly Container[]
}

/** What to buy, and each step on the way, so that it can be said how it was reckoned. */
export interface FinishNeed {
  readonly status: 'needed'
  readonly area: number
  readonly coats: number
  /** m2/L: the low end of what the source gives, since running out costs more than a left-over. */
  readonly coverage: number
  /** mL that go on the wood in one coat. */
  readonly perCoat: number
  /** Micrometres that one coat is thick while wet. */
  readonly wetFilm: number
  /** What it dries to; undefined for what soaks in. */
  readonly dryFilm: number | undefined
  /** The part added for tray, roller and rag: 0.1 is 10 %. */
  readonly waste: number
  /** mL for all coats with the waste added. */
  readonly volume: number
  readonly containers: readonly ContainerCount[]
  /** mL that stay in the cans. */
  readonly left: number
  /** Cents for all the cans; undefined where a price is not known. */
  readonly cost: number | undefined
}

/** No source says how far the product goes on this surface. */
export interface FinishUnknown {
  readonly status: 'unknown'
  readonly reason: string
}

/** How much finish to buy. Throws where the area or the coats are no finite count of at least zero. */
export function finishNeeded(request: FinishRequest): FinishNeed | FinishUnknown {
  const { area, product, surface } = request
  const coats = request.coats ?? product.coats
  checkCount('area', area)
  checkCount('coats', coats)
  const range = product[surface]
  if (!range)
    return { status: 'unknown', reason: `no source says how far ${product.name} goes on ${surface} wood` }
  const coverage = range.low
  const waste = product.waste[surface]
  const perCoat = area / 1000 / coverage
  const volume = perCoat * coats * (1 + waste)
  const sold = request.containers.filter(({ region }) => region === request.region)
  const containers = containersFor(volume, sold)
  return {
    status: 'needed',
    area,
    coats,
    coverage,
    perCoat,
    wetFilm: wetFilm(coverage),
    dryFilm: product.solids === undefined ? undefined : dryFilm(wetFilm(coverage), product.solids),
    waste,
    volume,
    containers,
    left: containers.reduce((sum, { millilitres, count }) => sum + millilitres * count, 0) - volume,
    cost: costOf(containers),
  }
}

function costOf(containers: readonly ContainerCount[]): number | undefined {
  const costs = containers.map(({ price, count }) => (price === undefined ? Number.NaN : price * count))
  const total = costs.reduce((sum, each) => sum + each, 0)
  return Number.isNaN(total) ? undefined : total
}

function checkCount(name: string, count: number): void {
  if (!Number.isFinite(count) || count < 0)
    throw new RangeError(`${name} must be a finite number of at least 0: ${count}`)
}
