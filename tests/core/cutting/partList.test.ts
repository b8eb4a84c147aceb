import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PartList } from '../../../src/core/cutting/partList.ts'
import { readPartList } from '../../../src/core/cutting/partList.ts'
import { INCH, inches, MILLIMETRE, millimetres } from '../../../src/core/measure/length.ts'
import type { ReadingSettings, UnitSystem } from '../../../src/core/measure/reading.ts'

const settings = (units?: UnitSystem): ReadingSettings => ({
  units,
  region: 'US',
  kerf: inches(1, 8),
  stock: {
    lengths: [],
    boards: [{ region: 'US', name: '2x4', thickness: inches(3, 2), width: inches(7, 2) }],
    labels: [{ region: 'US', material: 'birch plywood', label: inches(3, 4), actual: millimetres(18.26) }],
    sizes: [{ region: 'US', name: '4x8', length: inches(96), width: inches(48) }],
  },
})

const read = (text: string, units?: UnitSystem): PartList => readPartList(text, settings(units))

/** A part in short: `label: count @ length x width x thickness material`, in inches or mm. */
function short(text: string, units: UnitSystem = 'inch'): string[] {
  const unit = units === 'inch' ? INCH : MILLIMETRE
  const list = read(text, units)
  expect(list.problems).toEqual([])
  return list.parts.map(({ label, count, length, width, thickness, material }) => {
    const size = [length, width, thickness]
      .flatMap((side) => (side === undefined ? [] : [side / unit]))
      .join(' x ')
    return `${label === undefined ? '' : `${label}: `}${count} @ ${size}${material ? ` ${material}` : ''}`
  })
}

const problems = (text: string, units?: UnitSystem): string[] =>
  read(text, units).problems.map((one) => one.problem)

describe('a line as people write it', () => {
  it.each([
    ['3 @ 4 ft', '3 @ 48'],
    ['24x12 (x4)', '4 @ 24 x 12'],
    ['24x12 (4)', '4 @ 24 x 12'],
    ['24 1/2 x 18 3/8 (x3)', '3 @ 24.5 x 18.375'],
    ['A 4x 23 15/16 x 18 ply', 'A: 4 @ 23.9375 x 18 ply'],
    ['4 off 24 x 16', '4 @ 24 x 16'],
    ['2 pcs 3/4 x 12 x 24', '2 @ 12 x 24 x 0.75'],
    ['2 pcs. 24" x 12" baltic birch ply', '2 @ 24 x 12 baltic birch ply'],
    ['24 x 18 qty 4', '4 @ 24 x 18'],
    ['qty: 4, 24 x 18', '4 @ 24 x 18'],
    ['6 ea. 23½ x 11¼', '6 @ 23.5 x 11.25'],
    ['three 2x4x8', '3 @ 96 x 3.5 x 1.5 2x4'],
    ['12 pieces of 3 1/2 x 7', '12 @ 3.5 x 7'],
    ['strip 48 in', 'strip: 1 @ 48'],
    ['24 x 18', '1 @ 24 x 18'],
    ['24 x 18 x 3/4', '1 @ 24 x 18 x 0.75'],
    ['Bottom 24 x 18, 3/4 ply', 'Bottom: 1 @ 24 x 18 x 0.75 ply'],
    ['3/4 ply 24 x 18 (2)', '2 @ 24 x 18 x 0.75 ply'],
    ['B2 2 off 24 x 18 x 1/2 mdf', 'B2: 2 @ 24 x 18 x 0.5 mdf'],
    ['cleat 3/4 x 3/4 x 12, 8 pcs', 'cleat: 8 @ 12 x 0.75 x 0.75'],
    ['rail 18 wide x 24 long', 'rail: 1 @ 24 x 18'],
    ['front / back: 2 @ 24 x 12', 'front / back: 2 @ 24 x 12'],
    ['lid, 24 x 12, grain long way', 'lid, grain long way: 1 @ 24 x 12'],
    ['24 x 18 birch plywood', '1 @ 24 x 18 birch plywood'],
    ['30x 14in x 9in 1/2 ply', '30 @ 14 x 9 x 0.5 ply'],
    ['2 @ 14 x 9 in 1/2in ply', '2 @ 14 x 9 x 0.5 ply'],
    ['4 pcs 14" x 9" 3/4" birch plywood', '4 @ 14 x 9 x 0.75 birch plywood'],
    ['2x 14in x 9in 1 1/8 ply', '2 @ 14 x 9 x 1.125 ply'],
    // A fraction after a bare number belongs to it.
    ['2x 14in x 9 1/2 ply', '2 @ 14 x 9.5 ply'],
  ])('%s', (text, part) => expect(short(text)).toEqual([part]))

  it.each([
    ['4 off 610 x 400', '4 @ 610 x 400'],
    ['610,5 x 400 (x2)', '2 @ 610.5 x 400'],
    ['18 x 600 x 400 (x2)', '2 @ 600 x 400 x 18'],
    ['Side 60cm x 40cm', 'Side: 1 @ 600 x 400'],
    ['2x 300 x 200 18mm MDF', '2 @ 300 x 200 x 18 MDF'],
    ['2x 300 x 200 18 mm MDF', '2 @ 300 x 200 x 18 MDF'],
  ])('%s in metric', (text, part) => expect(short(text, 'metric')).toEqual([part]))

  it.each(['- ', '* ', '• ', '1. ', '2) ', '[ ] '])('with the bullet "%s"', (bullet) =>
    expect(short(`${bullet}24 x 18 (x2)`)).toEqual(['2 @ 24 x 18']),
  )
})

