import { type Conditions, meets } from './cautionCondition.ts'
import type { Facts } from './cautionFacts.ts'

/** What a caution is about. */
export const TASKS = [
  'rip',
  'crosscut',
  'groove',
  'steep',
  'brad',
  'glue',
  'finish',
  'lift',
  'scrap',
  'treated',
  'use',
] as const
export type Task = (typeof TASKS)[number]

/** One thing to mind, said with an answer: `text` is one or two short sentences. */
export interface Caution {
  readonly id: string
  readonly text: string
  readonly task: string
}

/** A row of config/cautions.yaml: when to say what. Rows stand in order of gravity. */
export interface CautionRule {
  readonly id: string
  /** The first is the one that the caution is filed under. */
  readonly tasks: readonly Task[]
  /** The rule applies when any one of these sets of conditions holds. */
  readonly when: readonly Conditions[]
  readonly text: string
  /** The fuller advice, for whoever asks. */
  readonly more?: string | undefined
  /** The request is answered with this text alone, and no numbers, until the facts change. */
  readonly stops?: boolean | undefined
  readonly source: string
}

/** The cautions that go with an answer, gravest first, none twice. None where the facts are empty. */
export function cautionsFor(facts: Facts, rules: readonly CautionRule[]): readonly Caution[] {
  const applying = rules.filter((rule) => !rule.stops && applies(rule, facts))
  return applying
    .filter(
      (rule, place) => applying.findIndex(({ id, text }) => id === rule.id || text === rule.text) === place,
    )
    .map(asCaution)
}

/** The caution that a request must be answered with in place of numbers; nothing when it may be answered. */
export function stopsFor(facts: Facts, rules: readonly CautionRule[]): Caution | undefined {
  const stop = rules.find((rule) => rule.stops && applies(rule, facts))
  return stop && asCaution(stop)
}

/** All the rules about one task, gravest first: what `more` advice there is on it. */
export const rulesAbout = (task: Task, rules: readonly CautionRule[]): readonly CautionRule[] =>
  rules.filter((rule) => rule.tasks.includes(task))

const applies = (rule: CautionRule, facts: Facts): boolean =>
  rule.when.some((conditions) => meets(facts, conditions))

const asCaution = ({ id, text, tasks }: CautionRule): Caution => ({ id, text, task: tasks[0] ?? 'use' })
