import Fraction from 'fraction.js'
import { FOOT, INCH, MILLIMETRE } from './length.ts'
import type { UnitSystem } from './reading.ts'

/** A unit that a number can carry; degrees are among them, for the same marks (' and ") serve both. */
export interface Unit {
  readonly name: 'in' | 'ft' | 'yd' | 'thou' | 'um' | 'mm' | 'cm' | 'dm' | 'm' | 'deg'
  readonly system: UnitSystem
  /** Nanometres in one, exact; 0 for degrees, which are no length. */
  readonly size: Fraction
}

const unit = (name: Unit['name'], system: UnitSystem, size: number): Unit => ({
  name,
  system,
  size: new Fraction(size),
})

export const IN = unit('in', 'inch', INCH)
export const FT = unit('ft', 'inch', FOOT)
export const YD = unit('yd', 'inch', 3 * FOOT)
export const THOU = unit('thou', 'inch', INCH / 1000)
export const MICROMETRE = unit('um', 'metric', MILLIMETRE / 1000)
export const MM = unit('mm', 'metric', MILLIMETRE)
export const CM = unit('cm', 'metric', 10 * MILLIMETRE)
export const DM = unit('dm', 'metric', 100 * MILLIMETRE)
export const M = unit('m', 'metric', 1000 * MILLIMETRE)
export const DEGREE = unit('deg', 'metric', 0)

/** Each unit as people write it, common misspellings too. */
const SPELLINGS: readonly (readonly [Unit, string])[] = [
  [IN, 'in ins inch inches inchs inche inchess inchies inces ince inchez ich inh incn inhces ihches'],
  [FT, 'ft fts foot feet foots feets fet fott footer footers'],
  [YD, 'yd yds yard yards yrd'],
  [THOU, 'thou thous thousandth thousandths'],
  [MICROMETRE, 'um μm micron microns micrometre micrometres'],
  [MM, 'mm mms millimetre millimetres millimeter millimeters milimetre milimetres milimeter milimeters'],
  [MM, 'milimetr millimetr millimters millimter milimters milimter millemeter millemeters millimetres'],
  [
    CM,
    'cm cms centimetre centimetres centimeter centimeters centimetr centimters centimter centemeter centemeters',
  ],
  [DM, 'dm decimetre decimetres decimeter decimeters'],
  [M, 'm mtr mtrs metre metres meter meters metres metr metrs'],
  [DEGREE, 'deg degs degree degrees degress degres degrese °'],
  [FT, "'"],
  [IN, '"'],
]

const BY_WORD: ReadonlyMap<string, Unit> = new Map(
  SPELLINGS.flatMap(([of, words]) => words.split(' ').map((word) => [word, of] as const)),
)

/** The unit that a word or a mark stands for; undefined for any other. */
export const unitOf = (word: string): Unit | undefined => BY_WORD.get(word)
