import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Air, type DryingCalendar, dryingCalendar } from '../../../src/core/quantities/dryingCalendar.ts'
import type { Drying, DryingRules } from '../../../src/core/quantities/product.ts'
import { config } from '../../room.ts'

const RULES: DryingRules = { ratedAt: 21, doublesPer: 10, humid: 70, humidTimes: 1.5 }
const WARM: Air = { temperature: 21 }

const one = (hours: number) => ({ low: hours, high: hours })
const drying: Drying = { touch: one(1), recoat: one(4), handle: one(24), assemble: one(72), full: one(720) }

function timed(coats: number, air: Air, of: Drying = drying): DryingCalendar {
  const calendar = dryingCalendar({ drying: of }, coats, air, RULES)
  if (calendar.status !== 'timed') throw new Error(calendar.status)
  return calendar
}

const said = ({ events }: DryingCalendar): readonly (readonly [string, number])[] =>
  events.map(({ what, coat, hours }) => [what === 'coat' ? `coat ${coat}` : what, hours])

const shipped = (name: string) => {
  const product = config.finishes.find((each) => each.name === name)
  if (!product) throw new Error(name)
  return product
}

describe('published drying times, with the finishes as shipped', () => {
  it.each([
    // A paint maker's page for an exterior latex: touch 30 min, next coat 4 h in the warm and 24 h at 2 C.
    ['latex paint', 'touch', 0.5],
    ['latex paint', 'recoat', 4],
    // A paint maker's page for a stain-block latex primer.
    ['primer', 'touch', 0.5],
    ['primer', 'recoat', 1],
    // An oil polyurethane's data sheet.
    ['oil polyurethane', 'touch', 3],
    ['oil polyurethane', 'recoat', 6],
    ['oil polyurethane', 'full', 30 * 24],
    // Finish guides for water polyurethane: light use after 24 h, normal after 3 days.
    ['water polyurethane', 'recoat', 2],
    ['water polyurethane', 'handle', 24],
    ['water polyurethane', 'full', 72],
  ] as const)('%s: %s after %s h', (name, step, hours) => {
    const calendar = dryingCalendar(shipped(name), step === 'recoat' ? 2 : 1, WARM, config.drying)
    if (calendar.status !== 'timed') throw new Error(calendar.status)
    const found = calendar.events.find(({ what, coat }) => (step === 'recoat' ? coat === 2 : what === step))
    expect(found?.hours).toBeCloseTo(hours, 9)
    expect(found?.fromMemory).toBe(false)
  })

  it('slows a latex down as its maker does: 24 h to the next coat at 2 C', () => {
    const { cold, recoat } = shipped('latex paint').drying ?? {}
    const calendar = timed(2, { temperature: 2 }, { recoat, cold })
    expect(calendar.events.find(({ coat }) => coat === 2)?.hours).toBeCloseTo(24, 9)
    expect(calendar.byRule).toBe(false)
  })

  it.each([
    // The same pages: 50 to 90 F for the latex, 55 to 90 F and under 85 % humidity for the polyurethane.
    ['latex paint', { temperature: 9.9 }, 'too cold'],
    ['latex paint', { temperature: 10 }, 'timed'],
    ['latex paint', { temperature: 33 }, 'too hot'],
    ['oil polyurethane', { temperature: 12 }, 'too cold'],
    ['oil polyurethane', { temperature: 20, humidity: 85 }, 'too damp'],
    ['oil polyurethane', { temperature: 20, humidity: 84 }, 'timed'],
  ])('%s in air of %o is %s', (name, air, status) => {
    expect(dryingCalendar(shipped(name), 1, air, config.drying).status).toBe(status)
  })
})

describe('dryingCalendar', () => {
  it('begins each coat when the last takes it, and counts the rest from the last', () => {
    expect(said(timed(3, WARM))).toEqual([
      ['coat 1', 0],
      ['coat 2', 4],
      ['coat 3', 8],
      ['touch', 9],
      ['handle', 32],
      ['assemble', 80],
      ['full', 728],
    ])
  })

  it('doubles for every ten degrees colder, takes nothing off in the heat, and waits longer in damp air', () => {
    expect(timed(1, { temperature: 11 }).slower).toBeCloseTo(2, 9)
    expect(timed(1, { temperature: 1 }).slower).toBeCloseTo(4, 9)
    expect(timed(1, { temperature: 30 })).toMatchObject({ slower: 1, byRule: false })
    expect(timed(1, { temperature: 21, humidity: 69 }).slower).toBe(1)
    expect(timed(1, { temperature: 11, humidity: 70 })).toMatchObject({ slower: 3, byRule: true })
  })

  it('marks what no source gives, but not the first coat, which waits for nothing', () => {
    const { events } = timed(2, WARM, { ...drying, fromMemory: ['recoat', 'full'] })
    expect(events.filter(({ fromMemory }) => fromMemory).map(({ what, coat }) => [what, coat])).toEqual([
      ['coat', 2],
      ['full', 2],
    ])
  })

  it('leaves out what is not known, and knows nothing of a second coat without a recoat time', () => {
    expect(said(timed(1, WARM, { touch: one(2) }))).toEqual([
      ['coat 1', 0],
      ['touch', 2],
    ])
    expect(dryingCalendar({ drying: { touch: one(2) } }, 2, WARM, RULES).status).toBe('unknown')
    expect(dryingCalendar({}, 1, WARM, RULES).status).toBe('unknown')
  })

  it('never comes sooner for more coats, for colder or for damper air', () => {
    const air = fc.record({
      temperature: fc.integer({ min: -10, max: 45 }),
      humidity: fc.integer({ min: 0, max: 100 }),
    })
    fc.assert(
      fc.property(
        air,
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 0, max: 30 }),
        (now, coats, less) => {
          const end = (of: DryingCalendar) => of.events.at(-1)?.hours ?? 0
          const base = end(timed(coats, now))
          expect(end(timed(coats + 1, now))).toBeGreaterThan(base)
          expect(end(timed(coats, { ...now, temperature: now.temperature - less }))).toBeGreaterThanOrEqual(
            base,
          )
          expect(
            end(timed(coats, { ...now, humidity: Math.min(100, now.humidity + less) })),
          ).toBeGreaterThanOrEqual(base)
        },
      ),
    )
  })

  it.each([0, -1, 1.5, Number.NaN])('throws for %s coats', (coats) => {
    expect(() => dryingCalendar({ drying }, coats, WARM, RULES)).toThrow('coats must be 1 or more')
  })
})
