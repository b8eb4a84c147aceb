import { findSheetLabel, materials } from '../stock/sheets.ts'
import type { SheetLabel } from '../stock/stock.ts'
import { type Amount, sizeIn } from './amount.ts'
import { impliesInch, lengthOf } from './resolve.ts'
import type { Length } from './length.ts'
import type { ReadingSettings } from './reading.ts'
import { IN, MM, type Unit } from './unit.ts'
import { inSystemOf } from './wording.ts'
import Fraction from 'fraction.js'

/** What the words for each material are in the tables of stock. */
const MATERIALS: readonly (readonly [RegExp, readonly string[]])[] = [
  [/^(?:baltic|birch)$/u, ['birch plywood', 'hardwood plywood', 'plywood']],
  [/^(?:hardwood|oak|maple|walnut|cherry|ash)$/u, ['hardwood plywood', 'plywood']],
  [
    /^(?:ply|plywood|plies|cdx|bc|acx|bcx|ac|softwood|marine|shuttering|sheathing|underlayment|wbp)$/u,
    ['plywood'],
  ],
  [/^(?:mdf|mrmdf|fibreboard|fiberboard)$/u, ['MDF']],
  [/^(?:osb|sterling)$/u, ['OSB']],
  [/^(?:particleboard|chipboard|particle|melamine|mfc)$/u, ['particleboard', 'melamine']],
  [/^(?:hardboard|masonite)$/u, ['hardboard']],
]

/** Words that name a sheet material beyond doubt; `oak` and `birch` may also name a board. */
const SURE =
  /^(?:ply|plywood|cdx|acx|bcx|mdf|mrmdf|osb|particle|particleboard|chipboard|melamine|mfc|hardboard|masonite|fibreboard|fiberboard|baltic|birch)$/u

/** True for a word that says which sheet material: `ply`, `MDF`, `CDX`, `birch`. */
export const isMaterial = (word: string): boolean => SURE.test(word)

/** The material of the tables that the words name; undefined where they name none. */
export function materialOf(words: readonly string[], { region, stock }: ReadingSettings): string | undefined {
  const names = MATERIALS.find(([pattern]) => words.some((word) => pattern.test(word)))?.[1]
  const sold = materials(region, stock)
  return names && (names.find((name) => sold.includes(name)) ?? names[0])
}

/** A sheet's thickness, from its label where the tables have it. */
export interface Thickness {
  readonly actual: Length
  readonly label: Length
  readonly material?: string | undefined
  readonly found?: SheetLabel | undefined
  /** Typed as a decimal, as from a calliper. */
  readonly decimal: boolean
  readonly unit: Unit
  readonly note?: string | undefined
}

/** Thickness by label: `1/2 ply` is 15/32 in in the US. A thickness with no such label is taken as it is typed. */
export function thicknessOf(amount: Amount, words: readonly string[], settings: ReadingSettings): Thickness {
  const unit = amount.unit ?? (impliesInch(amount) ? IN : MM)
  const label = lengthOf(amount.size ?? sizeIn(amount.number, unit))
  const named = materialOf(words, settings)
  const candidates =
    named === undefined
      ? ['plywood']
      : [named, ...(MATERIALS.find(([, names]) => names.includes(named))?.[1] ?? [])]
  const found = candidates
    .map((name) => findSheetLabel(name, label, settings.region, settings.stock))
    .find((sheet) => sheet !== undefined)
  const actual = found?.actual ?? label
  return {
    actual,
    label,
    material: named,
    found,
    decimal: amount.number.form === 'decimal',
    unit,
    note: found
      ? noteOf(actual, label, unit, named ?? 'plywood')
      : strangeNote(amount, label, unit, named ?? 'plywood'),
  }
}

function noteOf(actual: Length, label: Length, unit: Unit, material: string): string | undefined {
  if (actual === label) return undefined
  const [is, said] = [actual, label].map((length) => inSystemOf(new Fraction(length), unit))
  return `${said} ${material} taken as ${is}, as made; measure yours`
}

/** A fraction or a whole number that no label here has: taken as it stands, and said. */
function strangeNote(amount: Amount, label: Length, unit: Unit, material: string): string | undefined {
  if (amount.number.form === 'decimal') return undefined
  const said = inSystemOf(new Fraction(label), unit)
  return `no ${said} ${material} in the tables here, so taken as ${said}; measure yours`
}
