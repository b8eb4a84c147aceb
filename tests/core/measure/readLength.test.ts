import { describe, expect, it } from 'vitest'
import { readLength } from '../../../src/core/measure/readLength.ts'
import { expected } from './said.ts'
import { reading } from './stockTables.ts'

const said = (input: string, units?: 'inch' | 'metric'): string => {
  const read = readLength(input, reading('US', units))
  return read.status === 'read' ? `length ${read.length}` : read.status
}

describe('readLength', () => {
  it.each([
    ['1/8', 'length, 1/8 in'],
    ['3/32', 'length, 3/32 in'],
    ['13/16', 'length, 13/16 in'],
    ['7/8', 'length, 7/8 in'],
    ['5/4', 'length, 5/4 in'],
    ['.125', 'length, 0.125 in'],
    ['15in', 'length, 15 in'],
    ['15in high', 'length, 15 in'],
    ['1/8 kerf', 'length, 1/8 in'],
    ['2068', 'length, 2068 mm'],
    ['2ft6', 'length, 30 in'],
    ['24ft5', 'length, 293 in'],
    ['24" - 1/8"', 'length, 23 7/8 in'],
    ['half of 3', 'ambiguous'],
    ['11/4', 'ambiguous'],
    ['237/8', 'ambiguous'],
    ['24', 'ambiguous'],
    ['0.5', 'ambiguous'],
    ['4/12', 'ambiguous'],
    ['24-36', 'ambiguous'],
    ['24 max', 'ambiguous'],
    ['24 36', 'ambiguous'],
    ['twice the thickness', 'ambiguous'],
    ['24 x 36 in', 'invalid'],
    ['24in square', 'invalid'],
    ['2x4', 'invalid'],
    ['4x8', 'invalid'],
    ['1/2 ply', 'invalid'],
    ['-24in', 'invalid'],
    ['+24in', 'invalid'],
    ['45deg', 'invalid'],
    ['hexagon corner', 'invalid'],
    ['24in of rope', 'invalid'],
    ['24 bananas', 'invalid'],
    ['0', 'invalid'],
    ['', 'invalid'],
  ])('%j is %s', (input, line) => {
    expect(said(input)).toBe(expected(line))
  })

  it('reads a bare number in the unit settled', () => {
    expect(said('24', 'inch')).toBe(expected('length, 24 in'))
    expect(said('24', 'metric')).toBe(expected('length, 24 mm'))
    expect(said('1/8', 'metric')).toBe(expected('length, 1/8 in'))
    expect(readLength('24', reading('US', 'inch'))).toMatchObject({ note: '24 read as 24 in', units: 'inch' })
  })

  it('says why a size and a piece of stock are no length', () => {
    expect(readLength('24 x 36 in', reading())).toEqual({
      status: 'invalid',
      problem:
        'cannot read "24 x 36 in" as a length: it has more than one number; write one length, such as 24in or 600mm',
    })
    expect(readLength('2x4', reading())).toMatchObject({
      problem: expect.stringContaining('it is a piece of stock'),
    })
  })

  it('says the answer of a sum', () => {
    expect(readLength('23 7/8 less 1/16', reading())).toMatchObject({
      note: '23 7/8 less 1/16 is 23 13/16in',
    })
  })
})
