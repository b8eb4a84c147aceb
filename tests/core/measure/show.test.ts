import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  FOOT,
  INCH,
  inches,
  type Length,
  MILLIMETRE,
  millimetres,
  nanometres,
} from '../../../src/core/measure/length.ts'
import type { Purpose } from '../../../src/core/measure/round.ts'
import { type ShowSettings, showLength, showMark, showMiss, stepOf } from '../../../src/core/measure/show.ts'

const inch: ShowSettings = { units: 'inch', tape: 16, millimetreStep: 1 }
const joint: ShowSettings = { ...inch, tape: 32 }
const feet: ShowSettings = { ...inch, feet: true }
const metric: ShowSettings = { ...inch, units: 'metric' }
const fine: ShowSettings = { ...metric, millimetreStep: 0.5 }

describe('showLength in inches', () => {
  it.each<[Length, ShowSettings, Purpose, string]>([
    [inches(383, 16), inch, 'mark', '23 15/16 in'],
    [inches(10, 3), inch, 'mark', '3 5/16 in (-0.021)'],
    [inches(10, 3), inch, 'into', '3 5/16 in (-0.021)'],
    [inches(10, 3), inch, 'cover', '3 3/8 in (+0.042)'],
    [inches(10, 3), joint, 'mark', '3 11/32 in (+0.010)'],
    [inches(8, 16), inch, 'mark', '1/2 in'],
    [inches(12), inch, 'mark', '12 in'],
    [inches(191, 16), inch, 'mark', '11 15/16 in'],
    [inches(-53, 16), inch, 'mark', '-3 5/16 in'],
    [inches(-1, 2), inch, 'mark', '-1/2 in'],
    [inches(0), inch, 'mark', '0 in'],
    [inches(95.999), inch, 'mark', '96 in (+0.001)'],
  ])('%d for %o %s is %s', (length, settings, purpose, shown) => {
    expect(showLength(length, settings, purpose)).toBe(shown)
  })

  it('marks to the nearest unless told what the length is for', () => {
    expect(showLength(inches(10, 3), inch)).toBe('3 5/16 in (-0.021)')
  })
})

describe('showLength in feet and inches', () => {
  it.each<[Length, string]>([
    [inches(767, 8), '7 ft 11 7/8 in'],
    [inches(36), '3 ft'],
    [inches(287.99, 8), '3 ft (+0.001)'],
    [inches(12), '1 ft'],
    [inches(101, 8), '1 ft 0 5/8 in'],
    [inches(95, 8), '11 7/8 in'],
    [inches(111), '9 ft 3 in'],
    [inches(1, 2), '1/2 in'],
    [inches(0), '0 in'],
    [inches(-101, 8), '-1 ft 0 5/8 in'],
  ])('%d is %s', (length, shown) => {
    expect(showLength(length, feet)).toBe(shown)
  })

  it('leaves millimetres alone', () => {
    expect(showLength(millimetres(2440), { ...metric, feet: true })).toBe('2440 mm')
  })
})

describe('showLength in millimetres', () => {
  it.each<[Length, ShowSettings, string]>([
    [millimetres(606.5), fine, '606.5 mm'],
    [millimetres(606.58), metric, '607 mm (+0.42)'],
    [inches(191, 8), metric, '606 mm (-0.43)'],
    [inches(191, 8), fine, '606.5 mm (+0.08)'],
    [millimetres(1220), metric, '1220 mm'],
    [millimetres(0.2), metric, '0.2 mm'],
    [millimetres(-12.25), fine, '-12 mm (+0.25)'],
    [millimetres(0), metric, '0 mm'],
  ])('%d for %o is %s', (length, settings, shown) => {
    expect(showLength(length, settings)).toBe(shown)
  })
})

describe('a length too small for a mark', () => {
  it.each<[Length, ShowSettings, Purpose, string]>([
    [inches(1, 100), inch, 'mark', '0.01 in'],
    [inches(1, 32), inch, 'into', '0.031 in'],
    [inches(-1, 100), inch, 'mark', '-0.01 in'],
    [inches(1, 100), inch, 'cover', '1/16 in (+0.053)'],
    [nanometres(1), inch, 'mark', '0.000000039 in'],
    [nanometres(1), metric, 'mark', '0.000001 mm'],
    [inches(1, 100), feet, 'mark', '0.01 in'],
  ])('%d for %o %s is the decimal %s', (length, settings, purpose, shown) => {
    expect(showLength(length, settings, purpose)).toBe(shown)
  })
})

describe('showMark and showMiss', () => {
  it('are the two halves of showLength', () => {
    expect(showMark(inches(10, 3), inch)).toBe('3 5/16')
    expect(showMiss(inches(10, 3), inch)).toBe('(-0.021)')
    expect(showMark(inches(383, 16), inch)).toBe('23 15/16')
    expect(showMiss(inches(383, 16), inch)).toBe('')
    expect(showMark(millimetres(606.58), fine, 'cover')).toBe('607')
  })

  it('say nothing of a miss under half of the last figure', () => {
    expect(showMiss(nanometres(INCH + 12_699), inch)).toBe('')
    expect(showMiss(nanometres(INCH + 12_700), inch)).toBe('(-0.001)')
    expect(showMiss(nanometres(MILLIMETRE + 4_999), metric)).toBe('')
    expect(showMiss(nanometres(MILLIMETRE + 5_000), metric)).toBe('(-0.01)')
  })
})

