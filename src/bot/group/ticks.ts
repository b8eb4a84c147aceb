import { z } from 'zod'
import { kitLabel } from '../../core/group/mergeParts.ts'
import { printAt, STATIONS, type Station, stepsAt } from '../../core/group/stations.ts'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import { choice, first, words, yes } from '../option.ts'
import { quoted, Refusal } from '../refusal.ts'
import { current, type Group, groupOf } from './group.ts'
import { kitNames, namesOf } from './groupReply.ts'
import { kitStepsOf } from './kitSteps.ts'
import { workKits } from './kits.ts'
import { progressReply } from './progress.ts'
import { numberOf } from './textNumber.ts'

type Tick = Group['done'][number]

/** What there is to tick off at a station: kits with the number of what they are there. */
type Prints = ReadonlyMap<number, number>

function printsAt(group: Group, station: Station, context: Context): Prints {
  const kits = kitStepsOf(workKits(group, context), context)
  return new Map(
    kits
      .filter(({ steps }) => stepsAt(steps, station).length > 0)
      .map(({ kit, steps }) => [kit, numberOf(printAt(steps, station))]),
  )
}

/** The kits that are meant. Throws a Refusal for one that is not there, or has nothing to do at this station. */
function meant(typed: string | undefined, group: Group, station: Station, prints: Prints, user: string) {
  if (typed?.trim().toLowerCase() === 'all') return [...prints.keys()]
  const numbers = typed === undefined ? ownKit(group, user) : numbersIn(typed)
  for (const number of numbers) {
    if (!group.members.some(({ kit }) => kit === number))
      throw new Refusal('invalid', `there is no ${kitLabel(number)} in this group`)
    if (!prints.has(number))
      throw new Refusal('invalid', `${kitLabel(number)} has nothing to ${station}, or has no place yet`)
  }
  return numbers
}

function ownKit({ members }: Group, user: string): readonly number[] {
  const own = members.find((member) => member.user === user)
  if (own) return [own.kit]
  throw new Refusal('invalid', 'which kit? Add its number, several, or all: kits=3-5')
}

/** `3`, `3-5`, `K03, 7`. Throws a Refusal where it is none of these. */
function numbersIn(typed: string): readonly number[] {
  const numbers = typed
    .trim()
    .split(/\s*,\s*|\s+(?![-–])(?<![-–]\s+)/u)
    .flatMap((part) => {
      const [, from, to = from] = /^k?(\d{1,5})(?:\s*[-–]\s*k?(\d{1,5}))?$/iu.exec(part) ?? []
      const [low, high] = [Number(from), Number(to)]
      return high - low >= 0 && high - low < 100
        ? Array.from({ length: high - low + 1 }, (_, index) => low + index)
        : [Number.NaN]
    })
  if (numbers.some(Number.isNaN))
    throw new Refusal(
      'invalid',
      `cannot read ${quoted(typed)} as kits; write their numbers, such as 3, 3-5 or all`,
    )
  return [...new Set(numbers)]
}

export const tick = defineAction({
  summary: 'Tick off what is done at a station, for your kit or any other',
  options: z.strictObject({
    station: first(choice('where', STATIONS)),
    kits: words('which kits, by their numbers, or all; your own where it is left out', '3-5').optional(),
    off: yes('it is not done after all').optional(),
  }),
  run: async ({ station, kits: typed, off = false }, context) => {
    const { user } = context.request
    const at = context.request.at.toISOString()
    let had: Group['done'] = []
    let numbers: readonly number[] = []
    const { after } = await groupOf(context).change((kept) => {
      const group = current(kept)
      const prints = printsAt(group, station, context)
      numbers = meant(typed, group, station, prints, user)
      const isSame = ({ kit, print }: Tick) => print === prints.get(kit)
      const isMeant = (each: Tick) => each.station === station && numbers.includes(each.kit)
      had = group.done.filter((each) => isMeant(each) && isSame(each))
      const rest = group.done.filter((each) => !isMeant(each))
      if (off) return { ...group, done: rest }
      const fresh = numbers.filter((kit) => !had.some((each) => each.kit === kit))
      const ticks = fresh.map((kit) => ({ kit, station, user, at, print: prints.get(kit) ?? 0 }))
      return { ...group, done: [...rest, ...had, ...ticks] }
    })
    return progressReply(after, context, await told({ station, numbers, off }, had, context))
  },
})

interface Told {
  readonly station: Station
  readonly numbers: readonly number[]
  readonly off: boolean
}

/** What was done, or who had done it before. */
async function told({ station, numbers, off }: Told, had: Group['done'], context: Context): Promise<string> {
  const what = `${station} ${kitNames(numbers)}`
  const [earlier] = had
  if (off) return `Open again: ${what}`
  if (!earlier || had.length < numbers.length || earlier.user === context.request.user) return `Done: ${what}`
  const names = await namesOf([earlier.user], context)
  return `${what} was ticked off already, by ${names.get(earlier.user)}`
}
