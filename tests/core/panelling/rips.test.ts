import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, ZERO } from '../../../src/core/measure/length.ts'
import { ripSettings } from '../../../src/core/panelling/rips.ts'
import { countStrips } from '../../../src/core/panelling/strips.ts'
import { lengths } from './specs.ts'

describe('ripSettings', () => {
  it('walks the fence in by a strip and a kerf, and stops with a safe piece at the fence', () => {
    // 3 1/2 in board, 1/2 in strips, 1/8 in kerf: 2 7/8, 2 1/4, 1 5/8, and 1 in would be under 1 1/2.
    const found = ripSettings({
      board: inches(7, 2),
      strip: inches(1, 2),
      kerf: inches(1, 8),
      safe: inches(3, 2),
    })
    expect(found).toEqual({
      settings: [inches(23, 8), inches(9, 4), inches(13, 8)],
      count: 3,
      left: inches(13, 8),
    })
  })

  it('still cuts where the piece at the fence is just safe', () => {
    const asked = { board: inches(7, 2), strip: inches(1, 2), kerf: inches(1, 8) }
    expect(ripSettings({ ...asked, safe: inches(13, 8) }).count).toBe(3)
    expect(ripSettings({ ...asked, safe: (inches(13, 8) + 1) as Length }).count).toBe(2)
  })

  it('counts on no kerf for a blade of nothing, as a knife or shears would be', () => {
    const found = ripSettings({ board: inches(3), strip: inches(1), kerf: ZERO, safe: inches(1) })
    expect(found.settings).toEqual([inches(2), inches(1)])
  })

  it('makes no cut where none is safe or the sizes make no sense', () => {
    const asked = { board: inches(2), strip: inches(1), kerf: inches(1, 8), safe: inches(1) }
    expect(ripSettings(asked)).toEqual({ settings: [], count: 0, left: inches(2) })
    expect(ripSettings({ ...asked, strip: ZERO }).count).toBe(0)
    expect(ripSettings({ ...asked, board: ZERO }).count).toBe(0)
    expect(ripSettings({ ...asked, kerf: inches(-1, 8) }).count).toBe(0)
  })

  it('frees a strip of just the asked width at each cut, and no piece is ever thinner than is safe', () => {
    fc.assert(
      fc.property(
        lengths(20, 300),
        lengths(2, 40),
        lengths(1, 5),
        lengths(5, 60),
        (board, strip, kerf, safe) => {
          const { settings, count, left } = ripSettings({ board, strip, kerf, safe })
          let piece: number = board
          for (const setting of settings) {
            // The fence holds `setting` of the piece; past it go the kerf and what falls free.
            expect(piece - setting - kerf).toBe(strip)
            expect(setting).toBeGreaterThanOrEqual(safe)
            piece = setting
          }
          expect([count, left]).toEqual([settings.length, piece])
          expect(piece - strip - kerf).toBeLessThan(safe)
        },
      ),
    )
  })

  it('never takes more strips than the board holds, and all but the last when any width is safe', () => {
    fc.assert(
      fc.property(lengths(20, 300), lengths(2, 40), lengths(1, 5), (board, strip, kerf) => {
        const { count } = ripSettings({ board, strip, kerf, safe: ZERO })
        const whole = countStrips({ board, strip, kerf })
        if (whole.status === 'impossible') throw new Error('impossible')
        // With a piece left over after the last strip's cut that strip is freed too; else it is the piece at the fence.
        expect(count).toBe(whole.offcut > 0 || whole.count === 0 ? whole.count : whole.count - 1)
      }),
    )
  })
})
