import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { type Document, isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument } from 'yaml'
import { ConfigError, type Problem } from './configError.ts'
import { readBefore } from './readBefore.ts'

/** A YAML file that has been read: its plain value, and the line that any part of it stands on. */
export interface Source {
  readonly file: string
  readonly value: unknown
  /** Undefined where the source has no lines. */
  readonly lineOf: (path: readonly PropertyKey[]) => number | undefined
}

/** Aliases that may be followed in one file; a file that needs more is a bomb. */
const ALIASES = 50

/** What a text is known by among those that have been read before. */
export const nameOf = (text: string): string => createHash('sha256').update(text).digest('hex')

/**
 * Reads a YAML file. Throws a ConfigError where the file is missing, is not YAML, repeats a key or abuses aliases. A text that
 * is among `known`, with what it says, is read as YAML only when a line of it is asked for.
 */
export function readSource(file: string, known: ReadonlyMap<string, unknown> = readBefore): Source {
  const text = textOf(file)
  const name = known.size > 0 ? nameOf(text) : ''
  if (!known.has(name)) return readText(file, text)
  return { file, value: known.get(name), lineOf: (path) => readText(file, text).lineOf(path) }
}

function readText(file: string, text: string): Source {
  const lines = new LineCounter()
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true })
  const faults = [...document.errors, ...document.warnings].map(
    ({ code, pos }): Problem => ({
      file,
      line: lines.linePos(pos[0]).line,
      sentence:
        code === 'DUPLICATE_KEY'
          ? 'a key stands here a second time: keep one'
          : 'is not YAML here: check the quotes and the indentation',
    }),
  )
  // One slip sets off several faults: the first on a line is enough.
  const first = faults.filter(({ line }, at) => faults.findIndex((other) => other.line === line) === at)
  if (first.length > 0) throw new ConfigError(first)
  return {
    file,
    value: plain(document, file),
    lineOf: (path) => lines.linePos(offsetOf(document, path)).line,
  }
}

function textOf(file: string): string {
  try {
    return readFileSync(file, 'utf8')
  } catch (error) {
    throw new ConfigError([{ file, sentence: unread(error) }])
  }
}

function plain(document: Document, file: string): unknown {
  try {
    return document.toJS({ maxAliasCount: ALIASES })
  } catch {
    throw new ConfigError([
      { file, sentence: 'repeats its parts (*) too often or inside themselves: write them out' },
    ])
  }
}

/** Where in the text the deepest part of `path` that exists begins; a key stands for its value. */
function offsetOf(document: Document, path: readonly PropertyKey[]): number {
  let node: unknown = document.contents
  let offset = 0
  for (const segment of path) {
    if (isAlias(node)) node = node.resolve(document)
    if (isMap(node)) {
      const pair = node.items.find(({ key }) => isScalar(key) && String(key.value) === String(segment))
      if (!pair || !isScalar(pair.key)) break
      offset = pair.key.range?.[0] ?? offset
      node = pair.value
    } else if (isSeq(node)) {
      const item = node.items[Number(segment)] as { range?: readonly number[] } | undefined
      offset = item?.range?.[0] ?? offset
      node = item
    } else break
  }
  return offset
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such file',
  EACCES: 'this file may not be read: check its permissions',
  EPERM: 'this file may not be read: check its permissions',
  EISDIR: 'this is a folder, not a file',
}

const unread = (error: unknown): string =>
  REASONS[(error as NodeJS.ErrnoException).code ?? ''] ?? 'this file cannot be read'
