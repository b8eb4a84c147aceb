import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, ZERO } from '../../../src/core/measure/length.ts'
import { joinPanel } from '../../../src/core/panelling/panelJoin.ts'
import { lengths } from './specs.ts'

const SHEET = [{ length: inches(96), width: inches(48) }]
const framed = { stile: inches(3, 2), rail: inches(3, 2) }

describe('joinPanel', () => {
  // Worked on paper for 4 x 8 ft sheets and a frame 1 1/2 in wide.
  it.each([
    ['a panel that lies along the sheet', 90, 48, { status: 'whole' }],
    ['a panel that stands along the sheet', 40, 90, { status: 'whole' }],
    [
      'a little higher than the sheet is wide',
      60,
      48.5,
      { way: 'level', at: inches(191, 4), behind: 'rail' },
    ],
    [
      'a little longer than the sheet is wide, and higher',
      48.5,
      90,
      { way: 'upright', at: inches(191, 4), behind: 'stile' },
    ],
    ['much higher than the sheet is wide', 60, 60, { way: 'level', at: inches(30), behind: 'batten' }],
    ['longer than any sheet', 120, 40, { way: 'upright', at: inches(60), behind: 'batten' }],
    ['longer and higher than two sheets', 200, 100, { status: 'many' }],
  ] as const)('%s', (_, length, width, expected) => {
    const panel = { length: inches(length), width: inches(width), ...framed }
    expect(joinPanel(panel, SHEET)).toMatchObject(expected)
  })

  it('goes on a batten where there is no frame', () => {
    const bare = { length: inches(60), width: inches(97, 2), stile: ZERO, rail: ZERO }
    expect(joinPanel(bare, SHEET)).toMatchObject({ behind: 'batten' })
  })

  it('gives two pieces that each come out of a sheet, joined where something covers both of them', () => {
    fc.assert(
      fc.property(lengths(300, 4000), lengths(300, 3000), (length, width) => {
        const panel = { length, width, ...framed }
        const join = joinPanel(panel, SHEET)
        if (join.status !== 'joined') return
        const pieces =
          join.way === 'level'
            ? [
                { ...panel, width: join.at },
                { ...panel, width: (width - join.at) as typeof width },
              ]
            : [
                { ...panel, length: join.at },
                { ...panel, length: (length - join.at) as typeof length },
              ]
        for (const piece of pieces) expect(joinPanel(piece, SHEET).status).toBe('whole')
        const [side, covered] = join.way === 'level' ? [width, framed.rail] : [length, framed.stile]
        if (join.behind !== 'batten') expect(side - join.at).toBe(covered / 2)
      }),
    )
  })
})
