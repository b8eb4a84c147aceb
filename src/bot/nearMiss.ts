import { oneMore } from '../core/cutting/oneMore.ts'
import type { Length } from '../core/measure/length.ts'
import type { Purpose } from '../core/measure/round.ts'
import { labelled } from './cutListReply.ts'
import { isSheets, type LaidGroup, type LaidJob, takenOf } from './laidJob.ts'
import type { Show } from './show.ts'

/** So little is often given away for a piece more: 1/8 in, as parts that near are called easy to swap. */
const NEAR = 3_175_000

/** More lines than this are not read at the rack. */
const MOST_NOTES = 2

/** A dimension of a part that could lie along a side of a stock, and misses one more by little. */
interface Miss {
  readonly labels: readonly string[]
  readonly count: number
  readonly way: 'long' | 'wide'
  readonly size: number
  readonly room: number
  readonly fits: number
  readonly at: number
}

/**
 * Says of which parts one more would come out of a board, or go across a sheet, were they a kerf's breadth shorter; the
 * parts with most pieces first. Nothing is changed: whether a part may be shorter is for its builder to say.
 */
export function nearMissNotes({ groups, show }: LaidJob): readonly string[] {
  const misses = groups.flatMap((laid) => missesOf(laid))
  return joined(misses)
    .filter(({ count, fits }) => count > fits)
    .sort((a, b) => b.count - a.count)
    .slice(0, MOST_NOTES)
    .map((miss) => sentence(miss, show))
}

function sentence({ labels, way, size, room, fits, at }: Miss, show: Show): string {
  const mark = (length: number, purpose: Purpose) =>
    `${show.mark(length as Length, purpose, true)} ${show.unit}`
  const less = `${mark(size - at, 'cover')} ${way === 'long' ? 'shorter' : 'narrower'}`
  return `${labelled(labels)} ${less}, at ${mark(at, 'into')}, would give ${fits + 1} out of ${mark(room, 'into')}, not ${fits} (the kerf counts)`
}

function missesOf(laid: LaidGroup): readonly Miss[] {
  const taken = takenOf(laid)
  if (!isSheets(laid)) {
    const { parts, stock, kerf, trim } = laid.group.problem
    const rooms = stock.filter(({ id }) => taken.has(id)).map(({ length }) => length - trim)
    return parts.flatMap(({ id, length, count }) =>
      near({ id, count, way: 'long', size: length }, rooms, kerf),
    )
  }
  const { parts, stock, kerf, trim } = laid.group.problem
  const sheets = stock
    .filter(({ id }) => taken.has(id))
    .map(({ length, width, net }) =>
      net ? { length, width } : { length: length - 2 * trim, width: width - 2 * trim },
    )
  return parts.flatMap(({ id, length, width, count, turnable }) => {
    const along = sheets.map((sheet) => sheet.length)
    const across = sheets.map((sheet) => sheet.width)
    const both = [...along, ...across]
    return [
      ...near({ id, count, way: 'long', size: length }, turnable ? both : along, kerf),
      ...(width === length
        ? []
        : near({ id, count, way: 'wide', size: width }, turnable ? both : across, kerf)),
    ]
  })
}

/** The near misses of one dimension, the least to give away first. */
function near(
  { id, count, way, size }: { id: string; count: number; way: Miss['way']; size: number },
  rooms: readonly number[],
  kerf: number,
): readonly Miss[] {
  return [...new Set(rooms)]
    .map((room) => ({ labels: [id], count, way, size, room, ...oneMore(room, size, kerf) }))
    .filter(({ fits, at }) => fits > 0 && at > 0 && size - at <= NEAR)
    .sort((a, b) => b.at - a.at)
    .slice(0, 1)
}

/** Parts of one size are one line. */
function joined(misses: readonly Miss[]): readonly Miss[] {
  const bySize = new Map<string, Miss>()
  for (const miss of misses) {
    const key = [miss.way, miss.size, miss.room].join(' ')
    const other = bySize.get(key)
    bySize.set(
      key,
      other ? { ...other, labels: [...other.labels, ...miss.labels], count: other.count + miss.count } : miss,
    )
  }
  return [...bySize.values()]
}
