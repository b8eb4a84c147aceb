import { createRequire } from 'node:module'
import { openSync } from 'fontkit'
import { describe, expect, it } from 'vitest'
import { advance, textWidth } from '../../src/drawing/textWidth.ts'

const font = (name: string) => {
  const opened = openSync(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}`))
  if ('fonts' in opened) throw new Error('a collection of fonts')
  return opened
}
const FONTS = { plain: font('DejaVuSans.ttf'), bold: font('DejaVuSans-Bold.ttf') }
const SIGNS = [...Array.from({ length: 95 }, (_, index) => String.fromCharCode(32 + index)), '°']

describe('widths of text', () => {
  it('are those of the font that pictures are painted in, sign by sign', () => {
    for (const sign of SIGNS) {
      const of = (weight: 'plain' | 'bold') =>
        FONTS[weight].glyphForCodePoint(sign.codePointAt(0) ?? 0).advanceWidth / FONTS[weight].unitsPerEm
      expect([sign, advance(sign), advance(sign, true)]).toEqual([sign, of('plain'), of('bold')])
    }
  })

  it('are never less than what the font makes of a line, with its kerning and its joined letters', () => {
    for (const text of ['AVAVA 7/16 To', 'offcut, first fit', '23 15/16 x 15', 'lip 17/32']) {
      for (const bold of [false, true]) {
        const { unitsPerEm } = FONTS[bold ? 'bold' : 'plain']
        const set = FONTS[bold ? 'bold' : 'plain'].layout(text).advanceWidth / unitsPerEm
        expect(textWidth({ text, size: 1, bold })).toBeGreaterThanOrEqual(set - 1e-9)
      }
    }
  })

  it('take a sign outside the table for the widest there is', () => {
    expect(advance('é')).toBeGreaterThan(Math.max(...SIGNS.map((sign) => advance(sign, true))) - 1e-9)
  })
})
