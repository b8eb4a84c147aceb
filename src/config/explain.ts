import { z } from 'zod'
import { didYouMean, listed } from '../bot/suggest.ts'
import type { Problem } from './configError.ts'
import type { Source } from './source.ts'

type Issue = z.core.$ZodIssue

/** Every issue that zod found in a source, as problems of one line each. */
export const explain = (issues: readonly Issue[], source: Source, schema: z.ZodType): readonly Problem[] =>
  issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys'
      ? issue.keys.map((key) => unknownKey(key, issue, source, schema))
      : [wrongValue(issue, source)],
  )

function wrongValue(issue: Issue, { file, value, lineOf }: Source): Problem {
  const where = issue.path.length === 0 ? '' : `${issue.path.join('.')}: `
  const sentence = `${where}expected ${issue.message}, ${wasRead(at(value, issue.path))}`
  return { file, line: lineOf(issue.path), sentence }
}

function unknownKey(key: string, issue: Issue, { file, lineOf }: Source, schema: z.ZodType): Problem {
  const path = [...issue.path, key]
  const known = keysAt(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }), issue.path)
  const hint = didYouMean(key, known) || ` The keys here are ${listed(known, 'and')}.`
  return { file, line: lineOf(path), sentence: `${path.join('.')}: no such key.${hint}` }
}

const at = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((part, key) => (part as Record<PropertyKey, unknown> | undefined)?.[key], value)

function wasRead(value: unknown): string {
  if (value === undefined || value === null) return 'found nothing'
  const text = jsonOf(value)
  return `read ${text.length > 60 ? `${text.slice(0, 60)}...` : text}`
}

/** JSON has no words for a list that holds itself, which an alias can make. */
function jsonOf(value: unknown): string {
  try {
    return JSON.stringify(value)
  } catch {
    return 'something that holds itself'
  }
}

/** The keys that a block may have, found by following `path` through its JSON schema. */
function keysAt(schema: z.core.JSONSchema.BaseSchema, path: readonly PropertyKey[]): readonly string[] {
  const [segment, ...rest] = path
  if (segment === undefined) return Object.keys(schema.properties ?? {})
  const next = schema.properties?.[String(segment)] ?? schema.items ?? schema.additionalProperties
  return typeof next === 'object' && !Array.isArray(next) ? keysAt(next, rest) : []
}

const TYPES: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  array: 'a list',
  object: 'a block of keys',
  record: 'a block of keys',
  boolean: 'true or false',
}

/** What zod expected, in words that fit after "expected"; given to `safeParse` so that a schema's own words come first. */
export function expected(issue: z.core.$ZodRawIssue): string | undefined {
  if (issue.code === 'invalid_type') return TYPES[issue.expected] ?? issue.expected
  if (issue.code === 'invalid_value') return listed(issue.values.map(String), 'or')
  if (issue.code === 'too_small')
    return `${bounded(issue.origin)} ${issue.inclusive ? 'of at least' : 'over'} ${issue.minimum}`
  if (issue.code === 'too_big')
    return `${bounded(issue.origin)} ${issue.inclusive ? 'of at most' : 'under'} ${issue.maximum}`
  return undefined
}

const bounded = (origin: string): string =>
  origin === 'string' ? 'text with a length' : origin === 'array' ? 'a list with a length' : 'a number'
