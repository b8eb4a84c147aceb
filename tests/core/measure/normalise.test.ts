import { describe, expect, it } from 'vitest'
import { normalise } from '../../../src/core/measure/normalise.ts'

describe('normalise', () => {
  it.each([
    ['23⅞', '23{7/8}'],
    ['23⁷⁄₈”', '23{7/8}"'],
    ['⅟8', '{1/8}'],
    ['2´ 3½´´', "2' 3{1/2}''"],
    ['‘3’', '3'],
    ['24″ × 36″', '24" x 36"'],
    ['−600 mm', '-600 mm'],
    ['1 220 mm', '1 220 mm'],
    ['２４ＩＮ', '24in'],
    ['45º', '45°'],
    ['45⁰', '45°'],
    ['2 m²', '2 m^2'],
    ['24\\*36"', '24*36"'],
    ['&#39;&amp;&quot;', '\'&"'],
    ['24\u200Bin\u0000 x\t36in', '24in x 36in'],
    ['📏 24 in', '24 in'],
    ['①24', '\uFFFD24'],
    ["5/8's", '5/8s'],
  ])('%j becomes %j', (typed, plain) => {
    expect(normalise(typed)).toBe(plain)
  })
})
