import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Asker, asker } from './asker.ts'

let bench: Asker
beforeAll(async () => {
  bench = await asker()
})
afterAll(() => bench.room.close())

/** A frame of `a` x `b` mm leaning by `lean` degrees: both diagonals, to the thousandth of a mm. */
function leaning(a: number, b: number, lean: number) {
  const sine = Math.sin((lean * Math.PI) / 180)
  const diagonal = (sign: number) => Math.sqrt(a * a + b * b + sign * 2 * a * b * sine).toFixed(3)
  return { rising: diagonal(1), falling: diagonal(-1) }
}

describe('square', () => {
  // Conversion and geometry tables: 4 x 8 ft 107.33 in, 1220 x 2440 mm 2728.0 mm; 3-4-5.
  it.each([
    ['4ft x 8ft', 107.33 * 25.4, 0.3],
    ['1220mm x 2440mm', 2728, 0.05],
    ['3ft x 4ft', 60 * 25.4, 1e-6],
  ])('%s has diagonals of %d mm', async (size, printed, off) => {
    expect(Math.abs((await bench.number(`square ${size}`, 'diagonal')) - printed)).toBeLessThanOrEqual(off)
  })

  it('finds the lean that a frame was given, which corner is long, and by how much each side slid', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 200, max: 2400 }),
        fc.integer({ min: 200, max: 1200 }),
        fc.double({ min: -10, max: 10, noNaN: true }),
        async (a, b, lean) => {
          const { rising, falling } = leaning(a, b, lean)
          const found = await bench.figures(`square ${a}mm x ${b}mm rising=${rising}mm falling=${falling}mm`)
          expect(found.angle).toBeCloseTo(Math.abs(lean), 2)
          expect(found.overWidth).toBeCloseTo(b * Math.sin((Math.abs(lean) * Math.PI) / 180), 1)
          if (Math.abs(lean) > 0.01)
            expect(found.squeezed).toEqual(
              lean > 0 ? ['bottom left', 'top right'] : ['top left', 'bottom right'],
            )
          expect(Math.abs(found.misread as number)).toBeLessThan(0.01)
          // One diagonal and the two sides say the same.
          const three = await bench.figures(`square ${a}mm x ${b}mm rising=${rising}mm`)
          expect(three.angle).toBeCloseTo(found.angle as number, 2)
          if (Math.abs(lean) > 0.01) expect(three.squeezed).toEqual(found.squeezed)
        },
      ),
      { numRuns: 80 },
    )
  })

  // PS 1-19: square within 1/64 in for each foot of the longest edge; 1/8 in of diagonals on 4 x 8 ft.
  it('calls a sheet as square as plywood is sold up to 1/64 in to the foot', async () => {
    const at = (lean: number) => {
      const { rising, falling } = leaning(2438.4, 1219.2, lean)
      return bench.figures(`square 2438.4mm x 1219.2mm rising=${rising}mm falling=${falling}mm`)
    }
    const limit = (Math.atan(1 / 64 / 12) * 180) / Math.PI
    expect((await at(limit * 0.99)).asSheet).toBe(true)
    expect((await at(limit * 1.01)).asSheet).toBe(false)
    expect(Math.abs(((await at(limit)).difference as number) / 25.4 - 0.112)).toBeLessThan(0.001)
  })

  // Cabinetmakers' forum: 1/32 in good, 1/16 fair, 3/32 the outer limit on a diagonal of 45 in (a frame 27 x 36 in).
  it.each([
    ['1/32in', 'good'],
    ['1/16in', 'fair'],
    ['3/32in', 'limit'],
    ['1/8in', 'past'],
  ])('%s on 45 in is %s', async (more, grade) => {
    // Turned about the true diagonal, so that the sides agree with them.
    const sixtyFourths = { '1/32in': 1, '1/16in': 2, '3/32in': 3, '1/8in': 4 }[more] ?? 0
    const off = sixtyFourths / 64 - 1e-5
    const line = `square 27in x 36in rising=${45 + off}in falling=${45 - off}in`
    expect((await bench.figures(line)).cabinet).toBe(grade)
  })

  it('says what to do first', async () => {
    expect((await bench.reply('square 24in x 18in rising=30 1/16in falling=29 15/16in')).answer).toBe(
      '0.2° out of square: squeeze bottom left and top right together by 1/16 in',
    )
    for (const rising of ['5ft', '60.001in'])
      expect((await bench.reply(`square 3ft x 4ft rising=${rising}`)).answer).toBe(
        'Square: both diagonals agree',
      )
  })

  it('doubts measures that do not agree, and refuses those that cannot be', async () => {
    const { notes = [] } = await bench.reply('square 24in x 18in rising=30 1/4in falling=30 1/4in')
    expect(notes.join('\n')).toMatch(/sides and diagonals disagree by 0.25 in: measure them again/u)
    const far = await bench.reply('square 24in x 18in rising=31in falling=31in')
    expect(far.answer).toBe('Measure again: sides and diagonals disagree by 1 in')
    expect(far.notes).toEqual(['both diagonals are 30 in when it is square'])
    expect(await bench.room.refusal('square 24in x 18in rising=60in falling=10in')).toMatch(
      /^invalid: no frame .* measure again$/u,
    )
    expect(await bench.room.refusal('square 24in x 18in rising=60in')).toMatch(/^invalid: no frame/u)
    expect(await bench.room.refusal('square rising=30in')).toMatch(/^invalid: how large is the frame\?/u)
    expect(await bench.room.refusal('square 24in round')).toMatch(/^invalid: a frame has a length/u)
  })
})

