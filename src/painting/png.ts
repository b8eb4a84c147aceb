import { crc32, deflateSync } from 'node:zlib'

/** Opaque pixels, row by row, four bytes each: red, green, blue and one that is not looked at. */
export interface Pixels {
  readonly width: number
  readonly height: number
  readonly bytes: Uint8Array
}

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])

/** As many as an indexed PNG holds. */
const MOST_COLOURS = 256

/**
 * An indexed PNG (ISO/IEC 15948, colour type 3): drawings have few colours, so that it is a third of the size of a full one. Of
 * more than 256 the rarest, which are shades along edges, become the nearest of the others.
 */
export function encodePng({ width, height, bytes }: Pixels): Uint8Array {
  const { palette, indexOf } = choosePalette(bytes)
  const rows = Buffer.alloc(height * (width + 1))
  let [from, to, last, index] = [0, 0, -1, 0]
  for (let row = 0; row < height; row += 1) {
    // No filter: neighbouring indexes are no neighbouring colours.
    rows[to] = 0
    to += 1
    for (let column = 0; column < width; column += 1) {
      const colour = colourAt(bytes, from)
      if (colour !== last) {
        last = colour
        index = indexOf.get(colour) ?? 0
      }
      rows[to] = index
      to += 1
      from += 4
    }
  }
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header.set([8, 3, 0, 0, 0], 8)
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', header),
    chunk('PLTE', Buffer.from(palette.flatMap(channels))),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(name: string, content: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), content])
  const frame = Buffer.alloc(body.length + 8)
  frame.writeUInt32BE(content.length, 0)
  body.copy(frame, 4)
  frame.writeUInt32BE(crc32(body), body.length + 4)
  return frame
}

const colourAt = (bytes: Uint8Array, at: number): number =>
  ((bytes[at] ?? 0) << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0)

const channels = (colour: number): readonly [number, number, number] => [
  colour >> 16,
  (colour >> 8) & 255,
  colour & 255,
]

function choosePalette(bytes: Uint8Array) {
  const counts = new Map<number, number>()
  let [last, run] = [colourAt(bytes, 0), 0]
  // Most pixels are as the one before.
  for (let at = 0; at < bytes.length; at += 4) {
    const colour = colourAt(bytes, at)
    if (colour !== last) {
      counts.set(last, (counts.get(last) ?? 0) + run)
      last = colour
      run = 0
    }
    run += 1
  }
  counts.set(last, (counts.get(last) ?? 0) + run)
  const byUse = [...counts].sort(([one, a], [other, b]) => b - a || one - other).map(([colour]) => colour)
  const palette = byUse.slice(0, MOST_COLOURS)
  const indexOf = new Map(palette.map((colour, index) => [colour, index]))
  for (const colour of byUse.slice(MOST_COLOURS)) indexOf.set(colour, nearest(palette, colour))
  return { palette, indexOf }
}

function nearest(palette: readonly number[], colour: number): number {
  const [red, green, blue] = channels(colour)
  let [best, least] = [0, Number.POSITIVE_INFINITY]
  palette.forEach((each, index) => {
    const [r, g, b] = channels(each)
    const apart = (r - red) ** 2 + (g - green) ** 2 + (b - blue) ** 2
    if (apart < least) [best, least] = [index, apart]
  })
  return best
}