describe('a board', () => {
  const boards = (text: string) =>
    read(text, 'inch').parts.map(({ board, count, length, width, thickness, material }) => ({
      board,
      count,
      sides: [length, width ?? 0, thickness ?? 0].map((side) => side / INCH),
      material,
    }))
  const three = { board: '2x4', count: 3, sides: [96, 3.5, 1.5], material: '2x4' }

  it.each([
    '8ft 2x4 x3',
    '2x4 8ft x3',
    '2x4x8 x3',
    '2x4x8 3x',
    'x3 8ft 2x4',
    '3 x 2x4x8',
    '3 @ 2x4x8',
    '8 ft 2x4 x 3',
  ])('by its name, with its length and count: %s', (text) => expect(boards(text)).toEqual([three]))

  it('by its name in the column of the material', () => {
    expect(boards('part,qty,length,material\nrail,3,96in,2x4')).toEqual([three])
    expect(boards('part,qty,length,width,material\nside,3,24in,12in,2x4')).toMatchObject([
      { board: undefined, sides: [24, 12, 0] },
    ])
  })

  it('of a wood that is named beside it', () =>
    expect(boards('2 @ 30in 2x4 pine')).toEqual([
      { ...three, count: 2, sides: [30, 3.5, 1.5], material: 'pine' },
    ]))

  it.each(['24 x 18', '24 x 18 x 3/4', '3/4 ply 24 x 18', 'strip 48 in'])('is not %s', (text) =>
    expect(boards(text)).toMatchObject([{ board: undefined }]),
  )

  it('with no length asks for that', () =>
    expect(problems('4 @ 2x4', 'inch')).toEqual([expect.stringContaining('write that too, such as 8ft 2x4')]))

  it('tells whether a line says how many', () =>
    expect(read('24 x 18\n1 @ 24 x 18\nA,1,24in,18in', 'inch').parts.map(({ counted }) => counted)).toEqual([
      false,
      true,
      true,
    ]))
})

describe('a number below zero', () => {
  it.each(['-3 @ 24 x 18', '24 x -18', 'A, -2, 24in, 12in', 'A: -24 x 18', '24 x 18, -3/4', '2 @ −24 x 18'])(
    'is refused: %s',
    (text) => expect(problems(text, 'inch')).toEqual([expect.stringContaining('number below zero')]),
  )

  it('is no bullet and no dash', () => {
    expect(short('- 24 x 18')).toEqual(['1 @ 24 x 18'])
    expect(short('A - 24 x 18')).toEqual(['A: 1 @ 24 x 18'])
  })
})

