import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Length,
  millimetres,
  minus,
  plus,
  toMillimetres,
  ZERO,
} from '../../../src/core/measure/length.ts'
import { type CornerFlushRequest, cornerFlush, slotWidth } from '../../../src/core/moisture/cornerFlush.ts'
import { TYPICAL_COAT, USUAL_FILM } from '../../../src/core/moisture/film.ts'

const request: CornerFlushRequest = {
  width: millimetres(38.1),
  strip: millimetres(12.7),
  sheet: { planned: millimetres(12), low: millimetres(11.5), high: millimetres(12.5) },
  growth: { sheet: 0.002, strip: 0.001, width: 0.0025 },
  change: { driest: -2, wettest: 3 },
  coats: 2,
  film: USUAL_FILM,
}

describe('cornerFlush', () => {
  it('stands proud by thickness over the plan, swelling and paint, and loses as much lip', () => {
    const { proudest, shyest, lip, overhang } = cornerFlush(request)
    const thick = 12.5 * 1.006 + 12.7 * 1.003 + 0.152
    const thin = 11.5 * 0.996 + 12.7 * 0.998 + 0.092
    expect(toMillimetres(proudest)).toBeCloseTo(thick - 24.7, 5)
    expect(toMillimetres(shyest)).toBeCloseTo(thin - 24.7, 5)
    expect(toMillimetres(overhang)).toBeCloseTo(thick, 5)
    expect(toMillimetres(lip.least)).toBeCloseTo(38.1 * 0.995 - 12.5 * 0.996 - 12.7 * 0.998 - 0.152, 5)
    expect(toMillimetres(lip.most)).toBeCloseTo(38.1 * 1.0075 - 11.5 * 1.006 - 12.7 * 1.003 - 0.092, 5)
  })

  it('is flush with the lip as planned where sheet, air and paint stay as they were', () => {
    const { planned } = request.sheet
    const still = {
      sheet: { planned, low: planned, high: planned },
      change: { driest: 0, wettest: 0 },
      coats: 0,
    }
    const lip = minus(request.width, plus(planned, request.strip))
    expect(cornerFlush({ ...request, ...still })).toEqual({
      proudest: ZERO,
      shyest: ZERO,
      lip: { least: lip, most: lip },
      overhang: plus(planned, request.strip),
    })
  })

  it('does not shrink back once the rails overhang by what it asks', () => {
    const size = fc.integer({ min: 3_000_000, max: 25_000_000 }).map((count) => count as Length)
    fc.assert(
      fc.property(size, size, fc.integer({ min: 0, max: 4 }), (strip, sheet, coats) => {
        const asked = { ...request, strip, coats, sheet: { planned: sheet, low: sheet, high: sheet } }
        const { overhang, proudest, shyest } = cornerFlush(asked)
        expect(proudest).toBeGreaterThanOrEqual(shyest)
        const planned = minus(overhang, strip)
        expect(cornerFlush({ ...asked, sheet: { ...asked.sheet, planned } }).proudest).toBe(0)
      }),
    )
  })
})

describe('slotWidth', () => {
  it('18 mm birch at its high limit, two coats on each face, 0.2 mm to push: 18.42 mm', () => {
    const slot = slotWidth({
      sheet: millimetres(18.1),
      coats: 2,
      coat: TYPICAL_COAT,
      swelling: ZERO,
      pushFit: millimetres(0.2),
    })
    expect(toMillimetres(slot)).toBeCloseTo(18.42, 9)
  })
})
