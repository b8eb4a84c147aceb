import { describe, expect, it } from 'vitest'
import { readAngle } from '../../../src/core/measure/readAngle.ts'

describe('readAngle', () => {
  it.each([
    ['45', 45],
    ['22.5', 22.5],
    ['22 1/2', 22.5],
    ['31.6 deg', 31.6],
    ["31°36'", 31.6],
    ['45º', 45],
    ['forty five degrees', 45],
    ['mitre 22.5', 22.5],
    ['54.1 on the mitre saw', 54.1],
    ['square cut', 0],
    ['90° cut', 0],
    ['90° corner', 45],
    ['135 corner', 22.5],
    ['hexagon corner', 30],
    ['12 sided', 15],
    ['half of 90', 45],
    ['4:12', 18.434948822922],
    ['5/12 pitch', 22.61986494804],
    ['12:12', 45],
  ])('%j is %d degrees', (input, degrees) => {
    const read = readAngle(input)
    expect(read).toMatchObject({ status: 'read', kind: 'angle' })
    expect(read.status === 'read' ? read.degrees : Number.NaN).toBeCloseTo(degrees, 10)
  })

  it.each(['right angle', '12:4', '10:30', '24/12', '16/12'])('%j is asked about', (input) => {
    expect(readAngle(input)).toMatchObject({ status: 'ambiguous' })
  })

  it.each(['', 'banana', '200', '24in', '4x8', '-5', '45 F', '45deg 30deg'])('%j is refused', (input) => {
    expect(readAngle(input)).toMatchObject({ status: 'invalid' })
  })
})