describe('a table', () => {
  it.each([
    ['Side panel, 2, 24 in, 18 in, plywood', 'Side panel: 2 @ 24 x 18 plywood'],
    ['A,2,24,18,3/4,ply', 'A: 2 @ 24 x 18 x 0.75 ply'],
    ['End;2;24;18', 'End: 2 @ 24 x 18'],
    ['Lid\t1\t24 1/2"\t18"', 'Lid: 1 @ 24.5 x 18'],
    ['| Lid | 3 | 24 | 18 |', 'Lid: 3 @ 24 x 18'],
    ['Side, 2, 24 x 18, ply', 'Side: 2 @ 24 x 18 ply'],
    ['24 in, 18 in, 4', '4 @ 24 x 18'],
    [', 2, 24 in, 18 in, ply', '2 @ 24 x 18 ply'],
    ['"Lid, ""left""", 2, 24 in, 18 in', 'Lid, "left": 2 @ 24 x 18'],
  ])('without a header: %s', (text, part) => expect(short(text)).toEqual([part]))

  it('keeps an empty first cell of a row with tabs', () => {
    expect(short('name\tqty\tlength\twidth\n\t2\t24\t18')).toEqual(['2 @ 24 x 18'])
  })

  it('says so when the count was guessed among bare numbers', () => {
    expect(read('A, 2, 24, 18', 'inch').parts[0]?.note).toBe(
      '2 read as the count; 24 x 18 read as 24 x 18 in',
    )
    expect(read('A, 2, 24 in, 18 in', 'inch').parts[0]?.note).toBeUndefined()
  })

  it('with a header that gives the unit', () => {
    const text = [
      'Part,Qty,Length (mm),Width (mm),Thickness,Material',
      'Side,2,600,400,18mm,birch plywood',
      '"End, left",1,"610.5",400,18mm,',
      'Base,,300,200,,mdf',
    ].join('\r\n')
    const list = read(text)
    expect(list.problems).toEqual([])
    expect(list.parts).toMatchObject([
      {
        line: 2,
        label: 'Side',
        count: 2,
        length: 600e6,
        width: 400e6,
        thickness: 18e6,
        material: 'birch plywood',
      },
      { line: 3, label: 'End, left', count: 1, length: 610.5e6, width: 400e6 },
      { line: 4, label: 'Base', count: 1, length: 300e6, width: 200e6, material: 'mdf' },
    ])
  })

  it('with columns in another order, tabs, and inch marks left as they are', () => {
    expect(short('size\tmaterial\tcount\tname\n24" x 18"\tply\t2\tA\n12" x 9 1/2"\tply\t4\tB')).toEqual([
      'A: 2 @ 24 x 18 ply',
      'B: 4 @ 12 x 9.5 ply',
    ])
  })

  it('says which columns are not used', () => {
    expect(read('Part,Length,Width,Colour\nA,24in,18in,red').notes).toEqual([
      'line 1 read as a header',
      'column "Colour" is not used',
    ])
  })
})

describe('units', () => {
  it('of the other lines serve a line that has none', () => {
    const { parts, problems: none } = read('24" x 18" (x2)\n24 x 12 (x4)')
    expect(none).toEqual([])
    expect(parts[1]).toMatchObject({ line: 2, count: 4, length: 24 * INCH, width: 12 * INCH })
    expect(parts[1]?.note).toContain('24 x 12')
  })

  it('of a title serve the list', () => {
    const metric = read('all sizes in mm\n60 x 40')
    expect(metric.parts).toMatchObject([{ line: 2, length: 60e6, width: 40e6 }])
    expect(metric.notes).toEqual(['line 1, "all sizes in mm", has no size and was passed over'])
    expect(read('sizes in inches\n60 x 40').parts).toMatchObject([{ length: 60 * INCH }])
  })

  it('are those of the first part, or of a title', () => {
    expect(read('24" x 18" (x2)\n600mm x 400mm').units).toBe('inch')
    expect(read('600mm x 400mm\n24" x 18" (x2)').units).toBe('metric')
    expect(read('all sizes in mm\n60 x 40').units).toBe('metric')
    expect(read('24 x 18').units).toBeUndefined()
  })

  it('of a thickness in mm serve its sides', () => {
    const [part] = read('2x 300 x 200 18mm MDF').parts
    expect(part).toMatchObject({
      length: millimetres(300),
      width: millimetres(200),
      thickness: millimetres(18),
    })
  })

  it('are asked for when no line has one', () => {
    expect(problems('24 x 12')).toEqual([expect.stringMatching(/^line 1, "24 x 12": .*24in x 12in/)])
  })

  it('are asked for when the lines do not agree', () => {
    expect(problems('24" x 18"\n600mm x 400mm\n24 x 12')).toHaveLength(1)
  })
})

