import { describe, expect, it } from 'vitest'
import { inches, millimetres } from '../../../src/core/measure/length.ts'
import { readSheet } from '../../../src/core/measure/readSheet.ts'
import { reading } from './stockTables.ts'

describe('readSheet', () => {
  it.each([
    ['1/2 ply', { thickness: inches(15, 32), label: inches(1, 2), material: 'plywood', units: 'inch' }],
    ['half inch ply', { thickness: inches(15, 32), label: inches(1, 2), material: 'plywood' }],
    ['23/32 CDX', { thickness: inches(23, 32), material: 'plywood' }],
    ['3/4 MDF', { thickness: inches(3, 4), label: inches(3, 4), material: 'MDF' }],
    ['18 MDF', { thickness: millimetres(18), material: 'MDF', units: 'metric' }],
    ['12mm ply', { thickness: millimetres(12), material: 'plywood', units: 'metric' }],
    ['18mm birch ply', { thickness: millimetres(18), material: 'birch plywood' }],
    ['7/16 OSB', { thickness: inches(7, 16), material: 'OSB' }],
    ['4x8 of 3/4', { thickness: inches(23, 32), length: inches(96), width: inches(48) }],
    ['4x8x1/2', { thickness: inches(15, 32), length: inches(96), width: inches(48) }],
    [
      '1220x2440 18mm ply',
      { thickness: millimetres(18), length: millimetres(2440), width: millimetres(1220) },
    ],
  ])('%j by its label', (input, sheet) => {
    expect(readSheet(input, reading())).toMatchObject({ status: 'read', measured: false, ...sheet })
  })

  it.each([
    ['12mm', millimetres(12)],
    ['15/32in', inches(15, 32)],
    ['0.47in', inches(0.47)],
    ['17.8 mm', millimetres(17.8)],
    ['17.8mm ply', millimetres(17.8)],
    ['0.703', inches(0.703)],
    ['18', millimetres(18)],
  ])('%j as measured', (input, thickness) => {
    expect(readSheet(input, reading())).toMatchObject({ status: 'read', measured: true, thickness })
  })

  it('says that the label is not the thickness', () => {
    expect(readSheet('1/2 ply', reading())).toMatchObject({
      note: '1/2in plywood taken as 15/32in, as made; measure yours',
    })
    expect(readSheet('18', reading())).toMatchObject({ note: '18 read as 18mm, as measured' })
  })

  it.each(['1/2', '3/4', '4x8', '18 ply', '2x4 1/2 ply'])('%j is asked about', (input) => {
    expect(readSheet(input, reading())).toMatchObject({ status: 'ambiguous' })
  })

  it.each(['', 'plywood', '24in', '2x4', '4x8 sheet', '0mm', '1/2 ply 3/4 ply and more', '-12mm'])(
    '%j is refused',
    (input) => {
      expect(readSheet(input, reading())).toMatchObject({ status: 'invalid' })
    },
  )
})
