import type { Region } from '../stock/stock.ts'

/** From the least to the most that a source gives. */
export interface Range {
  readonly low: number
  readonly high: number
}

/** What carries the finish; `oil` dries by oxidising, which is what heats a heap of rags. */
export const FINISH_KINDS = ['oil', 'water', 'solvent'] as const
/** One of them. */
export type FinishKind = (typeof FINISH_KINDS)[number]

/** What a coat is good for as it dries: not sticky, the next coat, to be carried, to be put together, hard for good. */
export const DRYING_STEPS = ['touch', 'recoat', 'handle', 'assemble', 'full'] as const
/** One of them. */
export type DryingStep = (typeof DRYING_STEPS)[number]

/** Drying times in hours at room temperature, each where a source gives it. */
export interface Drying extends Readonly<Partial<Record<DryingStep, Range | undefined>>> {
  /** The steps whose times nobody has read in a source. */
  readonly fromMemory?: readonly DryingStep[] | undefined
  /** A second recoat time, hours, that a source gives for a cold place, degrees Celsius. */
  readonly cold?: { readonly temperature: number; readonly recoat: number } | undefined
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
  /** The part of its volume that stays as a film: 0.4 is 40 %. Undefined for what soaks in. */
  readonly solids?: number | undefined
  readonly drying?: Drying | undefined
}

/** What cold and damp air do to drying times. */
export interface DryingRules {
  /** Degrees Celsius at which the times hold. */
  readonly ratedAt: number
  /** Twice as long for every so many degrees colder, where no source gives a second time. */
  readonly doublesPer: number
  /** From so many percent humidity, times are multiplied. */
  readonly humid: number
  readonly humidTimes: number
}

/** A can as sold. */
export interface Container {
  readonly region: Region
  readonly name: string
  /** mL */
  readonly volume: number
  /** Cents for one, where somebody has said. */
  readonly price?: number | undefined
}
