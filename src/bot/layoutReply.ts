import { showMoney } from '../core/measure/money.ts'
import type { Length } from '../core/measure/length.ts'
import { counted, labelled } from './cutListReply.ts'
import { isSheets, type LaidGroup, type LaidJob, takenOf } from './laidJob.ts'
import { costOf, gapOf, isOptimal, isPriced, sharing } from './layoutValue.ts'
import type { Cell, Table } from './reply.ts'

/** A first line longer than this is for reading in full; what is taken then stands in a table. */
const LONGEST_ANSWER = 160

/** The first line: how much to take, what it costs, and whether less would do. */
export function layoutAnswer(job: LaidJob, currency: string | undefined): string {
  const full = sentence(job, currency, true)
  return full.length <= LONGEST_ANSWER ? full : sentence(job, currency, false)
}

function sentence(job: LaidJob, currency: string | undefined, named: boolean): string {
  const taken = [say('sheet', job, named), say('board', job, named)].filter((said) => said !== '')
  const cost = costOf(job)
  const price = cost && cost.cost > 0 ? `, ${showMoney(cost.cost, currency)}` : ''
  return `Take ${taken.join(' and ')}${price}; ${proof(job)}`
}

/** `3 boards (2 of L1, 1 of L2)`; empty where none is taken. */
function say(what: 'sheet' | 'board', job: LaidJob, named: boolean): string {
  const names = namesOf(what, job)
  const count = [...names.values()].reduce((sum, each) => sum + each, 0)
  if (count === 0) return ''
  const which = [...names].map(([name, each]) => (names.size === 1 ? name : `${each} of ${name}`))
  return `${counted(count, what)}${named ? ` (${which.join(', ')})` : ''}`
}

/** How many are taken by name; the thickness is told where one name is sold in two. */
function namesOf(what: 'sheet' | 'board', { groups, show }: LaidJob): ReadonlyMap<string, number> {
  const own = groups.filter((laid) => isSheets(laid) === (what === 'sheet'))
  const names = new Map<string, number>()
  for (const laid of own)
    for (const [label, count] of takenOf(laid)) {
      const depth = thicknessOf(label, laid)
      const isTwofold = own.some((other) => takenOf(other).has(label) && thicknessOf(label, other) !== depth)
      const name = isTwofold ? `${label} ${show.length(depth, 'mark', true)}` : label
      names.set(name, (names.get(name) ?? 0) + count)
    }
  return names
}

const thicknessOf = (label: string, { group }: LaidGroup): Length =>
  group.stock.find((item) => item.label === label)?.thickness ?? group.thickness

/** What is to be taken from the rack, where the first line has no room for it. */
export function takeTable(job: LaidJob): readonly Table[] {
  if (layoutAnswer(job, undefined).includes('(')) return []
  const rows = (['sheet', 'board'] as const).flatMap((what) =>
    [...namesOf(what, job)].map(([name, count]): Cell[] => [count, what, name]),
  )
  return [{ title: 'Take', columns: ['No', '', 'Which'], rows }]
}

/** What was proven is the cost; only where all pieces are alike is it their number too. */
function proof(job: LaidJob): string {
  if (isOptimal(job)) return `proven, ${lessSaid(job)}`
  if (sharing(job).length > 0 && job.groups.every(({ optimal }) => optimal))
    return 'each kind of part proven by itself'
  const gap = gapOf(job)
  return gap > 0 ? `at most ${percent(gap)} over the proven least` : 'not proven to be the least'
}

function lessSaid(job: LaidJob): string {
  const kinds = job.groups.map(({ group }) => group.stock.filter(({ onHand }) => onHand === undefined))
  if (job.groups.every(({ value }) => value === 0)) return 'nothing has to be bought'
  if (job.groups.some(({ group }, index) => group.stock.length > (kinds[index]?.length ?? 0)))
    return 'buying less will not do'
  if (kinds.every(({ length }) => length === 1)) return 'fewer will not do'
  return isPriced(job) ? 'nothing costs less' : 'less wood will not do'
}

const percent = (part: number): string => `${Math.max(0.1, Math.ceil(part * 1000 - 1e-9) / 10)} %`

/** What is assumed and what to mind, one line each. */
export function jobNotes(job: LaidJob): readonly string[] {
  const waiting = job.parts.filter(({ later }) => later).map(({ label }) => label)
  const shared = sharing(job)
  return [
    ...(waiting.length > 0
      ? [
          `${labelled(waiting)}: laid out, but cut to fit on the day; keep ${waiting.length === 1 ? 'its piece' : 'their pieces'} whole till then`,
        ]
      : []),
    ...(shared.length > 0
      ? [
          'some kinds of part come from the same stock; each is laid out by itself, so look whether one piece serves two',
        ]
      : []),
    ...job.assumed.map((name) => `${name} assumed, for want of stock that suits (stock add)`),
  ]
}