describe('a clear problem', () => {
  it.each([
    ['Shelf 2 24x18', 'count or part of the name'],
    ['4 x 24 x 18', 'the 4 in "4 x 24 x 18" could be a count or a thickness'],
    ['0 @ 24 x 18', 'asks for 0 of them'],
    ['20000 @ 24 x 18', 'from 1 to 10000'],
    ['2 @ 24 x 18 (x4)', 'two counts'],
    ['24 x banana', 'cannot read "24 x"'],
    ['45 deg', 'is an angle'],
    ['24 x 18 x 12', 'length x width x thickness'],
    ['8 screws', 'no size'],
    ['Side, 24, 18, 2', 'which number is the count'],
    ['A, 12, 24', 'which number is the count'],
    ['2 @ 24 x 18 x 3/4, 1/2 ply', 'more than one thickness'],
    ['24 x 18 and 30 x 12', 'line 1'],
    ['24in x12', 'has "x12", which could be a count or a side; write 12 @ for a count'],
    ['24 x 18 x4', 'has "x4", which could be a count or a side'],
  ])('%s', (text, claim) => expect(problems(text, 'inch')).toEqual([expect.stringContaining(claim)]))

  it('of a table row names the cell', () => {
    const header = 'part,qty,length,width'
    expect(problems(`${header}\nLid,x,24,18`, 'inch')).toEqual([
      'line 2, "Lid,x,24,18": has "x" for a count; write a whole number from 1 to 10000',
    ])
    expect(problems(`${header}\nLid,1,24,18,99`, 'inch')).toEqual([
      expect.stringContaining('"99" is under none'),
    ])
  })

  it('does not keep the other lines from being read', () => {
    const list = read('Kit 1:\n\nA 2 @ 24 x 18\n24 x banana\nB 24 x 12', 'inch')
    expect(list.parts.map(({ line, label }) => `${line} ${label}`)).toEqual(['3 A', '5 B'])
    expect(list.problems.map(({ line }) => line)).toEqual([4])
    expect(list.notes).toEqual(['line 1, "Kit 1:", has no size and was passed over'])
  })
})

describe('any text', () => {
  const piece = fc.constantFrom(
    ...[
      '24',
      '3/4',
      '18',
      ' x ',
      'x',
      '4',
      ' @ ',
      ',',
      ', ',
      '(x2)',
      '(',
      ')',
      'ply',
      ' ',
      '\t',
      ';',
      '|',
      '"',
    ],
    ...[
      'A',
      'Side ',
      'qty ',
      'off ',
      'mm',
      ' in',
      '½',
      '-',
      '- ',
      '1. ',
      ':',
      'deg',
      '\n',
      '0',
      '.5',
      '\n',
      'two ',
    ],
  )
  const text = fc.oneof(
    fc.array(piece, { maxLength: 20 }).map((pieces) => pieces.join('')),
    fc.string({ unit: 'grapheme' }),
  )
  const units = fc.constantFrom('inch' as const, 'metric' as const, undefined)

  it('is read without a throw, and no line is lost', () => {
    fc.assert(
      fc.property(text, units, (pasted, unit) => {
        const { parts, problems: faults, notes } = read(pasted, unit)
        const told = [
          ...parts.map(({ line }) => line),
          ...faults.map(({ line }) => line),
          ...notes.flatMap((note) => Number(/^line (\d+)/.exec(note)?.[1] ?? 0) || []),
        ].sort((a, b) => a - b)
        const lines = pasted.split(/\r\n|\r|\n/u)
        const filled = lines.flatMap((line, at) => (/[\p{L}\p{N}]/u.test(line) ? [at + 1] : []))
        expect(told).toEqual(expect.arrayContaining(filled))
        expect(new Set(told).size).toBe(told.length)
      }),
      { numRuns: 1000 },
    )
  })

  it('gives only counts and sizes that can be cut', () => {
    fc.assert(
      fc.property(text, units, (pasted, unit) => {
        for (const { count, length, width, thickness } of read(pasted, unit).parts) {
          expect(Number.isSafeInteger(count) && count >= 1 && count <= 10_000).toBe(true)
          for (const side of [length, width ?? 1, thickness ?? 1])
            expect(Number.isSafeInteger(side) && side > 0).toBe(true)
        }
      }),
      { numRuns: 1000 },
    )
  })
})

describe('written and read again', () => {
  const part = fc.record({
    label: fc.constantFrom('Side', 'End panel', 'Shelf', 'Lid'),
    count: fc.integer({ min: 1, max: 99 }),
    length: fc.integer({ min: 16, max: 1500 }),
    width: fc.integer({ min: 16, max: 700 }),
  })
  const sixteenths = (count: number): string =>
    count % 16 === 0 ? `${count / 16}` : `${Math.floor(count / 16)} ${count % 16}/16`

  it('every common form gives the same part', () => {
    fc.assert(
      fc.property(part, ({ label, count, length, width }) => {
        const [long, wide] = [sixteenths(length), sixteenths(width)]
        const forms = [
          `${label}: ${count} @ ${long} x ${wide} in`,
          `${label} ${count} off ${long}" x ${wide}"`,
          `- ${label} ${long}in x ${wide}in (x${count})`,
          `${label}, ${count}, ${long} in, ${wide} in`,
          `${label}\t${count}\t${long}"\t${wide}"`,
          `${count} pcs ${long} x ${wide} in ${label}`,
        ]
        for (const form of forms) {
          const list = read(form)
          expect(list.problems).toEqual([])
          expect(list.parts).toMatchObject([
            { label, count, length: (length * INCH) / 16, width: (width * INCH) / 16 },
          ])
        }
      }),
    )
  })
})
