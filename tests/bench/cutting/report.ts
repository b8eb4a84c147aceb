import { stdout } from 'node:process'
import { layTable, median, showTime } from '../table.ts'
import type { Result } from './solve.ts'

const isReached = ({ instance, value }: Result): boolean =>
  instance.kind === 'most' ? value >= instance.known.best : value <= instance.known.best

const isBeaten = (result: Result): boolean => isReached(result) && result.value !== result.instance.known.best

/** How far from the best known: pieces or cents too many, or per cent of the value too few; 0 when reached. */
function gapOf({ instance, value }: Result): number {
  const { best } = instance.known
  if (instance.kind === 'most') return Math.max(0, (100 * (best - value)) / best)
  return Math.max(0, value - best)
}

/** What a published value contradicts: a bound past it, or an answer better than a proven optimum. */
export function contradictions({ instance, value, bound }: Result): string[] {
  const { known, kind } = instance
  const isPast = kind === 'most' ? bound < known.best - 1e-6 : bound > known.best + 1e-6
  const isTooGood = kind === 'most' ? value > known.bound : value < known.bound
  return [
    ...(isPast ? [`claims a bound of ${bound}, but ${known.best} has been reached`] : []),
    ...(isTooGood ? [`gives ${value}, past the published bound of ${known.bound}`] : []),
  ]
}

const groupOf = ({ instance }: Result): string => `${instance.set} ${instance.variant}`

const showGap = (results: readonly Result[]): string => {
  const sum = results.map(gapOf).reduce((total, gap) => total + gap, 0)
  const kinds = new Set(results.map(({ instance }) => instance.kind === 'most'))
  if (kinds.size > 1) return ''
  if (kinds.has(true)) return `${(sum / results.length).toFixed(3)} %`
  const best = results.reduce((total, { instance }) => total + instance.known.best, 0)
  return `${sum} of ${best}`
}

function describeSet(name: string, results: readonly Result[]): string[] {
  const times = results.map((result) => result.milliseconds)
  const reached = results.filter(isReached).length
  const knownProven = results.filter(({ instance }) => instance.known.proven).length
  return [
    name,
    `${reached}`,
    `${results.filter(isBeaten).length}`,
    `${results.filter((result) => result.proven).length}`,
    `${knownProven}`,
    `${results.length}`,
    showGap(results),
    showTime(median(times)),
    showTime(Math.max(...times)),
    `${results.filter((result) => result.faults.length === 0).length}`,
  ]
}

const HEADINGS = [
  'set',
  'at best',
  'beaten',
  'proven',
  'known',
  'total',
  'gap',
  'median',
  'worst',
  'verified',
]

function group(results: readonly Result[]): Map<string, Result[]> {
  const groups = new Map<string, Result[]>()
  for (const result of results) groups.set(groupOf(result), [...(groups.get(groupOf(result)) ?? []), result])
  return groups
}

function describeMisses(results: readonly Result[]): string {
  const missed = results.filter((result) => !isReached(result))
  if (missed.length === 0) return ''
  const shown = missed
    .slice(0, 12)
    .map(({ instance, value }) => `${instance.name} ${value}/${instance.known.best}`)
  const more = missed.length > shown.length ? ` and ${missed.length - shown.length} more` : ''
  return `  ${groupOf(missed[0]!)} missed: ${shown.join(', ')}${more}\n`
}

/** The table by set, the instances missed (answer/best known), and every fault. */
export function printReport(results: readonly Result[]): void {
  const groups = group(results)
  const rows = [...groups].map(([name, members]) => describeSet(name, members))
  stdout.write(`${layTable(HEADINGS, [...rows, describeSet('all', results).with(6, '')])}\n`)
  for (const members of groups.values()) stdout.write(describeMisses(members))
  for (const { instance, faults } of results)
    for (const fault of faults) stdout.write(`  FAULT ${instance.name} ${instance.variant}: ${fault}\n`)
}

/** One line of JSON for one instance. */
export function printLine({ instance, value, bound, proven, milliseconds, faults }: Result): void {
  const { name, set, variant } = instance
  const verified = faults.length === 0
  const line = { name, set, variant, value, bound, proven, milliseconds, verified }
  stdout.write(`${JSON.stringify(line)}\n`)
}