describe('square in a channel', () => {
  it('knows the frames of the plan', async () => {
    const channel = await asker('project start 17in x 13in height=15in sheet=1/2in strip=1/2in')
    // Sides 18 + 2 x (1/2 + 1/2) by 15: 25 in. Ends 14 + 2 x 1/2 by 15.
    expect(await channel.number('square', 'diagonal')).toBeCloseTo(25 * 25.4, 6)
    expect(await channel.number('square panel=end', 'diagonal')).toBeCloseTo(15 * Math.SQRT2 * 25.4, 6)
    expect(await channel.number('square panel=top', 'diagonal')).toBeCloseTo(Math.hypot(20, 16) * 25.4, 6)
    expect(await channel.number('square rising=25in falling=25in', 'angle')).toBe(0)
    await channel.reply('project change height=48in')
    expect(await channel.number('square', 'diagonal')).toBeCloseTo(52 * 25.4, 6)
    await channel.room.close()
  })
})

describe('square, by the corners', () => {
  it('says the angle of each pair of corners, which add up to two right angles, and whether they are open', async () => {
    // Three sides 36, 48 and 60 1/2: by the law of cosines about 91 degrees opposite the diagonal (3, 4 and 5 make it square).
    const { notes = [] } = await bench.reply('square 36in x 48in rising=60 1/2in')
    const angle = (Math.acos((36 ** 2 + 48 ** 2 - 60.5 ** 2) / (2 * 36 * 48)) * 180) / Math.PI
    const line = notes.find((note) => note.startsWith('corners: '))
    expect(line).toContain(`bottom right and top left ${Math.round(angle * 10) / 10}° (open)`)
    expect(line).toContain(`bottom left and top right ${Math.round((180 - angle) * 10) / 10}° (closed)`)
  })

  it('leans the corners by the angle of the first line, where both diagonals were measured', async () => {
    const { answer, notes = [] } = await bench.reply('square 24in x 18in rising=30in falling=30 1/8in')
    // d D / (2 a b) = 1/8 x 30 / (2 x 24 x 18) radians = 0.249 degrees.
    expect(answer).toMatch(/^0.2° out of square/u)
    expect(notes).toContain(
      'corners: bottom right and top left 89.8° (closed), bottom left and top right 90.2° (open)',
    )
  })

  it('says nothing of corners where the frame is square', async () => {
    const { notes = [] } = await bench.reply('square 36in x 48in rising=60in')
    expect(notes.join()).not.toContain('corners: ')
  })
})
