import type { Region } from '../core/stock/stock.ts'

/** Things by the names on the rack, and what else people call them. */
export interface NamedGroup<Value> {
  readonly rows: Readonly<Record<string, Value>>
  readonly alsoCalled: Readonly<Record<string, string>>
}

/** One name in one region, where it stands in the file, and its value; no value for an alias of nothing. */
export interface NamedRow<Value> {
  readonly region: Region
  readonly name: string
  readonly aliasOf?: string
  readonly value: Value | undefined
  readonly path: readonly PropertyKey[]
}

/** A row for every name of a group, aliases last. `path` is the group's; `key` is what its rows stand under. */
export function namedRows<Value>(
  region: Region,
  { rows, alsoCalled }: NamedGroup<Value>,
  path: readonly PropertyKey[],
  key: string,
): readonly NamedRow<Value>[] {
  const own = Object.entries(rows).map(([name, value]) => ({
    region,
    name,
    value,
    path: [...path, key, name],
  }))
  const aliases = Object.entries(alsoCalled).map(([name, aliasOf]) => ({
    region,
    name,
    aliasOf,
    value: rows[aliasOf],
    path: [...path, 'alsoCalled', name],
  }))
  return [...own, ...aliases]
}

/** What is wrong with the names as zod issues: one that stands twice in a region, and an alias of nothing. */
export function nameIssues(rows: readonly NamedRow<unknown>[]) {
  const seen = new Set<string>()
  return rows.flatMap(({ region, name, value, path }) => {
    const key = `${region} ${name.toLowerCase()}`
    const repeated = seen.has(key)
    seen.add(key)
    if (repeated) return [issue(path, `a name that nothing else in ${region} has`)]
    return value === undefined ? [issue(path, 'a name that stands in the same group')] : []
  })
}

const issue = (path: readonly PropertyKey[], message: string) => ({
  code: 'custom' as const,
  path: [...path],
  message,
})
