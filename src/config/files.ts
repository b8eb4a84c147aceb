import { join } from 'node:path'
import type { z } from 'zod'
import { ConfigError, type Problem } from './configError.ts'
import { expected, explain } from './explain.ts'
import { readSource, type Source } from './source.ts'

type Schemas = Readonly<Record<string, z.ZodType>>

/** What each file says, checked, and where it says it. */
export interface ConfigFiles<Files extends Schemas> {
  readonly values: { readonly [Name in keyof Files]: z.output<Files[Name]> }
  readonly sources: { readonly [Name in keyof Files]: Source }
}

/** Reads `<folder>/<name>.yaml` for every schema. Throws one ConfigError with the problems of all the files. */
export function readFiles<Files extends Schemas>(folder: string, schemas: Files): ConfigFiles<Files> {
  const problems: Problem[] = []
  const values: Record<string, unknown> = {}
  const sources: Record<string, Source> = {}
  for (const [name, schema] of Object.entries(schemas))
    try {
      const source = readSource(join(folder, `${name}.yaml`))
      sources[name] = source
      values[name] = check(source, schema)
    } catch (error) {
      if (!(error instanceof ConfigError)) throw error
      problems.push(...error.problems)
    }
  if (problems.length > 0) throw new ConfigError(problems)
  return { values, sources } as unknown as ConfigFiles<Files>
}

function check(source: Source, schema: z.ZodType): unknown {
  // A schema that is used once is not worth making code for.
  const outcome = schema.safeParse(source.value, { error: expected, jitless: true })
  if (outcome.success) return outcome.data
  throw new ConfigError(explain(outcome.error.issues, source, schema))
}
