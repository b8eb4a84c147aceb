import { appendFile, mkdir, readFile, rename, writeFile } from 'node:fs/promises'
import { contentsIn, openContents } from './contents.ts'
import { StoreError } from './storeError.ts'

/** One line of the file: an entry of a channel, as JSON. */
interface Line {
  readonly channel: string
  readonly entry: { readonly id: string }
}

/** Entries of a channel that are kept; older ones go. */
const KEPT = 1000

/**
 * What was said in every channel, in the file `transcript.jsonl` of `folder`, a line an entry, and what was shown with it
 * in `contents` beside it. A line that is not whole, as a power cut leaves one, is passed over.
 */
export async function openTranscript(folder: string) {
  const file = `${folder}/transcript.jsonl`
  await mkdir(folder, { recursive: true }).catch((error: unknown) => fail('opened', folder, error))
  const contents = await openContents(`${folder}/contents`)
  const text = await readFile(file, 'utf8').catch((error: { code?: string }) =>
    error.code === 'ENOENT' ? '' : fail('read', file, error),
  )
  const lines = text.split('\n').filter((line) => line !== '')
  const channels = new Map<string, Map<string, unknown>>()
  for (const line of lines.flatMap(readLine)) keep(channels, line)
  let writing: Promise<void> = Promise.resolve()
  /** One write after another, so that lines never run into each other. */
  const inTurn = (work: () => Promise<void>): Promise<void> => {
    const done = writing.then(work).catch((error: unknown) => fail('written', file, error))
    writing = done.catch(() => {})
    return done
  }
  /** Writes what is kept anew, and deletes those of the named contents that it no longer names. */
  const rewrite = async (named: Iterable<string>) => {
    const whole = [...channels]
      .flatMap(([channel, entries]) =>
        [...entries.values()].map((entry) => `${JSON.stringify({ channel, entry })}\n`),
      )
      .join('')
    await writeFile(`${file}.new`, whole)
    await rename(`${file}.new`, file)
    const still = contentsIn(whole)
    await contents.forget([...named].filter((name) => !still.has(name)))
  }
  const count = [...channels.values()].reduce((sum, entries) => sum + entries.size, 0)
  if (lines.length > 2 * count || (text !== '' && !text.endsWith('\n')))
    await inTurn(async () => rewrite(await contents.names()))
  return {
    append: async (channel: string, entry: { readonly id: string }): Promise<void> => {
      const line = `${JSON.stringify({ channel, entry })}\n`
      await inTurn(() => appendFile(file, line))
      for (const each of readLine(line)) keep(channels, each)
    },
    recent: async (
      channel: string,
      most: number,
      wanted: (entry: unknown) => boolean,
    ): Promise<readonly unknown[]> =>
      [...(channels.get(channel)?.values() ?? [])].filter(wanted).slice(-most),
    forget: async (channel: string, wanted: (entry: unknown) => boolean): Promise<number> => {
      const entries = channels.get(channel) ?? new Map<string, unknown>()
      const gone = [...entries].filter(([, entry]) => wanted(entry))
      for (const [id] of gone) entries.delete(id)
      if (entries.size === 0) channels.delete(channel)
      if (gone.length > 0) await inTurn(() => rewrite(contentsIn(JSON.stringify(gone))))
      return gone.length
    },
    channels: async (): Promise<readonly string[]> => [...channels.keys()].sort(),
    keepContent: contents.keep,
    readContent: contents.read,
  }
}

function keep(channels: Map<string, Map<string, unknown>>, { channel, entry }: Line): void {
  const entries = channels.get(channel) ?? new Map<string, unknown>()
  channels.set(channel, entries)
  entries.delete(entry.id)
  entries.set(entry.id, entry)
  for (const [oldest] of entries) {
    if (entries.size <= KEPT) break
    entries.delete(oldest)
  }
}

function readLine(text: string): readonly Line[] {
  try {
    const line = JSON.parse(text) as Partial<Line> | null
    return typeof line?.channel === 'string' && typeof line.entry?.id === 'string' ? [line as Line] : []
  } catch {
    return []
  }
}

const fail = (what: string, file: string, cause: unknown): never => {
  throw new StoreError(`${file} cannot be ${what}: ${(cause as Error).message}`, cause)
}
