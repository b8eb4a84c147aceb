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
  const words = wordsOf(bytes)
  const { palette, indexOf } = choosePalette(words, bytes)
  const rows = new Uint8Array(height * (width + 1))
  for (let row = 0; row < height; row += 1) {
    // The first byte of a row stays 0, no filter: neighbouring indexes are no neighbouring colours.
    const to = row * (width + 1) + 1
    let at = row * width
    const end = at + width
    for (let from = at; from < end; from = at) {
      at = runEnd(words, from, end)
      rows.fill(indexOf.get(colourAt(bytes, from * 4)) ?? 0, to + from - end + width, to + at - end + width)
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

/** The same pixels, one to a word. */
const wordsOf = (bytes: Uint8Array): Uint32Array => {
  const aligned = bytes.byteOffset % 4 === 0 ? bytes : bytes.slice()
  return new Uint32Array(aligned.buffer, aligned.byteOffset, aligned.byteLength >> 2)
}

/** Where pixels as the one at `from` end; most are as the one before. */
function runEnd(words: Uint32Array, from: number, end: number): number {
  const word = words[from]
  let at = from + 1
  while (at < end && words[at] === word) at += 1
  return at
}

const colourAt = (bytes: Uint8Array, at: number): number =>
  ((bytes[at] ?? 0) << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0)

const channels = (colour: number): readonly [number, number, number] => [
  colour >> 16,
  (colour >> 8) & 255,
  colour & 255,
]

function choosePalette(words: Uint32Array, bytes: Uint8Array) {
  const counts = new Map<number, number>()
  let at = 0
  for (let from = 0; from < words.length; from = at) {
    at = runEnd(words, from, words.length)
    const colour = colourAt(bytes, from * 4)
    counts.set(colour, (counts.get(colour) ?? 0) + at - from)
  }
  const byUse = [...counts].sort(([one, a], [other, b]) => b - a || one - other).map(([colour]) => colour)
  const palette = byUse.slice(0, MOST_COLOURS)
  const indexOf = new Map(palette.map((colour, index) => [colour, index]))
  for (const colour of byUse.slice(MOST_COLOURS)) indexOf.set(colour, nearest(palette, colour))
  return { palette, indexOf }
}

/** The colour of a palette that is nearest, by its place. */
function nearest(palette: readonly number[], colour: number): number {
  const [red, green, blue] = channels(colour)
  let [best, least] = [0, Number.POSITIVE_INFINITY]
  for (let index = 0; index < palette.length; index += 1) {
    const each = palette[index] ?? 0
    const apart = ((each >> 16) - red) ** 2 + (((each >> 8) & 255) - green) ** 2 + ((each & 255) - blue) ** 2
    if (apart < least) [best, least] = [index, apart]
  }
  return best
}
