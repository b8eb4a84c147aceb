import { createHash } from 'node:crypto'
import { setTimeout as pause } from 'node:timers/promises'
import type { PlatformParts } from '../../bot/platform.ts'
import { showIn } from '../../bot/show.ts'
import { type Board, recallBoard, type Standing } from '../board.ts'
import { limits } from './limits.ts'
import type { Live } from './live.ts'
import type { Posted } from './posted.ts'
import { render } from './render.ts'

/** What the boards need of the outside. */
export interface BoardParts extends Pick<PlatformParts, 'keeping' | 'paint' | 'log'> {
  readonly live: Live
  /** The channels in which something was said. */
  readonly channels: () => Promise<readonly string[]>
  /** Deletes what was asked in a channel before a time in ISO 8601. */
  readonly forget: (channel: string, before: string) => Promise<unknown>
}

/** The boards of all channels, which any process over the store may change, as the pages show them. */
export interface Boards {
  /** What stands in a channel now; open pages are told what of it is new, and what was to be deleted is. */
  readonly look: (channel: string) => Promise<readonly Posted[]>
  /** What a picture or a file of a notice holds; undefined where none that stands has it. */
  readonly content: (name: string) => Uint8Array | undefined
  /** Looks again and again until `signal` is aborted: every 2 s where a page is open, every minute elsewhere. */
  readonly watch: (signal: AbortSignal) => Promise<void>
}

/** A board as it was shown last. */
interface Shown {
  readonly revision: number
  readonly posted: readonly Posted[]
  readonly contents: ReadonlyMap<string, Uint8Array>
}

/** Boards that are remembered as they were shown: those of all the pages there can be, and as many of pages just closed. */
const REMEMBERED = 2 * limits.pages

export function createBoards(parts: BoardParts): Boards {
  const { keeping, live, log } = parts
  const shown = new Map<string, Shown>()
  const deletedBefore = new Map<string, string>()

  const deleteIn = async (channel: string, { forgotten }: Board): Promise<void> => {
    if (forgotten === undefined || deletedBefore.get(channel) === forgotten) return
    await parts.forget(channel, forgotten)
    deletedBefore.set(channel, forgotten)
    live.publishChange(channel)
  }
  const show = (channel: string, now: Shown): void => {
    const before = shown.get(channel)
    shown.delete(channel)
    shown.set(channel, now)
    for (const [oldest] of shown) {
      if (shown.size <= REMEMBERED) break
      shown.delete(oldest)
    }
    const known = new Set(before?.posted.map((each) => JSON.stringify(each)))
    // Whoever came in before there was anything to compare with was shown all of it then.
    if (before)
      for (const each of now.posted) if (!known.has(JSON.stringify(each))) live.publishPosted(channel, each)
  }
  const look = async (channel: string): Promise<readonly Posted[]> => {
    const { revision, board } = await recallBoard(keeping, channel)
    const isNews = () => (shown.get(channel)?.revision ?? -1) < revision
    if (isNews()) {
      await deleteIn(channel, board)
      const now = await rendered(revision, board, parts)
      // Another look, which read a newer board, may have been quicker.
      if (isNews()) show(channel, now)
    }
    return shown.get(channel)?.posted ?? []
  }
  /** Those without a page have nothing to show, but something to delete perhaps. */
  const lookAt = async (where: 'open' | 'all'): Promise<void> => {
    for (const channel of live.channels()) await look(channel)
    if (where === 'open') return
    for (const channel of await parts.channels())
      await deleteIn(channel, (await recallBoard(keeping, channel)).board)
  }
  return {
    look,
    content: (name) => {
      for (const { contents } of shown.values()) {
        const found = contents.get(name)
        if (found) return found
      }
      return undefined
    },
    watch: async (signal) => {
      let isBlind = false
      for (let round = 0; !signal.aborted; round += 1) {
        try {
          await lookAt(round % limits.looksAtOpen === 0 ? 'all' : 'open')
          isBlind = false
        } catch (err) {
          if (!isBlind) log.warn({ err }, 'what stands in the channels cannot be read')
          isBlind = true
        }
        await pause(limits.lookPause, undefined, { signal, ref: false }).catch(() => undefined)
      }
    },
  }
}

/** What stands on a board as cards; one that cannot be shown is left out. */
async function rendered(revision: number, board: Board, parts: BoardParts): Promise<Shown> {
  const contents = new Map<string, Uint8Array>()
  const keepContent = async (content: Uint8Array): Promise<string> => {
    const name = createHash('sha256').update(content).digest('hex')
    contents.set(name, content)
    return name
  }
  const cards = { paint: parts.paint, log: parts.log, transcript: { keepContent } }
  const posted = async ({ notice, at, reply, show }: Standing): Promise<readonly Posted[]> => {
    try {
      return [
        { notice, at, card: await render({ ok: true, reply, show: showIn(show.coarse, show.fine) }, cards) },
      ]
    } catch (err) {
      parts.log.warn({ err, notice }, 'a notice could not be shown')
      return []
    }
  }
  return { revision, posted: (await Promise.all(board.standing.map(posted))).flat(), contents }
}
