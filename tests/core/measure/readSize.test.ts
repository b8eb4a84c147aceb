import { describe, expect, it } from 'vitest'
import { INCH, MILLIMETRE } from '../../../src/core/measure/length.ts'
import { mentions } from '../../../src/core/checks/cautionWords.ts'
import { readSize } from '../../../src/core/measure/readSize.ts'
import { reading } from './stockTables.ts'

const inch = (...sides: number[]) => sides.map((side) => side * INCH)
const mm = (...sides: number[]) => sides.map((side) => side * MILLIMETRE)

describe('readSize', () => {
  it.each([
    ['17in x 13in', inch(17, 13)],
    ['17 x 13 in', inch(17, 13)],
    ['46in x 29in', inch(46, 29)],
    ['4x8 ft', inch(48, 96)],
    ['24in', inch(24)],
    ['24in square', inch(24, 24)],
    ['1220x2440', mm(1220, 2440)],
    ['600x400x300', mm(600, 400, 300)],
  ])('%j', (input, lengths) => {
    expect(readSize(input, reading())).toMatchObject({ status: 'read', round: false, lengths, words: [] })
  })

  it.each([
    ['17in round', inch(17), ['diameter']],
    ['17 in dia', inch(17), ['diameter']],
    ['Ø430mm', mm(430), ['diameter']],
    ['12in round x 14in high', inch(12, 14), ['diameter', 'height']],
    ['a round 12in pot', inch(12), ['diameter']],
  ])('%j is round', (input, lengths, roles) => {
    expect(readSize(input, reading())).toMatchObject({ round: true, lengths, roles })
  })

  it.each([
    ['29 hi x 46 wide in', inch(29, 46), ['height', 'width']],
    ['W24 H36 D12 in', inch(24, 36, 12), ['width', 'height', 'depth']],
    ['17 x 13 x 15 high in', inch(17, 13, 15), ['length', 'width', 'height']],
    ['24in square x 30in high', inch(24, 24, 30), ['length', 'width', 'height']],
  ])('%j has labels', (input, lengths, roles) => {
    expect(readSize(input, reading())).toMatchObject({ lengths, roles })
  })

  it.each([
    ['pot 12in round', ['pot']],
    ['generator 24in x 18in', ['generator']],
    ['Air Conditioner 30 x 30 x 32 in', ['air', 'conditioner']],
    ['the bin 24in x 30in x 44in tall', ['bin']],
  ])('%j leaves the words %j', (input, words) => {
    expect(readSize(input, reading())).toMatchObject({ status: 'read', words })
  })

  it.each(['4x8', '2x4', '24', '24 x 36', '29 hi x 46 wide', '24" max', '24x36mm', '11/4 x 3 in'])(
    '%j is asked about',
    (input) => {
      expect(readSize(input, reading())).toMatchObject({ status: 'ambiguous' })
    },
  )

  it('asks about the name of a sheet even where units are settled', () => {
    expect(readSize('4x8', reading('US', 'inch'))).toEqual({
      status: 'ambiguous',
      question:
        '"4x8" could be 4 ft x 8 ft or 4 in x 8 in (the name of a sheet, or a size); write 4ft x 8ft or 4in x 8in',
    })
  })

  it.each(['A/C 30in x 30in', 'a/c unit 30in x 30in', 'A.C. unit 30in x 30in'])(
    '%j keeps the words that a caution looks for',
    (input) => {
      const read = readSize(input, reading())
      expect(read).toMatchObject({ status: 'read', lengths: [762_000_000, 762_000_000] })
      const words = read.status === 'read' ? read.words.join(' ') : ''
      expect(mentions(words, ['ac'])).toBe(true)
    },
  )

  it('says what numbers with their thousands set apart were read as', () => {
    expect(readSize('1,220 x 2,440', reading('US', 'metric'))).toMatchObject({
      lengths: mm(1220, 2440),
      note: '1,220 x 2,440 read as 1220 x 2440 mm',
    })
  })

  it('says that a fraction beside feet is taken as inches', () => {
    expect(readSize("4' x 8' x 1/2", reading())).toMatchObject({
      lengths: [1_219_200_000, 2_438_400_000, 12_700_000],
      note: '1/2 read as 1/2in',
    })
  })

  it.each([
    '',
    'pot',
    '24in x',
    '-24in x 36in',
    '24 x 36 x 12 x 6 in',
    'two 12in round pots',
    '12in x 12in, 14in x 14in',
    '45deg',
    '0 x 24in',
    '30 ft x 70 ft',
  ])('%j is refused', (input) => {
    expect(readSize(input, reading())).toMatchObject({ status: 'invalid' })
  })
})
