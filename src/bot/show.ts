import type { Length } from '../core/measure/length.ts'
import type { UnitSystem } from '../core/measure/reading.ts'
import type { Purpose } from '../core/measure/round.ts'
import { type ShowSettings, showLength, showMiss } from '../core/measure/show.ts'
import { showArea, showVolume } from '../core/measure/showAmounts.ts'
import { type NumberSettings, numbersIn } from '../drawing/numbers.ts'

/** Prints numbers in the units of the person who asked. `fine` uses the joint tape (1/32 in unless set otherwise). */
export interface Show {
  readonly units: UnitSystem
  /** What it was made from, for whoever prints numbers elsewhere. */
  readonly settings: NumberSettings
  /** `in` or `mm`, for a column heading. */
  readonly unit: string
  readonly length: (length: Length, purpose?: Purpose, fine?: boolean) => string
  /** Without the unit, for a table cell whose heading names it. */
  readonly mark: (length: Length, purpose?: Purpose, fine?: boolean) => string
  /** Mark less exact, in brackets; empty where the mark is exact. */
  readonly miss: (length: Length, purpose?: Purpose, fine?: boolean) => string
  /** What stock and blades measure, which no tape is held to: a joint mark where it is exact, else as a calliper reads it. */
  readonly stock: (length: Length) => string
  readonly angle: (degrees: number) => string
  /** From mm2. */
  readonly area: (area: number) => string
  /** From mL. */
  readonly volume: (volume: number) => string
}

/** `coarse` for what is cut to a tape, `fine` for joints and fences. */
export const showIn = (coarse: ShowSettings, fine: ShowSettings): Show => ({
  ...numbersIn({ coarse, fine }),
  units: coarse.units,
  settings: { coarse, fine },
  length: (length, purpose, isFine) => showLength(length, isFine ? fine : coarse, purpose),
  miss: (length, purpose, isFine) => showMiss(length, isFine ? fine : coarse, purpose),
  area: (area) => showArea(area, coarse.units),
  volume: (volume) => showVolume(volume, coarse.units),
})
