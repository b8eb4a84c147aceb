import { describe, expect, it } from 'vitest'
import { inches, millimetres } from '../../../src/core/measure/length.ts'
import { readBoard } from '../../../src/core/measure/readBoard.ts'
import { reading } from './stockTables.ts'

const twoBySix = { thickness: inches(3, 2), width: inches(11, 2), name: '2x6' }
const twoByFour = { thickness: inches(3, 2), width: inches(7, 2), name: '2x4' }

describe('readBoard', () => {
  it.each([
    ['2x6', twoBySix],
    ['2 × 6', twoBySix],
    ['two by six', twoBySix],
    ['2x6 cedar', twoBySix],
    ['2x6x8', { ...twoBySix, length: inches(96) }],
    ['2x6 8 footer', { ...twoBySix, length: inches(96) }],
    ['8 ft 2x6', { ...twoBySix, length: inches(96) }],
    ['2x4x96', { ...twoByFour, length: inches(96) }],
    ['2x4x92-5/8', { ...twoByFour, length: inches(741, 8) }],
    ['three 2x4x8', { ...twoByFour, length: inches(96), count: 3 }],
    ['half a 2x4, ripped', { ...twoByFour, width: inches(27, 16) }],
    ['5/4x6', { thickness: inches(1), width: inches(11, 2), name: '5/4x6' }],
    ['140x45', { thickness: millimetres(45), width: millimetres(140), name: '140x45', units: 'metric' }],
  ])('%j by name', (input, board) => {
    expect(readBoard(input, reading())).toMatchObject({ status: 'read', units: 'inch', ...board })
  })

  it.each([
    ['1 1/2in x 5 1/2in', inches(3, 2), inches(11, 2)],
    ['5 1/2 x 1 1/2 in', inches(3, 2), inches(11, 2)],
    ['38x140', millimetres(38), millimetres(140)],
    ['2in x 6in measured', inches(2), inches(6)],
  ])('%j as measured', (input, thickness, width) => {
    const read = readBoard(input, reading())
    expect(read).toMatchObject({
      status: 'read',
      thickness,
      width,
      note: expect.stringContaining('measured'),
    })
    expect(read).not.toHaveProperty('name')
  })

  it('says what a name was taken as', () => {
    expect(readBoard('2x6', reading())).toMatchObject({ note: '2x6 taken as 1 1/2 x 5 1/2 in, dressed' })
    expect(readBoard('2x6x8', reading())).toMatchObject({
      note: '2x6 taken as 1 1/2 x 5 1/2 in, dressed, 8ft long',
    })
    expect(readBoard('4x2', reading('UK'))).toMatchObject({
      thickness: millimetres(47),
      width: millimetres(100),
    })
  })

  it.each(['4x8', '4x2', '2" x 6"', '2x4x2'])('%j is asked about', (input) => {
    expect(readBoard(input, reading())).toMatchObject({ status: 'ambiguous' })
  })

  it.each(['', '24in', '1/2 ply', '2x9', '2x6 from the rack', 'banana', '2x6x8x4', '-2x6'])(
    '%j is refused',
    (input) => {
      expect(readBoard(input, reading())).toMatchObject({ status: 'invalid' })
    },
  )

  // Retail guide to lumber sizes: 6 to 24 ft by 2 ft; 22 and 24 in are pieces as well.
  it.each([
    ['2x12x20', 20 * 12],
    ['2x12 24ft', 24 * 12],
    ['2x12 24in', 24],
    ['2x12x25', 25],
  ])('%j is %d in long', (input, long) => {
    expect(readBoard(input, reading())).toMatchObject({ status: 'read', length: inches(long) })
  })

  it.each(['2x12x22', '2x12x24'])('%j is feet or inches, each of them to be written', (input) => {
    const found = readBoard(input, reading())
    if (found.status !== 'ambiguous') throw new Error(found.status)
    const number = input.slice(-2)
    expect(found.question).toContain(`write 2x12 ${number}ft or 2x12 ${number}in`)
  })
})