/** Reads what showLength prints, by rules of its own. */
function parse(shown: string): {
  nanometres: number
  miss: number
  inches?: number
  fraction?: [number, number]
} {
  const [, sign, ft, whole, top, bottom, lone, under, unit, miss] =
    /^(-)?(?:(\d+) ft ?)?(?:(?:([\d.]+)(?: (\d+)\/(\d+))?|(\d+)\/(\d+)) (in|mm))?(?: \(([+-][\d.]+)\))?$/.exec(
      shown,
    ) ?? []
  if (unit === undefined && ft === undefined) throw new Error(`cannot parse ${shown}`)
  const fraction: [number, number] = [Number(top ?? lone ?? 0), Number(bottom ?? under ?? 1)]
  const per = unit === 'mm' ? 1e6 : 25.4e6
  const size = Number(ft ?? 0) * 304.8e6 + (Number(whole ?? 0) + fraction[0] / fraction[1]) * per
  return {
    nanometres: sign ? -size : size,
    miss: Number(miss ?? 0) * per,
    inches: Number(whole ?? 0),
    fraction,
  }
}

const settings = fc.record({
  units: fc.constantFrom('inch' as const, 'metric' as const),
  tape: fc.constantFrom(16 as const, 32 as const, 64 as const),
  millimetreStep: fc.constantFrom(1 as const, 0.5 as const),
  feet: fc.boolean(),
})
const purpose = fc.constantFrom<Purpose>('into', 'cover', 'mark')
const anyLength = fc
  .oneof(
    fc.integer({ min: -10_000_000_000, max: 10_000_000_000 }),
    fc
      .tuple(fc.integer({ min: 1, max: 400 }), fc.integer({ min: -2, max: 2 }))
      .map(([n, off]) => n * INCH + off),
    fc
      .tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: -9, max: 9 }))
      .map(([n, off]) => n * FOOT + off * 90_000),
    fc.integer({ min: -3_000_000, max: 3_000_000 }),
  )
  .map(nanometres)

describe('whatever the length', () => {
  it('is parsed back to a mark on the tape on the right side, and the miss is what it says', () => {
    fc.assert(
      fc.property(anyLength, settings, purpose, (length, how, use) => {
        const shown = showLength(length, how, use)
        const read = parse(shown)
        const tick = how.units === 'inch' ? INCH / 1000 : MILLIMETRE / 100
        expect(Math.abs(read.nanometres - length - read.miss)).toBeLessThanOrEqual(tick / 2 + 1e-3)
        const step = stepOf(how)
        // Below one step a decimal stands for want of a mark, and is no mark even where it rounds to one.
        if (read.nanometres % step !== 0) expect(Math.abs(length)).toBeLessThan(step)
        if (Math.abs(length) < step) return
        if (use === 'into') expect(read.nanometres).toBeLessThanOrEqual(length)
        if (use === 'cover') expect(read.nanometres).toBeGreaterThanOrEqual(length)
        expect(Math.abs(read.nanometres - length)).toBeLessThanOrEqual(use === 'mark' ? step / 2 : step)
      }),
      { numRuns: 2000 },
    )
  })

  it('has a reduced fraction, no twelve inches beside feet, no zero for something', () => {
    fc.assert(
      fc.property(anyLength, settings, purpose, (length, how, use) => {
        const shown = showLength(length, how, use)
        const { fraction: [top, bottom] = [0, 1], nanometres: size, inches: whole = 0 } = parse(shown)
        if (shown.includes('/')) {
          expect(top % 2).toBe(1)
          expect(top).toBeLessThan(bottom)
          expect([2, 4, 8, 16, 32, 64].filter((part) => part <= how.tape)).toContain(bottom)
        }
        if (shown.includes('ft')) expect(whole).toBeLessThan(12)
        expect(shown).not.toMatch(/\b0 ft|-0 |e-/)
        expect(size === 0).toBe(length === 0)
      }),
      { numRuns: 2000 },
    )
  })

  it('shows the mark and the miss as two parts of the whole', () => {
    fc.assert(
      fc.property(anyLength, settings, purpose, (length, how, use) => {
        const inShort = { ...how, feet: false }
        const unit = how.units === 'inch' ? 'in' : 'mm'
        const parts = `${showMark(length, inShort, use)} ${unit} ${showMiss(length, inShort, use)}`
        expect(showLength(length, inShort, use)).toBe(parts.trim())
      }),
    )
  })
})

describe('published conversions', () => {
  it('US Navy, Builder (NAVEDTRA 14044) p. 2-12: 13.89 in a foot for 8 ft is 111.12 in, 9 ft 3 1/8 in', () => {
    expect(showLength(inches(1389 * 8, 100), feet)).toBe('9 ft 3 1/8 in (+0.005)')
  })

  it('tool retailer on kerf: a 30 in bat halved with 1/8 in kerf leaves 14 15/16 in each', () => {
    expect(showLength(inches(30 * 8 - 1, 16), inch)).toBe('14 15/16 in')
  })

  it.each([
    ['2x4', inches(3, 2), 38, inches(7, 2), 89],
    ['1x6', inches(3, 4), 19, inches(11, 2), 140],
    ['2x12', inches(3, 2), 38, inches(45, 4), 286],
    ['1x8', inches(3, 4), 19, inches(29, 4), 184],
    ['1x10', inches(3, 4), 19, inches(37, 4), 235],
  ])('retail table of dressed lumber: %s in millimetres', (_name, thickness, thick, width, wide) => {
    expect(showMark(thickness, metric)).toBe(`${thick}`)
    expect(showMark(width, metric)).toBe(`${wide}`)
  })

  it.each<[Length, string]>([
    [inches(23, 32), '18.26'],
    [inches(19, 32), '15.08'],
    [inches(15, 32), '11.91'],
  ])('plywood of %d nm is %s mm when each mark and miss are added up', (length, mm) => {
    const parts = parse(showLength(length, fine))
    expect(((parts.nanometres - parts.miss) / 1e6).toFixed(2)).toBe(mm)
  })
})
