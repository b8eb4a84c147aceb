import {
  type FileHandle,
  appendFile,
  mkdir,
  open,
  readFile,
  rename,
  truncate,
  writeFile,
} from 'node:fs/promises'
import { contentsIn, openContents } from './contents.ts'
import { StoreError } from './storeError.ts'

/** One line of the file: an entry of a channel, as JSON. */
interface Line {
  readonly channel: string
  readonly entry: { readonly id: string }
}

/** Where a line lies in the file, in bytes, with the line break at its end. */
interface Place {
  readonly from: number
  readonly length: number
}

/** Where the entries of each channel lie, by their ids, oldest first: what was said itself would fill the memory. */
type Index = Map<string, Map<string, Place>>

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
  const readWhole = () =>
    readFile(file).catch((error: { code?: string }) =>
      error.code === 'ENOENT' ? Buffer.alloc(0) : fail('read', file, error),
    )
  const atFirst = await readWhole()
  let { index, lines } = indexOf(atFirst)
  let size = atFirst.length
  let turn: Promise<unknown> = Promise.resolve()
  /** One after another, so that lines never run into each other and are read where they lie. */
  const inTurn = <Result>(what: string, work: () => Promise<Result>): Promise<Result> => {
    const done = turn.then(work).catch((error: unknown) => fail(what, file, error))
    turn = done.catch(() => {})
    return done
  }
  /** Writes what is kept anew, and deletes those of the named contents that it no longer names. */
  const rewrite = async (named: Iterable<string>) => {
    const before = await readWhole()
    const kept = [...index.values()].flatMap((places) =>
      [...places.values()].map(({ from, length }) => before.subarray(from, from + length)),
    )
    const whole = Buffer.concat(kept)
    await writeFile(`${file}.new`, whole)
    await rename(`${file}.new`, file)
    index = indexOf(whole).index
    size = whole.length
    const still = contentsIn(whole.toString())
    await contents.forget([...named].filter((name) => !still.has(name)))
  }
  const count = [...index.values()].reduce((sum, places) => sum + places.size, 0)
  const isWhole = size === 0 || atFirst.at(-1) === LINE_BREAK
  if (lines > 2 * count || !isWhole) await inTurn('written', async () => rewrite(await contents.names()))
  return {
    append: (channel: string, entry: { readonly id: string }): Promise<void> =>
      inTurn('written', async () => {
        const line = Buffer.from(`${JSON.stringify({ channel, entry })}\n`)
        try {
          await appendFile(file, line)
        } catch (error) {
          await truncate(file, size).catch(() => undefined)
          throw error
        }
        keep(index, { channel, entry }, { from: size, length: line.length })
        size += line.length
      }),
    recent: (
      channel: string,
      most: number,
      wanted: (entry: unknown) => boolean,
    ): Promise<readonly unknown[]> =>
      inTurn('read', async () => {
        const found: unknown[] = []
        const newest = [...(index.get(channel)?.values() ?? [])].reverse()
        await readAt(file, newest, (entry) => {
          if (wanted(entry)) found.push(entry)
          return found.length < most
        })
        return found.reverse()
      }),
    forget: (channel: string, wanted: (entry: unknown) => boolean): Promise<number> =>
      inTurn('written', async () => {
        const places = index.get(channel) ?? new Map<string, Place>()
        const gone: { readonly id: string }[] = []
        await readAt(file, [...places.values()], (entry) => {
          if (wanted(entry)) gone.push(entry)
          return true
        })
        for (const { id } of gone) places.delete(id)
        if (places.size === 0) index.delete(channel)
        if (gone.length > 0) await rewrite(contentsIn(JSON.stringify(gone)))
        return gone.length
      }),
    channels: async (): Promise<readonly string[]> => [...index.keys()].sort(),
    keepContent: contents.keep,
    readContent: contents.read,
  }
}

const LINE_BREAK = 0x0a

/** Where the entries lie in what a file holds, and how many lines there are in all. */
function indexOf(whole: Buffer): { index: Index; lines: number } {
  const index: Index = new Map()
  let lines = 0
  for (let from = 0; from < whole.length; lines += 1) {
    const end = whole.indexOf(LINE_BREAK, from)
    const next = end === -1 ? whole.length : end + 1
    const line = end === -1 ? undefined : readLine(whole.toString('utf8', from, end))
    if (line) keep(index, line, { from, length: next - from })
    from = next
  }
  return { index, lines }
}

/** Reads the entries at these places in turn, for as long as `next` asks for more. */
async function readAt(
  file: string,
  places: readonly Place[],
  next: (entry: { readonly id: string }) => boolean,
): Promise<void> {
  if (places.length === 0) return
  let handle: FileHandle | undefined
  try {
    handle = await open(file)
    for (const { from, length } of places) {
      const { buffer } = await handle.read(Buffer.alloc(length), 0, length, from)
      const line = readLine(buffer.toString())
      if (line && !next(line.entry)) return
    }
  } finally {
    await handle?.close()
  }
}

function keep(index: Index, { channel, entry }: Line, place: Place): void {
  const places = index.get(channel) ?? new Map<string, Place>()
  index.set(channel, places)
  places.delete(entry.id)
  places.set(entry.id, place)
  for (const [oldest] of places) {
    if (places.size <= KEPT) break
    places.delete(oldest)
  }
}

/** Undefined where the text is no entry. */
function readLine(text: string): Line | undefined {
  try {
    const line = JSON.parse(text) as Partial<Line> | null
    return typeof line?.channel === 'string' && typeof line.entry?.id === 'string'
      ? (line as Line)
      : undefined
  } catch {
    return undefined
  }
}

const fail = (what: string, file: string, cause: unknown): never => {
  throw new StoreError(`${file} cannot be ${what}: ${(cause as Error).message}`, cause)
}
