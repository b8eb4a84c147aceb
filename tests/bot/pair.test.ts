import { describe, expect, it } from 'vitest'
import { pair } from '../../src/bot/pair.ts'
import { showIn } from '../../src/bot/show.ts'
import { type Length, MILLIMETRE } from '../../src/core/measure/length.ts'

const metric = { units: 'metric', tape: 16, millimetreStep: 1 } as const
const show = showIn(metric, metric)
const mm = (millimetres: number) => Math.round(millimetres * MILLIMETRE) as Length

describe('pair', () => {
  it.each([
    [528, 426, '528 x 426 mm'],
    [527.6, 425.45, '528 x 426 mm (+0.40, +0.55)'],
    [528, 425.45, '528 x 426 mm (0, +0.55)'],
    [527.6, 426, '528 x 426 mm (+0.40, 0)'],
  ])('%s by %s is %s', (long, wide, said) => {
    expect(pair(mm(long), mm(wide), show, 'cover')).toBe(said)
  })
})
