import type { FactName, Facts } from './cautionFacts.ts'
import { mentions } from './cautionWords.ts'

/** A number, or so many times another fact: `{ fact: 'base', times: 3 }`. */
export type Bound = number | { readonly fact: FactName; readonly times: number }

/**
 * What one fact must be; all that is given must hold. A missing fact fails every test but `noneOf` and `present: false`.
 * `words` holds when the text names one of them, passing over what it names of `except`.
 */
export interface Condition {
  readonly below?: Bound | undefined
  readonly above?: Bound | undefined
  readonly atLeast?: Bound | undefined
  readonly atMost?: Bound | undefined
  readonly is?: number | boolean | string | undefined
  readonly anyOf?: readonly string[] | undefined
  readonly noneOf?: readonly string[] | undefined
  readonly words?: readonly string[] | undefined
  readonly except?: readonly string[] | undefined
  readonly present?: boolean | undefined
}

/** Conditions that must hold together. */
export type Conditions = { readonly [Name in FactName]?: Condition | undefined }

/** Whether the facts meet every condition. */
export const meets = (facts: Facts, conditions: Conditions): boolean =>
  (Object.keys(conditions) as FactName[]).every((name) => holds(facts, name, conditions[name] ?? {}))

const holds = (facts: Facts, name: FactName, condition: Condition): boolean =>
  isThere(facts[name], condition) &&
  isWithin(facts, facts[name], condition) &&
  isOne(facts[name], condition) &&
  isNamed(facts[name], condition)

const isThere = (fact: Facts[FactName], { present }: Condition): boolean =>
  present === undefined || present === (fact !== undefined)

function isWithin(facts: Facts, fact: Facts[FactName], condition: Condition): boolean {
  const compare = (bound: Bound | undefined, passes: (value: number, limit: number) => boolean): boolean => {
    if (bound === undefined) return true
    const limit = limitOf(facts, bound)
    return typeof fact === 'number' && limit !== undefined && passes(fact, limit)
  }
  return (
    compare(condition.below, (value, limit) => value < limit) &&
    compare(condition.above, (value, limit) => value > limit) &&
    compare(condition.atLeast, (value, limit) => value >= limit) &&
    compare(condition.atMost, (value, limit) => value <= limit)
  )
}

/** Nothing when the bound is read off a fact that is not known. */
function limitOf(facts: Facts, bound: Bound): number | undefined {
  if (typeof bound === 'number') return bound
  const fact = facts[bound.fact]
  return typeof fact === 'number' ? fact * bound.times : undefined
}

const isOne = (fact: Facts[FactName], { is, anyOf, noneOf }: Condition): boolean =>
  (is === undefined || fact === is) &&
  (anyOf === undefined || (fact !== undefined && anyOf.includes(String(fact)))) &&
  (noneOf === undefined || fact === undefined || !noneOf.includes(String(fact)))

const isNamed = (fact: Facts[FactName], { words, except }: Condition): boolean =>
  words === undefined || (typeof fact === 'string' && mentions(fact, words, except))
