/** Sheet goods and woods by the names people give them in a list, and the words that go before them. */
const MATERIALS = new Set(
  [
    'ply plywood mdf hdf osb hardboard chipboard particleboard melamine blockboard pegboard masonite lumber timber',
    'birch baltic pine spruce fir oak maple cherry walnut poplar cedar hardwood softwood beech ash',
    'marine exterior interior structural sanded treated phenolic cdx',
  ].flatMap((line) => line.split(' ')),
)

/** Words of a size once a number has been read. */
const MEASURE_WORDS =
  /^(?:mm|cm|m|ins?|inch(?:es)?|ft|foot|feet|x|×|\*|by|["'″′”’]+|thick|thk|wide|width|long|length|high|hi|tall|deep|w|l|h|d|t|strong|heavy|full|shy|light|scant|deg(?:rees?)?|°)\.?$/iu

const UNITS_IN_NUMBER = /(?:mm|cm|inch(?:es)?|ins?|ft|feet|foot|m|x|×|\*)/giu

/** Whether a word names what a part is made of; `named` are the materials that the shop's tables know. */
export const isMaterial = (word: string, named: ReadonlySet<string>): boolean =>
  MATERIALS.has(word.toLowerCase()) || named.has(word.toLowerCase())

/** Whether a word belongs to a size that has begun: a unit, a `by`, a side's name. */
export const isMeasureWord = (word: string): boolean => MEASURE_WORDS.test(word)

/** Whether a word is a number or a size by itself: `24`, `3/4`, `24x18`, `2x4x8`, `18mm`; not `A1`. */
export const isNumber = (word: string): boolean =>
  /^["'(]?[\d.¼½¾⅓⅔⅛⅜⅝⅞⅙⅚Ø]/u.test(word) &&
  /[\d¼-¾⅐-⅞]/u.test(word) &&
  !/\p{L}/u.test(word.replace(UNITS_IN_NUMBER, '').replace('Ø', ''))

/** The sections that boards are called by, in any region: `2x4`, `38x89`. */
export const boardTokens = (boards: readonly { readonly name: string }[]): ReadonlySet<string> =>
  new Set(boards.map(({ name }) => name.toLowerCase().split(' ')[0] ?? ''))

/** The words of the materials in the shop's tables. */
export const materialWords = (labels: readonly { readonly material: string }[]): ReadonlySet<string> =>
  new Set(labels.flatMap(({ material }) => material.toLowerCase().split(/\s+/u)))
