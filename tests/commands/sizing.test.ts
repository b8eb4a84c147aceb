import { afterAll, describe, expect, it } from 'vitest'
import { openRoom } from '../room.ts'
import { cautionsOf, expectFigures, figuresOf, inch, textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

const SURROUND = 'sizing 17in x 13in height=15in'

describe('a captured surround, worked on paper from the way its corners go together', () => {
  // 17 x 13 in, 1/2 in a side, 15 in high, sheet 15/32, strips 1/2 x 1 1/2, fit 1/32. In thirty-seconds: t 15, s 16, w 48.
  it('has every figure', async () => {
    expectFigures(await figuresOf(room, SURROUND), {
      insideLength: inch(17 + 2 * (1 / 2)),
      insideWidth: inch(13 + 2 * (1 / 2)),
      outsideLength: inch(18, 2 * (15 + 16), 32),
      outsideWidth: inch(14, 2 * (15 + 16), 32),
      panelHeight: inch(15),
      sidePanelLength: inch(18),
      endPanelLength: inch(14, 2 * 15, 32),
      sideRailLength: inch(18, 2 * (15 + 16), 32),
      endRailLength: inch(14, 2 * 15, 32),
      endStileLength: inch(15 - 2 * (3 / 2)),
      cornerStileLength: inch(12, -2, 32),
      lip: inch(0, 48 - (15 + 16), 32),
      fit: inch(0, 1, 32),
      flatStack: inch(0, 4 * (15 + 16), 32),
    })
  })

  it('lists its parts with label, count and sizes', async () => {
    const { parts } = await figuresOf(room, `${SURROUND} braces=none`)
    const [panel, rail] = [
      { width: inch(15), thickness: inch(0, 15, 32) },
      { width: inch(3 / 2), thickness: inch(1 / 2) },
    ]
    expect(parts).toMatchObject([
      { label: 'A', name: 'end panel', count: 2, length: inch(14, 30, 32), ...panel },
      { label: 'B', name: 'side panel', count: 2, length: inch(18), ...panel },
      { label: 'C', name: 'end rail', count: 4, length: inch(14, 30, 32), ...rail },
      { label: 'D', name: 'side rail', count: 4, length: inch(19, 30, 32), ...rail },
      { label: 'E', name: 'end stile', count: 4, length: inch(12), ...rail },
      { label: 'F', name: 'corner stile', count: 4, length: inch(11, 30, 32), ...rail },
    ])
  })

  it('stands as a box: laid end to end its parts make the outside', async () => {
    const size = await figuresOf(
      room,
      `${SURROUND} sheet=12.3mm strip=11mm width=40mm clearance=7mm fit=0.8mm`,
    )
    const of = (name: string) => size[name] as number
    const [sheet, strip, width] = [12.3, 11, 40]
    // Along a long wall: strip, end panel, side panel, end panel, strip. Along a short one: strip, end panel's length, strip.
    expect(of('outsideLength')).toBeCloseTo(2 * strip + 2 * sheet + of('sidePanelLength'), 9)
    expect(of('outsideWidth')).toBeCloseTo(2 * strip + of('endPanelLength'), 9)
    expect(of('sideRailLength')).toBeCloseTo(of('outsideLength'), 9)
    // Upright: rail, stile, rail; the corner stile has a gap at each end.
    expect(of('panelHeight')).toBeCloseTo(2 * width + of('endStileLength'), 9)
    expect(of('panelHeight')).toBeCloseTo(2 * width + of('cornerStileLength') + 2 * of('fit'), 9)
    // The corner stile covers strip and sheet of the end wall, then the lip.
    expect(width).toBeCloseTo(strip + sheet + of('lip'), 9)
  })
})

describe('other corners', () => {
  // Side frames run over the end panel's edge, end frames over the side frame's end: rails of 18 + 2t and 14 + 2(t + s).
  it.each([
    ['cleated', 4 * (15 + 16) + 2 * 16, ['side stile', 'corner block']],
    ['butted', 4 * (15 + 16), ['side stile']],
  ])('%s', async (corner, stack, upright) => {
    const figures = await figuresOf(room, `${SURROUND} corner=${corner}`)
    expectFigures(figures, {
      sideRailLength: inch(18, 2 * 15, 32),
      endRailLength: inch(14, 2 * (15 + 16), 32),
      cornerStileLength: inch(12),
      lip: 0,
      fit: 0,
      flatStack: inch(0, stack, 32),
    })
    const names = (figures.parts as { name: string }[]).map(({ name }) => name)
    expect(names.slice(5)).toEqual(upright)
  })
})

describe('the object', () => {
  const box = (length: number, width: number, height: number) => ({
    insideLength: inch(length + 1),
    insideWidth: inch(width + 1),
    panelHeight: inch(height),
  })

  it.each([
    ['17in x 13in x 15in', box(17, 13, 15)],
    ['17in round height=15in', box(17, 17, 15)],
    ['17in round x 15in high', box(17, 17, 15)],
    ['17in dia x 15in deep', box(17, 17, 15)],
    ['17in square height=15in', box(17, 17, 15)],
    ['29in hi x 46in wide x 18in deep', box(46, 18, 29)],
    ['18in deep x 46in wide height=20in', box(46, 18, 20)],
    ['13in wide x 17in long x 15in tall', box(17, 13, 15)],
    ['41-1/2in long by 25in deep by 27-1/2in high', box(41.5, 25, 27.5)],
    ['24in long x 18in wide x 12in deep', box(24, 18, 12)],
    ['18"H x 29"W x 18"D', box(29, 18, 18)],
  ])('%s', async (object, expected) => {
    expectFigures(await figuresOf(room, `sizing ${object}`), expected, object)
  })

  it.each([
    ['46in wide x 29in high', /two sizes on the floor/u],
    ['17in dia x 15in wide', /a round object has a diameter and a height/u],
    ['17in wide x 13in wide x 15in high', /both its width/u],
    ['17in height=15in', /^ambiguous: .*square or a round/u],
    ['17in x 13in x 15in height=16in', /height is given twice/u],
    ['17in x 13in', /how tall/u],
    ['height=15in', /what does it go round/u],
  ])('%s is asked about', async (object, sentence) => {
    expect(await room.refusal(`sizing ${object}`)).toMatch(sentence)
  })
})

describe('sheet and strips', () => {
  it.each([
    ['sheet=12mm', 12],
    ['sheet=15/32in', inch(15 / 32)],
    ['sheet=1/2 ply', inch(15 / 32)],
    ['sheet=0.703in', inch(0.703)],
    ['sheet=23/32in', inch(23 / 32)],
  ])('%s is reckoned with', async (sheet, thickness) => {
    // Two thicknesses make the end panel longer than the inside is wide.
    expectFigures(
      await figuresOf(room, `${SURROUND} ${sheet}`),
      { endPanelLength: inch(14) + 2 * thickness },
      sheet,
    )
  })

  it.each([
    ['sheet=18mm ply', '18 mm plywood taken as'],
    ['sheet=1/2 ply', '1/2 in plywood taken as 15/32 in thick (measure yours'],
  ])('%s is a label, and says what it was taken as', async (sheet, said) => {
    expect(textOf(await room.reply(`${SURROUND} ${sheet}`))).toContain(said)
  })

  it('says nothing of a label where the sheet was measured', async () => {
    expect(textOf(await room.reply(`${SURROUND} sheet=15/32in`))).not.toContain('measure yours')
  })

  it.each([
    ['clearance=1in total', inch(18)],
    ['clearance=1/2in per side', inch(18)],
    ['clearance=0', inch(17)],
    ['clearance=6in', inch(29)],
  ])('%s', async (clearance, insideLength) => {
    expectFigures(await figuresOf(room, `${SURROUND} ${clearance}`), { insideLength })
  })

  it('takes the face of the strips from the board, or from width=', async () => {
    const lip = (width: number) => ({ lip: inch(0, width * 32 - 31, 32) })
    expectFigures(await figuresOf(room, `${SURROUND} board=2x6`), lip(3 / 2))
    expectFigures(await figuresOf(room, `${SURROUND} width=1 1/4in`), lip(5 / 4))
    expectFigures(await figuresOf(room, `${SURROUND} width=1 1/2in board=2x4`), lip(3 / 2))
    expect(await room.refusal(`${SURROUND} width=1in board=2x4`)).toMatch(/width= and board= .*differ/u)
  })

  it('names a strip or a width that would give a lip, and both do', async () => {
    // A 1x4 is 3/4 in thick: 15/32 + 1/2 is 31/32, so it ends 7/32 short. Strips under 9/32 would do.
    const sentence = await room.refusal(`${SURROUND} board=1x4`)
    expect(sentence).toContain('7/32 in short')
    expect(sentence).toContain('thinner than 9/32 in')
    expect(sentence).toContain('wider than 31/32 in')
    expectFigures(await figuresOf(room, `${SURROUND} board=1x4 strip=1/4in`), { lip: inch(0, 1, 32) })
    expectFigures(await figuresOf(room, `${SURROUND} width=1in`), { lip: inch(0, 1, 32) })
  })

  it('advises no strip too thin to be one', async () => {
    // 3/4 - 23/32 leaves a strip of 1/32.
    expect(await room.refusal(`${SURROUND} sheet=3/4 ply board=1x4`)).not.toContain('thinner')
  })
})

// Recomputed values from questions people ask; the reckoning stands beside each.
describe('questions with recomputed answers', () => {
  it('a box 10 in inside from 1/2 in stock: two sides at 10, two at 10 + 2 x 1/2', async () => {
    const line = 'sizing 10in x 10in height=10in clearance=0 sheet=1/2in'
    expectFigures(await figuresOf(room, line), {
      sidePanelLength: inch(10),
      endPanelLength: inch(10 + 2 / 2),
    })
  })
})

describe('braces and grooves', () => {
  it('say their saw setting and their first fence', async () => {
    const reply = await room.reply(`${SURROUND} braces=all grooves=3`)
    const text = textOf(reply)
    // End opening 14 15/16 - 3 by 12, side 19 15/16 - 3 by 12, strip 1 1/2.
    const [wide, high] = [11 + 15 / 16, 12]
    const steep = Math.atan2(high, wide) + Math.asin(1.5 / Math.hypot(wide, high))
    const saw = 90 - (steep * 180) / Math.PI
    expect(text).toContain(
      `G end brace: blank 16 7/8 in (+0.015) tip to tip, set the saw to ${saw.toFixed(1)}° from square`,
    )
    expect(text).toMatch(/H side brace: blank .* flush with the stiles/u)
    // Between stiles that cover 17/32: (18 - 34/32) / 4 = 4 15/64, so the first centre is at 4 49/64 and the fence 1/16 less.
    expect(text).toContain('side panels first fence 4 23/32 in')
    expect(reply.buttons?.at(-1)?.line).toMatch(/^cautions named=.*groove-guard/u)
  })

  it('are refused where they cannot be cut', async () => {
    expect(await room.refusal('sizing 100mm x 100mm height=300mm width=30mm grooves=40')).toMatch(
      /40 grooves in each (?:side|end) panel: .*fit at most/u,
    )
    expect(await room.refusal('sizing 40mm x 40mm height=300mm width=30mm braces=all')).toMatch(
      /narrower strips|braces=none/u,
    )
  })
})

describe('what cannot be', () => {
  it.each([
    ['17in x 13in height=1in', /leaves no stile .*more than 3 1\/16 in/u],
    ['0.5in x 0.5in height=15in', /two stiles take all of that; it takes more than 3 in/u],
    ['25m x 13m height=15in', /longer than 20 m/u],
    ['17in x 13in height=15in clearance=10ft', /clearance 120 in on each side is no surround/u],
    ['17in x 13in height=0', /cannot read "0"/u],
    ['17in x 13in height=15in sheet=0', /cannot read "0"/u],
    ['17in x 13in height=15in strip=-1in', /cannot be negative/u],
    ['17in x 13in height=15in grooves=41', /from 0 to 40/u],
    ['17in x 13in height=15in corner=dovetail', /captured, cleated, butted, halved or bracketed/u],
  ])('%s is told in one sentence', async (line, sentence) => {
    const said = await room.refusal(`sizing ${line}`)
    expect(said).toMatch(sentence)
    expect(said).not.toContain('\n')
  })

  it('gives no numbers for a closed box round a generator until it is answered', async () => {
    const line = 'sizing generator 24in x 18in height=20in'
    expect(await room.refusal(line)).toMatch(/^unsafe: .*open=both/u)
    const open = await room.reply(`${line} open=both`)
    expectFigures(open.figures, { insideLength: inch(25) })
    expect(textOf(open)).toContain('open=both')
  })

  it('says which parts no sheet or board gives in one piece', async () => {
    const text = textOf(await room.reply('sizing 20ft x 13in height=15in'))
    expect(text).toContain('B is larger than any sheet there is (4x8), and than two of them')
  })
})

describe('the reply', () => {
  it('starts with what to cut, cautions where it leads to a cut, and repeats no line', async () => {
    const reply = await room.reply(`${SURROUND} braces=all grooves=5`)
    expect(reply.answer).toBe('Cut 2 end panels 14 15/16 x 15 in and 2 side panels 18 x 15 in')
    // The gravest three in full; one tap says the others, none is lost.
    expect(cautionsOf(reply)).toEqual(['rip-thin', 'fence-and-gauge', 'crosscut-small', 'more'])
    const rest = reply.buttons?.at(-1)?.line ?? ''
    expect(cautionsOf(await room.reply(rest))).toEqual(
      expect.arrayContaining(['full-sheet', 'nail-gun', 'manual']),
    )
    expect(new Set(reply.notes).size).toBe(reply.notes?.length)
  })

  it('points to the year of a captured corner, and says that no other has a fit', async () => {
    expect(textOf(await room.reply(SURROUND))).toMatch(
      /1\/32 in gap at each end of a corner stile \(fit=\); "fit" says how loose and how tight/u,
    )
    expect(textOf(await room.reply(`${SURROUND} fit=1/16in`))).toContain('"fit" says how loose')
    for (const corner of ['cleated', 'butted']) {
      const { notes = [] } = await room.reply(`${SURROUND} corner=${corner} fit=1/16in`)
      expect(notes.join()).toContain('fit= is for captured or halved corners: there is none here (corner=)')
      expect(notes.join()).not.toContain('"fit" says')
    }
    expect(textOf(await room.reply(`${SURROUND} corner=butted`))).not.toContain('fit=')
  })

  it('says of each side of a pair what its mark misses by', async () => {
    const text = textOf(
      await room.reply('sizing 430mm x 330.3mm height=380.7mm sheet=11.9mm clearance=9.7mm width=38mm'),
    )
    // Inside 449.4 x 349.7, rounded down.
    expect(text).toContain('inside 449 x 349 mm (-0.40, -0.70)')
    expect(text).toMatch(/A long \(-0\.\d\d\), A wide \(-0\.70\), B long \(-0\.40\), B wide \(-0\.70\)/u)
  })

  it.each([
    [`${SURROUND} grooves=-2`, 'grooves="-2" is out of range; write a whole number from 0 to 40'],
    [`${SURROUND} grooves=2.5`, 'grooves="2.5" is out of range; write a whole number from 0 to 40'],
    [
      `${SURROUND} corner=mitred`,
      'corner="mitred" is not one of captured, cleated, butted, halved or bracketed',
    ],
    ['sizing 17in x 13in height 15in', '; write height=15in'],
  ])('%s is told in one sentence', async (line, sentence) => {
    expect(await room.refusal(line)).toContain(sentence)
  })

  it('offers to keep the plan, in the very words', async () => {
    const [keep] = (await room.reply(SURROUND)).buttons ?? []
    expect(keep?.line).toBe('project start 17in x 13in height=15in')
  })

  it.each([
    ['UK', 12, 38],
    ['AU', 12, 45],
    ['EU', 12, 38],
  ])('fills in what is usual in region %s', async (region, strip, width) => {
    const who = { user: region, channel: region }
    await room.reply(`units region=${region}`, who)
    const figures = await figuresOf(room, 'sizing 430mm x 330mm height=380mm', who)
    // 12 mm a side, 12 mm sheet; lip w - (12 + 12).
    expectFigures(figures, { insideLength: 430 + 24, endPanelLength: 330 + 24 + 24, lip: width - 12 - strip })
  })
})
