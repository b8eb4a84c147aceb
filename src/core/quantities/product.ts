import type { Region } from '../stock/stock.ts'

/** From the least to the most that a source gives. */
export interface Range {
  readonly low: number
  readonly high: number
}

/** What carries the finish; `oil` dries by oxidising, which is what heats a heap of rags. */
export const FINISH_KINDS = ['oil', 'water', 'solvent'] as const
export type FinishKind = (typeof FINISH_KINDS)[number]

/** Drying times in hours at room temperature, each where a source gives it. */
export interface Drying {
  readonly touch?: Range | undefined
  readonly recoat?: Range | undefined
  readonly full?: Range | undefined
  /** Air and wood, degrees Celsius, between which the finish may be applied. */
  readonly temperature?: Range | undefined
  /** Percent relative humidity that the room must stay under. */
  readonly humidityBelow?: number | undefined
  /** What else the maker says, one plain sentence. */
  readonly note?: string | undefined
}

/** A finish by its plain trade name, with what is needed to reckon how much to buy. */
export interface FinishProduct {
  readonly name: string
  readonly alsoCalled: readonly string[]
  readonly kind: FinishKind
  /** m2 covered by one litre in one coat on planed or sanded wood. */
  readonly smooth: Range
  /** The same on sawn or weathered wood; undefined where no source gives it. */
  readonly rough?: Range | undefined
  readonly coats: number
  /** The part of the finish that stays in the tray and on the rag: 0.1 is 10 %. */
  readonly waste: { readonly smooth: number; readonly rough: number }
  readonly drying?: Drying | undefined
}

/** A can as sold. */
export interface Container {
  readonly region: Region
  readonly name: string
  /** mL */
  readonly volume: number
}
