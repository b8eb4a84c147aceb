import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readMoney, showMoney } from '../../../src/core/measure/money.ts'

describe('readMoney', () => {
  it.each([
    ['42.50', 4250, undefined],
    ['42,5', 4250, undefined],
    ['42', 4200, undefined],
    ['0', 0, undefined],
    [' 0.05 ', 5, undefined],
    ['$42.50', 4250, '$'],
    ['£ 4.20', 420, '£'],
    ['42,50 €', 4250, '€'],
    ['42.50 eur', 4250, 'EUR'],
    ['AUD42.50', 4250, 'AUD'],
    ['aud 42.50', 4250, 'AUD'],
    ['A$42.50', 4250, 'AUD'],
    ['$42.50 CAD', 4250, 'CAD'],
    ['1,250', 125_000, undefined],
    ['$1,250.00', 125_000, '$'],
    ['1 250,00 EUR', 125_000, 'EUR'],
    ["1'250 CHF", 125_000, 'CHF'],
    ['9999999.99', 999_999_999, undefined],
  ])('reads %s', (text, cents, currency) =>
    expect(readMoney(text)).toEqual({ status: 'read', cents, currency }),
  )

  it.each([
    '',
    '-4',
    '$',
    'cheap',
    '4.205',
    '4 2',
    '1e3',
    '42.',
    '4.2.0',
    '42 ply',
    '42 off',
    '$4 £',
    'USD 4 EUR',
    '12345678',
    '12,50,00',
    'NaN',
    'Infinity',
  ])('does not read "%s"', (text) => expect(readMoney(text)).toBeUndefined())
})

describe('showMoney', () => {
  it('shows cents, with a sign before or a code after', () => {
    expect(showMoney(4250)).toBe('42.50')
    expect(showMoney(5, '$')).toBe('$0.05')
    expect(showMoney(4250, 'EUR')).toBe('42.50 EUR')
  })

  it('shows what can be read back', () => {
    const currency = fc.constantFrom(undefined, '$', '£', '€', 'EUR', 'AUD')
    fc.assert(
      fc.property(fc.nat({ max: 999_999_999 }), currency, (cents, sign) => {
        expect(readMoney(showMoney(cents, sign))).toEqual({ status: 'read', cents, currency: sign })
      }),
    )
  })
})
