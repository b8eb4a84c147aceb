import { describe, expect, it } from 'vitest'
import {
  dryFilm,
  fromSquareFeetPerGallon,
  spreadingRate,
  toSquareFeetPerGallon,
  wetFilm,
  wetFilmFor,
} from '../../../src/core/quantities/finishFilm.ts'

const MIL = 25.4

describe('spreading rate', () => {
  // Volume solids in percent, dry film in mils, ft2 per US gallon as printed, and how far the print rounds.
  it.each([
    ['spreading-rate sheet, constant rounded to 1604', 65, 5, 208.52, 0.025],
    ['wet-film formula sheet: 10 mil wet', 100, 10, 160.417, 1e-3],
    ['estimating guide', 35, 1, 561, 0.5],
    ['estimating guide', 35, 2, 281, 0.5],
    ['estimating guide', 40, 6, 107, 0.5],
    ['estimating guide', 50, 4, 201, 0.5],
    ['primer question', 45, 1, 722, 0.5],
    ['primer question', 45, 2, 361, 0.5],
    ['painting magazine, 1604 / 2.5 rounded to 641 first', 46, 2.5, 294, 1.5],
    ['painting magazine, 1604 / 2.5 rounded to 641 first', 56, 2.5, 358, 1.5],
  ])('%s: %s %% solids at %s mil', (_, solids, mils, printed, rounding) => {
    const rate = toSquareFeetPerGallon(spreadingRate(mils * MIL, solids / 100))
    expect(Math.abs(rate - printed)).toBeLessThan(rounding)
  })

  it('spreading-rate sheet, metric: 65 % at 125 um is 5.2 m2/L', () => {
    expect(spreadingRate(125, 0.65)).toBeCloseTo(5.2, 9)
  })

  // Wood Handbook (GTR-190), ch. 16, and a paint maker's sheet: ft2/gal beside m2/L.
  it.each([
    [100, 2.4],
    [200, 4.9],
    [300, 7.4],
    [400, 9.8],
  ])('%s ft2/gal is %s m2/L', (feet, metres) => {
    expect(Math.abs(fromSquareFeetPerGallon(feet) - metres)).toBeLessThan(0.06)
    expect(toSquareFeetPerGallon(fromSquareFeetPerGallon(feet))).toBeCloseTo(feet, 9)
  })
})

describe('film', () => {
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

  it('thinner makes a wet film dry to less, and both ways agree', () => {
    expect(dryFilm(100, 0.5, 0.25)).toBeCloseTo(40, 9)
    expect(wetFilmFor(40, 0.5, 0.25)).toBeCloseTo(100, 9)
    expect(wetFilmFor(dryFilm(80, 0.4), 0.4)).toBeCloseTo(80, 9)
  })

  it('what is laid wet at a coverage dries to the film that the coverage was reckoned from', () => {
    expect(dryFilm(wetFilm(spreadingRate(38, 0.4)), 0.4)).toBeCloseTo(38, 9)
  })
})
