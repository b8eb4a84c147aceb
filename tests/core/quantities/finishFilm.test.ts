import { describe, expect, it } from 'vitest'
import { dryFilm, toSquareFeetPerGallon, wetFilm } from '../../../src/core/quantities/finishFilm.ts'

const MIL = 25.4

/** A coverage in m2/L from one in ft2 per US gallon: 231 in3 over 144 in2. */
const fromFeet = (rate: number): number => (rate * 0.09290304) / 3.785411784

describe('the film that a spreading rate leaves', () => {
  // Volume solids in percent, ft2 per US gallon as printed, the dry film in mils that it is printed for, and how far the print
  // rounds, as a part of the film.
  it.each([
    ['spreading-rate sheet, constant rounded to 1604', 65, 208.52, 5, 2e-4],
    ['wet-film formula sheet: 10 mil wet', 100, 160.417, 10, 1e-5],
    ['estimating guide', 35, 561, 1, 1e-3],
    ['estimating guide', 35, 281, 2, 2e-3],
    ['estimating guide', 40, 107, 6, 2e-3],
    ['estimating guide', 50, 201, 4, 3e-3],
    ['primer question', 45, 722, 1, 1e-3],
    ['primer question', 45, 361, 2, 1e-3],
    ['painting magazine, 1604 / 2.5 rounded to 641 first', 46, 294, 2.5, 5e-3],
    ['painting magazine, 1604 / 2.5 rounded to 641 first', 56, 358, 2.5, 5e-3],
  ])('%s: %s %% solids at %s ft2 a gallon', (_, solids, printed, mils, rounding) => {
    const film = dryFilm(wetFilm(fromFeet(printed)), solids / 100) / MIL
    expect(Math.abs(film - mils) / mils).toBeLessThan(rounding)
  })

  it('spreading-rate sheet, metric: 65 % at 5.2 m2/L is 125 um', () => {
    expect(dryFilm(wetFilm(5.2), 0.65)).toBeCloseTo(125, 9)
  })

  // Wood Handbook (GTR-190), ch. 16, and a paint maker's sheet: ft2/gal beside m2/L.
  it.each([
    [100, 2.4],
    [200, 4.9],
    [300, 7.4],
    [400, 9.8],
  ])('%s ft2/gal is %s m2/L', (feet, metres) => {
    expect(Math.abs(feet - toSquareFeetPerGallon(metres))).toBeLessThan(toSquareFeetPerGallon(0.06))
    expect(toSquareFeetPerGallon(fromFeet(feet))).toBeCloseTo(feet, 9)
  })

  // A paint maker's film-thickness table: m2/L, wet film in um and in mils.
  it.each([
    [16, 63, 2.5],
    [14, 71, 2.8],
    [12, 83, 3.3],
    [10, 100, 3.9],
    [8, 125, 4.9],
    [6, 167, 6.6],
    [4, 250, 9.8],
    [2, 500, 19.7],
  ])('%s m2/L lays %s um, %s mil wet', (rate, micrometres, mils) => {
    expect(Math.abs(wetFilm(rate) - micrometres)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(wetFilm(rate) / MIL - mils)).toBeLessThan(0.06)
  })

  // A finisher's answer on mils: 3 mil wet at 30 % solids dries to 0.9; scuffed to 0.6, the second coat makes 1.5.
  it('30 % solids, 3 mil wet, twice', () => {
    expect(dryFilm(3, 0.3)).toBeCloseTo(0.9, 9)
    expect(0.6 + dryFilm(3, 0.3)).toBeCloseTo(1.5, 9)
  })
})
