import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  headsFor,
  type KitSteps,
  printAt,
  STATIONS,
  type Station,
  stationsOf,
  stepsAt,
} from '../../../src/core/group/stations.ts'
import { progressOf, readyOf, stepsLeft } from '../../../src/core/group/ticks.ts'
import { inches } from '../../../src/core/measure/length.ts'
import { minutesOf } from '../../../src/core/steps/times.ts'
import { config } from '../../room.ts'
import { stepsOf } from '../steps/grid.ts'

const { times } = config

/** Kits that differ in height, grooves and cord notch. */
const kits: fc.Arbitrary<readonly KitSteps[]> = fc
  .array(
    fc.record({
      height: fc.constantFrom(inches(12), inches(15), inches(16)),
      grooves: fc.constantFrom(0, 2),
      cord: fc.boolean(),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((all) =>
    all.map(({ height, grooves, cord }, index) => ({
      kit: index + 1,
      steps: stepsOf({
        height,
        grooves,
        ...(cord && { cord: { face: 'side' as const, width: inches(1), height: inches(1) } }),
      }),
    })),
  )

const sum = (numbers: readonly number[]): number => numbers.reduce((all, each) => all + each, 0)

/** A number for a text that is another for another text here. */
const lengthOf = (text: string): number =>
  [...text].reduce((all, each) => (all * 31 + (each.codePointAt(0) ?? 0)) % 2 ** 31, 7)

describe('stations', () => {
  it('have every step of every kit, at one station each', () => {
    fc.assert(
      fc.property(kits, (all) => {
        const placed = stationsOf(all, times).flatMap(({ steps }) => steps)
        const steps = all.flatMap((each) => each.steps)
        expect(placed).toHaveLength(steps.length)
        expect(new Set(placed)).toEqual(new Set(steps))
      }),
    )
  })

  it('take no longer together than the kits one by one, and as long as one kit alone but for settings it shares with itself', () => {
    fc.assert(
      fc.property(kits, (all) => {
        const together = sum(stationsOf(all, times).map(({ minutes }) => minutes))
        const apart = sum(all.map((each) => sum(stationsOf([each], times).map(({ minutes }) => minutes))))
        const stepByStep = sum(all.flatMap(({ steps }) => steps.map((step) => minutesOf(step, times))))
        expect(together).toBeLessThanOrEqual(apart)
        expect(apart).toBeLessThanOrEqual(stepByStep)
      }),
    )
  })

  it('set a saw once for all kits that are alike, and each kit by itself at the bench', () => {
    const one = [{ kit: 1, steps: stepsOf() }]
    const three = [1, 2, 3].map((kit) => ({ kit, steps: stepsOf() }))
    for (const [index, work] of stationsOf(three, times).entries()) {
      const alone = stationsOf(one, times)[index]
      expect(work.settings, work.station).toBe(alone?.settings)
      expect(work.pieces).toBe(3 * (alone?.pieces ?? 0))
      if (!work.powered) expect(work.minutes).toBe(3 * (alone?.minutes ?? 0))
      else expect(work.minutes).toBeLessThan(3 * (alone?.minutes ?? 0))
    }
  })

  it('take more people for a shorter day', () => {
    const work = stationsOf(
      [1, 2, 3].map((kit) => ({ kit, steps: stepsOf() })),
      times,
    )
    const minutes = (powered: boolean) =>
      sum(work.filter((each) => each.powered === powered).map((each) => each.minutes))
    for (const day of [60, 240, 480])
      expect(headsFor(work, day)).toEqual({
        operators: Math.ceil(minutes(true) / day),
        hands: Math.ceil(minutes(false) / day),
      })
    expect(headsFor([], 60)).toEqual({ operators: 0, hands: 0 })
  })
})

describe('ticks', () => {
  const at = (ticks: ReadonlySet<string>, all: readonly KitSteps[]) =>
    progressOf(
      all,
      (kit, station) =>
        ticks.has(`${kit} ${station}`)
          ? lengthOf(printAt(all.find((each) => each.kit === kit)?.steps ?? [], station))
          : undefined,
      lengthOf,
    )

  it('lead through the day station by station until nothing is left', () => {
    fc.assert(
      fc.property(kits, (all) => {
        const ticks = new Set<string>()
        let last = Number.POSITIVE_INFINITY
        for (let ready = readyOf(at(ticks, all)); ready.length > 0; ready = readyOf(at(ticks, all))) {
          const left = sum(stationsOf(stepsLeft(all, at(ticks, all)), times).map(({ minutes }) => minutes))
          expect(left).toBeLessThan(last)
          last = left
          const [next] = ready
          for (const kit of next?.kits ?? []) ticks.add(`${kit} ${next?.station}`)
        }
        const done = sum(
          all.map(({ steps }) => STATIONS.filter((station) => stepsAt(steps, station).length > 0).length),
        )
        expect(ticks.size).toBe(done)
        expect(stationsOf(stepsLeft(all, at(ticks, all)), times)).toEqual([])
      }),
    )
  })

  it('are flagged where the numbers have changed since, and nowhere else', () => {
    const before = stepsOf({ height: inches(15) })
    const after = stepsOf({ height: inches(16) })
    const [progress] = progressOf(
      [{ kit: 1, steps: after }],
      (_kit, station) => lengthOf(printAt(before, station)),
      lengthOf,
    )
    const changed = (station: Station) => printAt(before, station) !== printAt(after, station)
    expect(progress?.states).toMatchObject({ 'break down': 'changed', rip: 'done', groove: 'none' })
    for (const station of STATIONS)
      if (stepsAt(after, station).length > 0)
        expect(progress?.states[station], station).toBe(changed(station) ? 'changed' : 'done')
  })
})
