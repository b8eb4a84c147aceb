import { type KitSteps, printAt, STATIONS, type Station, stepsAt } from './stations.ts'

/** How one kit stands at one station: `changed` was ticked off by numbers that are others now. */
export type TickState = 'none' | 'open' | 'done' | 'changed'

/** How one kit stands at every station, in the order of the day. */
export interface KitProgress {
  readonly kit: number
  readonly states: Readonly<Record<Station, TickState>>
}

/** The print a kit was ticked off by at a station; undefined where nobody has. */
export type PrintTicked = (kit: number, station: Station) => number | undefined

/** How every kit stands; `printOf` makes a number of the text that the kit's steps are compared by. */
export const progressOf = (
  kits: readonly KitSteps[],
  ticked: PrintTicked,
  printOf: (text: string) => number,
): readonly KitProgress[] =>
  kits.map(({ kit, steps }) => {
    const stateAt = (station: Station): TickState => {
      if (stepsAt(steps, station).length === 0) return 'none'
      const print = ticked(kit, station)
      if (print === undefined) return 'open'
      return print === printOf(printAt(steps, station)) ? 'done' : 'changed'
    }
    const states = Object.fromEntries(STATIONS.map((station) => [station, stateAt(station)]))
    return { kit, states: states as Record<Station, TickState> }
  })

/** Work that nothing stands in the way of: a station, and the kits whose earlier stations are all done. */
export interface Ready {
  readonly station: Station
  readonly kits: readonly number[]
}

/** What to do next, station by station in the order of the day; nothing when all is done. */
export const readyOf = (progress: readonly KitProgress[]): readonly Ready[] =>
  STATIONS.map((station) => ({
    station,
    kits: progress.filter(({ states }) => firstLeft(states) === station).map(({ kit }) => kit),
  })).filter(({ kits }) => kits.length > 0)

const firstLeft = (states: KitProgress['states']): Station | undefined =>
  STATIONS.find((station) => states[station] === 'open' || states[station] === 'changed')

/** What of the kits' steps is still to do. */
export const stepsLeft = (kits: readonly KitSteps[], progress: readonly KitProgress[]): readonly KitSteps[] =>
  kits.map(({ kit, steps }, index) => {
    const states = progress[index]?.states
    const done = STATIONS.filter((station) => states?.[station] === 'done')
    const over = new Set(done.flatMap((station) => stepsAt(steps, station)))
    return { kit, steps: steps.filter((step) => !over.has(step)) }
  })
