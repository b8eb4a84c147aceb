import Fraction from 'fraction.js'
import { isHyphen, type Parsed, type Rule, type Tokens, wordAt } from './cursor.ts'
import { denominator } from './denominator.ts'

const UNITS = 'zero one two three four five six seven eight nine'.split(' ')
const TEENS = 'ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ')
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ')

const ONES: ReadonlyMap<string, number> = new Map(UNITS.map((word, value) => [word, value]))
const UNDER_TWENTY: ReadonlyMap<string, number> = new Map(
  [...UNITS, ...TEENS].map((word, value) => [word, value]),
)
const BY_TENS: ReadonlyMap<string, number> = new Map([
  ...TENS.map((word, index) => [word, (index + 2) * 10] as const),
  ['fourty', 40],
])

/** `twenty three`, `twenty-three`, `twentythree`, `nineteen`. */
const underHundred: Rule<number> = (tokens, at) => {
  const word = wordAt(tokens, at)
  const small = UNDER_TWENTY.get(word)
  if (small !== undefined) return { node: small, next: at + 1 }
  const tens = BY_TENS.get(word)
  if (tens === undefined) return runTogether(word, at)
  const after = isHyphen(tokens, at + 1) ? at + 2 : at + 1
  const ones = ONES.get(wordAt(tokens, after))
  return ones ? { node: tens + ones, next: after + 1 } : { node: tens, next: at + 1 }
}

function runTogether(word: string, at: number): Parsed<number> | undefined {
  const [, first = '', last = ''] = /^(\p{L}+ty)(\p{L}+)$/u.exec(word) ?? []
  const tens = BY_TENS.get(first)
  const ones = ONES.get(last)
  return tens && ones ? { node: tens + ones, next: at + 1 } : undefined
}

/** `so many [and] rest`; the rest is left alone when it is the top of a fraction: `one hundred and three quarters`. */
function withRest(count: number, rest: Rule<number>, tokens: Tokens, at: number): Parsed<number> {
  const from = wordAt(tokens, at) === 'and' ? at + 1 : at
  const more = rest(tokens, from)
  if (!more || denominator(tokens, more.next)) return { node: count, next: at }
  return { node: count + more.node, next: more.next }
}

const underThousand: Rule<number> = (tokens, at) => {
  const head = wordAt(tokens, at) === 'a' ? { node: 1, next: at + 1 } : underHundred(tokens, at)
  if (head && wordAt(tokens, head.next) === 'hundred')
    return withRest(head.node * 100, underHundred, tokens, head.next + 1)
  return underHundred(tokens, at)
}

const spokenWhole: Rule<number> = (tokens, at) => {
  const head = wordAt(tokens, at) === 'a' ? { node: 1, next: at + 1 } : underThousand(tokens, at)
  if (head && wordAt(tokens, head.next) === 'thousand')
    return withRest(head.node * 1000, underThousand, tokens, head.next + 1)
  return underThousand(tokens, at)
}

/** The figures said after `point`: `two five` is .25. */
function decimals(tokens: Tokens, at: number): Parsed<string> | undefined {
  let said = ''
  let next = at
  for (let one = ONES.get(wordAt(tokens, next)); one !== undefined; one = ONES.get(wordAt(tokens, next))) {
    said += one
    next += 1
  }
  return said === '' ? undefined : { node: said, next }
}

/** A number said in words, whole or with decimals: `twenty three`, `one hundred and twenty`, `one point five`. */
export const spokenNumber: Rule<{ value: Fraction; decimal: boolean }> = (tokens, at) => {
  const whole = spokenWhole(tokens, at)
  const point = whole?.next ?? at
  if (wordAt(tokens, point) === 'point') {
    const places = decimals(tokens, point + 1)
    if (places)
      return {
        node: { value: new Fraction(`${whole?.node ?? 0}.${places.node}`), decimal: true },
        next: places.next,
      }
  }
  return whole && { node: { value: new Fraction(whole.node), decimal: false }, next: whole.next }
}
