import Fraction from 'fraction.js'

/** A number as typed or said, without its unit. Its value is exact. */
export interface TypedNumber {
  readonly value: Fraction
  readonly form: 'whole' | 'decimal' | 'fraction' | 'mixed'
  /** Said in words: `twenty three`. */
  readonly spoken?: boolean
  /** The figures over and under the stroke, as typed: what a lost space is looked for in. */
  readonly stroke?: { readonly over: string; readonly under: string }
  /** `7/16ths`, `three eighths`, `½`: the fraction is one on purpose, no space was lost. */
  readonly deliberate?: boolean
  /** A mixed number whose parts a space keeps apart: `4 1/2` in `2x4 1/2 ply` is two numbers. */
  readonly parts?: readonly [whole: Fraction, rest: Fraction]
  /** The other value that the same words can have: `twenty three thirty seconds`. */
  readonly or?: Fraction
  /** A comma with three figures after it (`1,220`), or with fewer (`24,36`). */
  readonly comma?: 'three' | 'few'
  /** Decimal places typed after the point or the comma. */
  readonly places?: number
  /** Why this is no number, in words that follow "because". */
  readonly fault?: string
}

/** Zero, exact: the value of what is no number. */
export const ZERO_VALUE = new Fraction(0)

/** Thousands in threes with a decimal mark of the other kind, or two groups of thousands and no decimals. */
const GROUPED = /^(\d{1,3}(?:,\d{3})+)\.(\d+)$|^(\d{1,3}(?:\.\d{3})+),(\d+)$|^(\d{1,3}(?:,\d{3}){2,})$/u

/** A number of figures, points and commas: `1102`, `.719`, `5,5`, `1,220.5`, `1.220,5`. */
export function typedNumber(text: string): TypedNumber {
  if (text.length > 16) return faulty('it has too many figures')
  if (/^\d+$/u.test(text)) return { value: new Fraction(text), form: 'whole' }
  const single = /^(\d*)([.,])(\d+)$/u.exec(text)
  if (single) return decimal(single[1] ?? '', single[2] ?? '', single[3] ?? '')
  const grouped = GROUPED.exec(text)
  if (!grouped) return faulty('it has more than one decimal mark')
  const whole = (grouped[1] ?? grouped[3] ?? grouped[5] ?? '').replace(/[.,]/gu, '')
  const places = grouped[2] ?? grouped[4] ?? ''
  return {
    value: new Fraction(`${whole}.${places || '0'}`),
    form: places ? 'decimal' : 'whole',
    places: places.length,
  }
}

function decimal(whole: string, mark: string, places: string): TypedNumber {
  const value = new Fraction(`${whole || '0'}.${places}`)
  const number: TypedNumber = { value, form: 'decimal', places: places.length }
  if (mark === '.' || /^0*$/u.test(whole)) return number
  return { ...number, comma: places.length === 3 && whole.length < 4 ? 'three' : 'few' }
}

/** `over / under`, as typed; a fault when the lower figure is zero or either is no whole number. */
export function typedFraction(over: string, under: string): TypedNumber {
  if (!/^\d{1,6}$/u.test(over) || !/^\d{1,6}$/u.test(under))
    return faulty('a fraction needs two whole numbers')
  if (Number(under) === 0) return faulty('nothing can be divided by zero')
  return { value: new Fraction(Number(over), Number(under)), form: 'fraction', stroke: { over, under } }
}

const faulty = (fault: string): TypedNumber => ({ value: ZERO_VALUE, form: 'whole', fault })
