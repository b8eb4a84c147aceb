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

/** 25.4 mm. */
export const IN = unit('in', 'inch', INCH)
/** 12 in. */
export const FT = unit('ft', 'inch', FOOT)
/** 36 in. */
export const YD = unit('yd', 'inch', 3 * FOOT)
/** A thousandth of an inch. */
export const THOU = unit('thou', 'inch', INCH / 1000)
const MICROMETRE = unit('um', 'metric', MILLIMETRE / 1000)
/** A thousandth of a metre. */
export const MM = unit('mm', 'metric', MILLIMETRE)
/** 10 mm. */
export const CM = unit('cm', 'metric', 10 * MILLIMETRE)
const DM = unit('dm', 'metric', 100 * MILLIMETRE)
/** 1000 mm. */
export const M = unit('m', 'metric', 1000 * MILLIMETRE)
/** A 360th of a turn: an angle, so of no length. */
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
