/** A whole number of inches and a number of 64ths, 0 to 63. */
export interface Inches {
  readonly whole: number
  readonly parts: number
}

type Style = (inches: Inches) => string

const reduced = (parts: number, of = 64): readonly [number, number] =>
  parts % 2 === 0 && of > 1 ? reduced(parts / 2, of / 2) : [parts, of]

const GLYPHS: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
}

const ONES =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  )
const TENS = 'x x twenty thirty forty fifty sixty seventy eighty ninety'.split(' ')

/** A number from 0 to 999 in words. */
export function inWords(value: number): string {
  if (value < 20) return ONES[value] ?? ''
  if (value < 100)
    return [TENS[Math.floor(value / 10)], ...(value % 10 === 0 ? [] : [ONES[value % 10]])].join(' ')
  return [
    ONES[Math.floor(value / 100)],
    'hundred',
    ...(value % 100 === 0 ? [] : ['and', inWords(value % 100)]),
  ].join(' ')
}

const PARTS: Readonly<Record<number, readonly [string, string]>> = {
  2: ['half', 'halves'],
  4: ['quarter', 'quarters'],
  8: ['eighth', 'eighths'],
  16: ['sixteenth', 'sixteenths'],
  32: ['thirty-second', 'thirty-seconds'],
  64: ['sixty-fourth', 'sixty-fourths'],
}

const smallFraction = (over: number, under: number): string => {
  const raise = (digits: string, from: string) =>
    [...digits].map((digit) => [...from][Number(digit)]).join('')
  return `${raise(`${over}`, '⁰¹²³⁴⁵⁶⁷⁸⁹')}⁄${raise(`${under}`, '₀₁₂₃₄₅₆₇₈₉')}`
}

/** Whole and fraction with something between; either alone where the other is nothing. */
const mixed = (
  { whole, parts }: Inches,
  between: string,
  fraction: (over: number, under: number) => string,
): string => {
  const [over, under] = reduced(parts)
  if (parts === 0) return `${whole}`
  return whole === 0 ? fraction(over, under) : `${whole}${between}${fraction(over, under)}`
}

const stroke = (over: number, under: number): string => `${over}/${under}`
const glyph = (over: number, under: number): string =>
  GLYPHS[stroke(over, under)] ?? smallFraction(over, under)

const feet = (inches: Inches, mark: string, join: string, inch: string): string =>
  `${Math.floor(inches.whole / 12)}${mark}${join}${inches.whole % 12 === 0 && inches.parts > 0 ? '0 ' : ''}${mixed({ whole: inches.whole % 12, parts: inches.parts }, ' ', stroke)}${inch}`

const spoken = ({ whole, parts }: Inches): string => {
  const [over, under] = reduced(parts)
  const name = PARTS[under]?.[over === 1 ? 0 : 1] ?? ''
  const fraction = over < 20 || over % 10 === 0 ? `${inWords(over)} ${name}` : `${over}/${under}`
  if (parts === 0) return `${inWords(whole)} inches`
  return whole === 0 ? `${fraction} of an inch` : `${inWords(whole)} and ${fraction} inches`
}

/** Each way of typing or saying a length in inches; every one says the unit or implies it. */
export const INCH_STYLES: Readonly<Record<string, Style>> = {
  mark: (inches) => `${mixed(inches, ' ', stroke)}"`,
  'curly mark': (inches) => `${mixed(inches, ' ', stroke)}”`,
  'opening curly mark': (inches) => `${mixed(inches, ' ', stroke)}“`,
  'double prime': (inches) => `${mixed(inches, ' ', stroke)}″`,
  'two apostrophes': (inches) => `${mixed(inches, ' ', stroke)}''`,
  'two curly apostrophes': (inches) => `${mixed(inches, ' ', stroke)}’’`,
  'space and mark': (inches) => `${mixed(inches, ' ', stroke)} "`,
  in: (inches) => `${mixed(inches, ' ', stroke)} in`,
  'in, tight': (inches) => `${mixed(inches, ' ', stroke)}in`,
  'in.': (inches) => `${mixed(inches, ' ', stroke)} in.`,
  INCHES: (inches) => `${mixed(inches, ' ', stroke)} INCHES`,
  hyphen: (inches) => `${mixed(inches, '-', stroke)}"`,
  'en dash': (inches) => `${mixed(inches, '–', stroke)}"`,
  plus: (inches) => `${mixed(inches, '+', stroke)}"`,
  and: (inches) => `${mixed(inches, ' and ', stroke)} in`,
  ampersand: (inches) => `${mixed(inches, ' & ', stroke)} in`,
  'fraction slash': (inches) => `${mixed(inches, ' ', (over, under) => `${over}⁄${under}`)}"`,
  glyph: (inches) => `${mixed(inches, '', glyph)}"`,
  'glyph after a space': (inches) => `${mixed(inches, ' ', glyph)} in`,
  'no-break space': (inches) => `${mixed(inches, '\u00A0', stroke)}\u00A0in`,
  '64ths': ({ whole, parts }) => `${whole} ${parts}/64"`,
  decimal: ({ whole, parts }) => `${whole + parts / 64}"`,
  'decimal comma': ({ whole, parts }) =>
    parts % 32 === 0 ? `${whole + parts / 64} in`.replace('.', ',') : `${whole + parts / 64} in`,
  'feet and inches': (inches) => feet(inches, "'", ' ', '"'),
  'curly feet and inches': (inches) => feet(inches, '’', ' ', '”'),
  'feet dash inches': (inches) => feet(inches, "'", '-', '"'),
  'ft in': (inches) => feet(inches, ' ft', ' ', ' in'),
  'ft in, tight': (inches) => feet(inches, 'ft', '', 'in'),
  words: spoken,
  'HTML quote': (inches) => `${mixed(inches, ' ', stroke)}&quot;`,
}

const thousands = (text: string, mark: string): string =>
  text.replace(/(\d)(?=(?:\d{3})+(?!\d))/u, `$1${mark}`)

/** Each way of typing a whole number of tenths of a mm, 1 to 99 999. */
export const METRIC_STYLES: Readonly<Record<string, (tenths: number) => string>> = {
  mm: (tenths) => `${tenths / 10}mm`,
  'mm after a space': (tenths) => `${tenths / 10} mm`,
  millimetres: (tenths) => `${tenths / 10} millimetres`,
  comma: (tenths) => `${tenths / 10} mm`.replace('.', ','),
  'comma for thousands': (tenths) => `${thousands(`${Math.floor(tenths / 10)}`, ',')}.${tenths % 10} mm`,
  'point for thousands': (tenths) => `${thousands(`${Math.floor(tenths / 10)}`, '.')},${tenths % 10} mm`,
  'space for thousands': (tenths) => `${thousands(`${Math.floor(tenths / 10)}`, ' ')}.${tenths % 10} mm`,
  cm: (tenths) => `${tenths / 100} cm`,
  'cm with comma': (tenths) => `${(tenths / 100).toFixed(2)} cm`.replace('.', ','),
  m: (tenths) => `${tenths / 10_000} m`,
  'm with comma': (tenths) => `${(tenths / 10_000).toFixed(4)} m`.replace('.', ','),
}

/** Ways to part the numbers of a size. */
export const SEPARATORS = [' x ', 'x', ' X ', '×', ' × ', ' by ', '*', ' * '] as const
