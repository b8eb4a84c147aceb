import { z } from 'zod'
import { type CautionRule, TASKS } from '../core/checks/caution.ts'
import { type Condition, meets } from '../core/checks/cautionCondition.ts'
import { FACT_KINDS, type FactKind, type FactName, OPENINGS } from '../core/checks/cautionFacts.ts'
import { toMillimetres } from '../core/measure/length.ts'
import { FINISH_KINDS } from '../core/quantities/product.ts'
import { written, writtenLength } from './amounts.ts'

/** What is read on a phone without scrolling. */
const LONGEST_TEXT = 160
const LONGEST_ADVICE = 600

const isLengthFact = (name: string): name is FactName => FACT_KINDS[name as FactName] === 'length'

/** A length in mm, or so many times another fact. */
const lengthBound = written('a length such as "2in", or times another length such as "3 x base"', (text) => {
  const [, times = '', fact = ''] = /^([\d.]+) ?x ?(\w+)$/.exec(text) ?? []
  if (isLengthFact(fact) && Number(times) > 0) return { fact, times: Number(times) }
  const length = writtenLength(text)
  return length === undefined ? undefined : toMillimetres(length)
})

const bounds = <Bound extends z.ZodType>(bound: Bound) => ({
  below: bound.optional(),
  above: bound.optional(),
  atLeast: bound.optional(),
  atMost: bound.optional(),
  present: z.boolean().optional(),
})

const phrases = z
  .array(z.string().regex(/^[a-z0-9]+( [a-z0-9]+)*$/, 'words in lower case with single spaces'))
  .min(1)

const isNotEmpty = (condition: object): boolean => Object.keys(condition).length > 0
const AT_LEAST_ONE = 'at least one test'

/** Tests on a text that is any text, or one of a few. */
const textCondition = <Text extends z.ZodType<string>>(text: Text) =>
  z
    .strictObject({
      is: text.optional(),
      anyOf: z.array(text).min(1).optional(),
      words: phrases.optional(),
      except: phrases.optional(),
      present: z.boolean().optional(),
    })
    .refine(isNotEmpty, AT_LEAST_ONE)
    .refine(({ words, except }) => !except || words, { path: ['except'], error: '"words" beside "except"' })

const CONDITIONS: Readonly<Record<FactKind, z.ZodType<Condition>>> = {
  length: z.strictObject(bounds(lengthBound)).refine(isNotEmpty, AT_LEAST_ONE),
  number: z.strictObject(bounds(z.number())).refine(isNotEmpty, AT_LEAST_ONE),
  flag: z.strictObject({ is: z.boolean() }),
  text: textCondition(z.string()),
  finish: textCondition(z.enum(FINISH_KINDS)),
  opening: z.strictObject({ noneOf: z.array(z.enum(OPENINGS)).min(1) }),
}

type ConditionsShape = Record<FactName, z.ZodOptional<z.ZodType<Condition>>>

/** A set that holds for an answer nothing is known of would be said with every answer. */
const conditions = z
  .strictObject(
    Object.fromEntries(
      Object.entries(FACT_KINDS).map(([name, kind]) => [name, CONDITIONS[kind].optional()]),
    ) as ConditionsShape,
  )
  .refine((given) => !meets({}, given), 'at least one test that fails where the fact is not known')

const rule = z
  .strictObject({
    id: z.string().regex(/^[a-z]+(-[a-z]+)*$/, 'a name in lower case such as "rip-thin"'),
    tasks: z.array(z.enum(TASKS)).min(1),
    when: z.array(conditions).min(1),
    text: z.string().max(LONGEST_TEXT).regex(/[.]$/, 'one or two sentences that end in a full stop'),
    more: z.string().max(LONGEST_ADVICE).optional(),
    stops: z.boolean().optional(),
    source: z.string().min(1),
  })
  .refine(({ stops, text }) => !stops || /\bopen=\w/.test(text), {
    path: ['text'],
    error: 'a text that says what to type to go on, such as "open=top"',
  })

/** The shape of config/cautions.yaml, read as rules with every length in mm. */
export const cautionsFile = z
  .strictObject({ rules: z.array(rule) })
  .superRefine(({ rules }, context) => {
    const ids = rules.map(({ id }) => id)
    for (const [index, id] of ids.entries())
      if (ids.indexOf(id) !== index)
        context.addIssue({
          code: 'custom',
          path: ['rules', index, 'id'],
          message: 'an id that no other rule has',
        })
  })
  .transform(({ rules }): readonly CautionRule[] => rules)
