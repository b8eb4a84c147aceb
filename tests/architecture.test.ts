import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('..', import.meta.url))

interface Source {
  /** From the project's root, such as `src/core/plan.ts`. */
  readonly path: string
  readonly text: string
  readonly imports: readonly Import[]
}

interface Import {
  /** A path from the root for a file of the project, else the package's name. */
  readonly target: string
  readonly typeOnly: boolean
}

const sources: readonly Source[] = ['src', 'commands'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => readSource(relative(root, join(entry.parentPath, entry.name)))),
)

function readSource(path: string): Source {
  const text = readFileSync(join(root, path), 'utf8')
  const lines = [...text.matchAll(/^(?:import|export)\s+(type\s)?[^'"]*?\bfrom\s+['"]([^'"]+)['"]/gmu)]
  const bare = [...text.matchAll(/\bimport\(\s*['"]([^'"]+)['"]/gu)].map((match) => ['', '', match[1] ?? ''])
  const imports = [...lines, ...bare].map((match) => ({
    target: resolve(path, match[2] ?? ''),
    typeOnly: !!match[1],
  }))
  return { path, text, imports }
}

function resolve(from: string, target: string): string {
  return target.startsWith('.') ? relative(root, join(root, dirname(from), target)) : target
}

/** Who may import what: the first rule whose `from` matches a file holds for it. */
const RULES: readonly { from: RegExp; may: readonly RegExp[]; mayTypes?: readonly RegExp[] }[] = [
  { from: /^src\/main(?:\.ts$|\/)/u, may: [/.*/u] },
  { from: /^src\/core\//u, may: [/^src\/core\//u, /^(?:fraction\.js|ohm-js|highs|fastest-levenshtein)$/u] },
  { from: /^src\/drawing\//u, may: [/^src\/(?:core|drawing)\//u] },
  {
    from: /^src\/painting\//u,
    may: [/^src\/(?:painting|drawing)\//u, /^(?:@resvg\/resvg-js|tinypool)$/u, /^node:/u],
  },
  {
    from: /^src\/printing\//u,
    may: [/^src\/(?:printing|drawing)\//u, /^(?:pdfkit|fontkit|tinypool)$/u, /^node:/u],
    mayTypes: [/^src\/bot\/handout\/handout\.ts$/u],
  },
  {
    from: /^src\/bot\//u,
    may: [
      /^src\/(?:core|drawing|bot)\//u,
      /^(?:zod|fastest-levenshtein|csv-stringify\/sync)$/u,
      /^node:(?:fs\/promises|url)$/u,
    ],
  },
  { from: /^commands\//u, may: [/^src\/(?:bot|core|drawing)\//u, /^zod$/u] },
  {
    from: /^src\/config(?:\.ts|\/)/u,
    may: [/^src\/(?:core|config|bot)\b/u, /^(?:zod|yaml|fastest-levenshtein|fraction\.js)$/u, /^node:/u],
  },
  {
    from: /^src\/store\//u,
    may: [/^src\/store\//u, /^(?:kysely|better-sqlite3|pg)$/u, /^node:/u],
    mayTypes: [/^src\/bot\/(?:state|platform)\.ts$/u],
  },
  {
    from: /^src\/health\//u,
    may: [/^src\/health\//u, /^(?:fastify|prom-client)$/u],
    mayTypes: [/^src\/bot\//u],
  },
  {
    from: /^src\/search\//u,
    may: [/^src\/(?:core|search)\//u, /^src\/bot\/(?:search|refusal)\.ts$/u, /^tinypool$/u, /^node:/u],
  },
  { from: /^src\/platforms\/[^/]+\.ts$/u, may: [/^src\/bot\//u, /^src\/platforms\/[^/]+\.ts$/u] },
]

/** A platform may use itself, what platforms share, the bot, and its own SDK; never another platform. */
function mayImport(file: string, { target, typeOnly }: Import): boolean {
  const platform = /^src\/platforms\/([^/]+)\//u.exec(file)?.[1]
  if (platform) {
    const own = new RegExp(`^src/(?:bot/|platforms/${platform}/|platforms/[^/]+\\.ts$)`, 'u')
    return own.test(target) || !target.startsWith('src/')
  }
  const rule = RULES.find(({ from }) => from.test(file))
  const allowed = [...(rule?.may ?? []), ...(typeOnly ? (rule?.mayTypes ?? []) : [])]
  return allowed.some((pattern) => pattern.test(target))
}

describe('the shape of the sources', () => {
  it('finds the sources', () => {
    expect(sources.length).toBeGreaterThan(40)
    expect(sources.flatMap(({ imports }) => imports).length).toBeGreaterThan(sources.length)
  })

  it('imports only inwards', () => {
    const wrong = sources.flatMap(({ path, imports }) =>
      imports.filter((each) => !mayImport(path, each)).map(({ target }) => `${path} imports ${target}`),
    )
    expect(wrong).toEqual([])
  })

  it('has no import cycle', () => {
    const edges = new Map(sources.map(({ path, imports }) => [path, imports.map(({ target }) => target)]))
    expect(findCycle(edges)).toEqual([])
  })

  it('has no file over 300 lines', () => {
    const long = sources.filter(({ text }) => text.split('\n').length > 301).map(({ path }) => path)
    expect(long).toEqual([])
  })

  it('has a default export in every command and nowhere else', () => {
    const wrong = sources.filter(
      ({ path, text }) => /^export default /mu.test(text) !== path.startsWith('commands/'),
    )
    expect(wrong.map(({ path }) => path)).toEqual([])
  })

  it('reads the environment and the clock only where it starts', () => {
    const pure = sources.filter(({ path }) => /^src\/(?:core|drawing|bot)\/|^commands\//u.test(path))
    const wrong = pure.filter(({ text }) =>
      /process\.env|Date\.now\(|new Date\(\)|Math\.random\(/u.test(text),
    )
    expect(wrong.map(({ path }) => path)).toEqual([])
  })
})

/** The first cycle found, as a list of files, or nothing. */
function findCycle(edges: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const done = new Set<string>()
  const visit = (file: string, trail: readonly string[]): readonly string[] => {
    if (trail.includes(file)) return [...trail.slice(trail.indexOf(file)), file]
    if (done.has(file)) return []
    for (const next of edges.get(file) ?? []) {
      const cycle = visit(next, [...trail, file])
      if (cycle.length > 0) return cycle
    }
    done.add(file)
    return []
  }
  for (const file of edges.keys()) {
    const cycle = visit(file, [])
    if (cycle.length > 0) return cycle
  }
  return []
}
