import { createRequire } from 'node:module'
import { openSync } from 'fontkit'
import { describe, expect, it } from 'vitest'
import { inches } from '../../src/core/measure/length.ts'
import { drawBoardLayouts } from '../../src/drawing/boardLayouts.ts'
import { LACKING_WORDS, shownSigns } from '../../src/drawing/signs.ts'
import { INCHES } from './corpus.ts'

const file = createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf')
const font = openSync(file) as unknown as { hasGlyphForCodePoint: (point: number) => boolean }

const layout = (part: string) =>
  drawBoardLayouts(
    {
      kind: 'board',
      layouts: [{ stock: 'L', count: 1, parts: [part], offcut: inches(20) }],
      stock: [['L', inches(96)]],
      parts: [[part, inches(70)]],
      kerf: inches(1, 8),
      trim: 0,
      keepable: inches(12),
    },
    INCHES,
  ).shapes.flatMap((shape) => (shape.shape === 'text' ? [shape.text] : []))

describe('signs in pictures', () => {
  it.each(['\u9752\u6728', '\u304b\u306a', '\uac00', '\u0905', '\u0e01', '\u{1f4e6}', '\uff21', '\u3001'])(
    'are question marks where the font has none: %s',
    (text) => {
      expect([...text].some((sign) => font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0))).toBe(false)
      expect(shownSigns(text)).toBe('?'.repeat([...text].length))
      expect(layout(text)).toContain(LACKING_WORDS)
      expect(layout(text).join()).not.toContain(text)
    },
  )

  it.each(['B1', 'Zo\u00eb', '\u0416\u0435\u043d\u044f', '\u0394', '\u05d0', '\u0628', '31.2\u00b0'])(
    'are left where it has them: %s',
    (text) => {
      expect([...text].every((sign) => font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0))).toBe(true)
      expect(shownSigns(text)).toBe(text)
      expect(layout(text)).not.toContain(LACKING_WORDS)
      expect(layout(text).join()).toContain(text)
    },
  )
})
