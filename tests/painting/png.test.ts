import { inflateSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { encodePng } from '../../src/painting/png.ts'

/** The chunks of a PNG by name, in order. */
function chunks(png: Uint8Array): readonly (readonly [name: string, content: Buffer])[] {
  const bytes = Buffer.from(png)
  const found: (readonly [string, Buffer])[] = []
  for (let at = 8; at < bytes.length; ) {
    const length = bytes.readUInt32BE(at)
    found.push([bytes.toString('latin1', at + 4, at + 8), bytes.subarray(at + 8, at + 8 + length)])
    at += 12 + length
  }
  return found
}

/** The colours of an indexed PNG without filters, row by row. */
function decode(png: Uint8Array): readonly number[] {
  const parts = new Map(chunks(png))
  const [header, palette, rows] = ['IHDR', 'PLTE', 'IDAT'].map((name) => parts.get(name) ?? Buffer.alloc(0))
  const width = header?.readUInt32BE(0) ?? 0
  return [...inflateSync(rows ?? Buffer.alloc(0))].flatMap((index, at) =>
    at % (width + 1) === 0 ? [] : [palette?.readUIntBE(index * 3, 3) ?? -1],
  )
}

const pixels = (colours: readonly number[]): Uint8Array =>
  Uint8Array.from(colours.flatMap((colour) => [colour >> 16, (colour >> 8) & 255, colour & 255, 255]))

describe('an indexed PNG', () => {
  it('gives back every pixel while there are no more than 256 colours', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 9 }),
        fc.array(fc.integer({ min: 0, max: 0xffffff }), { minLength: 81, maxLength: 81 }),
        (width, height, colours) => {
          const own = colours.slice(0, width * height)
          const png = encodePng({ width, height, bytes: pixels(own) })
          expect(decode(png)).toEqual(own)
        },
      ),
    )
  })

  it('makes of a rare colour beyond that the nearest of the others', () => {
    const common = Array.from({ length: 256 }, (_, index) => index << 16)
    const rare = (100 << 16) | 3
    const png = encodePng({ width: 513, height: 1, bytes: pixels([...common, ...common, rare]) })
    expect(decode(png).at(-1)).toBe(100 << 16)
    expect(decode(png).slice(0, 256)).toEqual(common)
  })

  it('begins and ends as the standard has it', () => {
    const png = encodePng({ width: 2, height: 1, bytes: pixels([0, 0xffffff]) })
    expect([...png.slice(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10])
    expect(chunks(png).map(([name]) => name)).toEqual(['IHDR', 'PLTE', 'IDAT', 'IEND'])
    // The checksum of an empty IEND is known to everybody who has looked into a PNG.
    expect(Buffer.from(png).subarray(-4).toString('hex')).toBe('ae426082')
  })
})
