import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { writtenLength, writtenRatio, writtenSize } from '../../src/config/amounts.ts'
import { INCH, inches, millimetres } from '../../src/core/measure/length.ts'

describe('writtenLength', () => {
  it.each([
    ['1 1/2in', inches(3, 2)],
    ['1 1/2 in', inches(3, 2)],
    ['23/32in', inches(23, 32)],
    ['.438in', 11_125_200],
    ['1.06875in', 27_146_250],
    ['8 ft', inches(96)],
    ['47mm', millimetres(47)],
    ['20.5 mm', millimetres(20.5)],
    ['2.4 m', millimetres(2400)],
    ['30cm', millimetres(300)],
    ['1/3 ft', inches(4)],
    ['0.000001mm', 1],
  ])('reads %s exactly', (text, length) => {
    expect(writtenLength(text)).toBe(length)
  })

  it.each([
    '',
    '12',
    'in',
    '1/3in',
    '1/0in',
    '0mm',
    '-1in',
    '1,5mm',
    '1 1in',
    '1/2 1in',
    '1e3mm',
    '1in x',
    ' 1in',
    '1 in 2',
    '9999999 m',
    '0.0000001mm',
  ])('reads nothing from "%s"', (text) => {
    expect(writtenLength(text)).toBeUndefined()
  })

  it('reads every sixty-fourth and every hundredth of a millimetre back', () => {
    fc.assert(
      fc.property(fc.nat(400), fc.integer({ min: 1, max: 63 }), (whole, part) => {
        const expected = whole * INCH + (part * INCH) / 64
        expect(writtenLength(`${whole} ${part}/64in`)).toBe(expected)
        expect(writtenLength(`${whole}.${String(part).padStart(2, '0')}mm`)).toBe(whole * 1e6 + part * 1e4)
      }),
    )
  })
})

describe('writtenSize', () => {
  it.each([
    ['1 1/2 x 3 1/2 in', inches(3, 2), inches(7, 2)],
    ['47 x 100 mm', millimetres(47), millimetres(100)],
    ['3/4 x 1 1/2in', inches(3, 4), inches(3, 2)],
    ['4 x 8 ft', inches(48), inches(96)],
  ])('reads %s, the unit governing both', (text, first, second) => {
    expect(writtenSize(text)).toEqual([first, second])
  })

  it.each(['47 x 100', '47x100mm', '47 mm x 100 mm', '47 x mm', 'x 100 mm', '1 x 2 x 3 mm', ''])(
    'reads nothing from "%s"',
    (text) => {
      expect(writtenSize(text)).toBeUndefined()
    },
  )
})

describe('writtenRatio', () => {
  it.each([
    ['1/3', 1 / 3],
    ['1 1/2', 1.5],
    ['.25', 0.25],
    ['1', 1],
  ])('reads %s', (text, value) => {
    expect(writtenRatio(text)).toBeCloseTo(value, 12)
  })

  it.each(['', '1/0', '1/2in', 'half', '-1/2', '50%'])('reads nothing from "%s"', (text) => {
    expect(writtenRatio(text)).toBeUndefined()
  })
})
