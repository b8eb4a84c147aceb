import { INCH, type Length, MILLIMETRE } from '../core/measure/length.ts'
import { showLength } from '../core/measure/show.ts'
import { boardNames } from '../core/stock/boards.ts'
import { materials, sheetLabels } from '../core/stock/sheets.ts'
import type { Region } from '../core/stock/stock.ts'
import { cutListSchema } from './cutList.ts'
import { readLine } from './line.ts'
import type { OptionRow } from './option.ts'
import type { Complete } from './platform.ts'
import { preferencesSchema, settle } from './preferences.ts'
import type { Reference } from './reference.ts'
import type { BotSettings } from './settings.ts'
import { shopStockSchema } from './shopStock.ts'
import type { Store } from './state.ts'
import type { Description, Use } from './usage.ts'

/** What completing needs of the outside. */
export interface CompleteParts {
  readonly store: Pick<Store, 'read' | 'history'>
  readonly commands: readonly Description[]
  readonly reference: Reference
  readonly settings: BotSettings
}

/** As many as a list of a chat service holds. */
const MOST = 25
/** Changes of each of the channel's documents in which values are looked for. */
const RECENT = 30

type Asked = Parameters<Complete>[0]
type Typing = Parameters<Complete>[1]

/**
 * What may be meant by the start of a value: labels of the channel's own lists, names of the tables as sold in the region,
 * and what was typed for such an option in the channel before, newest first. Empty where nothing is known; a kept document
 * that cannot be read counts as none.
 */
export function createComplete(parts: CompleteParts): Complete {
  return async (asked, typing) => {
    const option = optionOf(typing, parts.commands)
    if (!option) return []
    if (option.choices) return matching(typing.typed, option.choices)
    const [listed, recent] = await Promise.all([
      labelsFor(asked, typing, parts.store),
      recentValues(asked, option, parts),
    ])
    const named = namesFor(typing, option, await regionOf(asked, parts), parts)
    const example = option.example === undefined ? [] : [option.example]
    return matching(typing.typed, [...listed, ...recent, ...named, ...(named.length > 0 ? [] : example)])
  }
}

const optionOf = (
  { command, verb, option }: Typing,
  commands: readonly Description[],
): OptionRow | undefined =>
  commands
    .find(({ name }) => name === command)
    ?.uses.find((use) => use.verb === verb)
    ?.options.find(({ name }) => name === option)

/** Those that begin with what was typed, then those with it anywhere; none twice. */
function matching(typed: string, values: readonly string[]): readonly string[] {
  const start = typed.trim().toLowerCase()
  const has = values.filter((value) => value.toLowerCase().includes(start))
  const begins = has.filter((value) => value.toLowerCase().startsWith(start))
  return [...new Set([...begins, ...has])].slice(0, MOST)
}

/** The labels that the channel gave its parts or its stock, where one of them is asked for. */
async function labelsFor(
  asked: Asked,
  typing: Typing,
  store: CompleteParts['store'],
): Promise<readonly string[]> {
  const asksLabel = typing.option === 'label' && typing.verb !== 'add'
  const kind = asksLabel ? typing.command : ''
  if (kind === 'cutlist') {
    const list = cutListSchema.safeParse(await bodyOf(asked, kind, store))
    return list.data?.parts.map(({ label }) => label) ?? []
  }
  if (kind === 'stock') {
    const stock = shopStockSchema.safeParse(await bodyOf(asked, kind, store))
    return stock.data?.items.map(({ label }) => label) ?? []
  }
  return []
}

const keyOf = ({ place }: Asked, kind: string, id = place.channel) => ({
  kind,
  platform: place.platform,
  workspace: place.workspace,
  id,
})

const bodyOf = async (
  asked: Asked,
  kind: string,
  store: CompleteParts['store'],
  id?: string,
): Promise<unknown> => (await store.read(keyOf(asked, kind, id))).body

async function regionOf(asked: Asked, { store, settings }: CompleteParts): Promise<Region> {
  const [person, channel] = await Promise.all([
    bodyOf(asked, 'person', store, asked.user),
    bodyOf(asked, 'channel', store),
  ])
  const kept = (body: unknown) => preferencesSchema.safeParse(body).data ?? {}
  return settle(kept(person), kept(channel), settings).region
}

/** What a table calls the things that the option takes; empty for a kind that has no names. */
function namesFor(
  typing: Typing,
  option: OptionRow,
  region: Region,
  parts: CompleteParts,
): readonly string[] {
  const { reference, commands } = parts
  if (typing.command === 'help') return commands.map(({ name }) => name)
  switch (option.kind ?? option.type) {
    case 'board':
      return boardNames(region, reference.stock)
    case 'sheet':
      return sheetNames(region, reference)
    case 'species':
      return reference.species.map(({ name }) => name)
    case 'product':
      return reference.finishes.map(({ name }) => name)
    case 'adhesive':
      return reference.glue.adhesives.map(({ name }) => name)
    default:
      return []
  }
}

const sheetNames = (region: Region, { stock }: Reference): readonly string[] =>
  materials(region, stock).flatMap((material) =>
    sheetLabels(material, region, stock).map(({ label }) => `${labelWords(label)} ${material}`),
  )

/** In the units it is sold by: a whole mark of the finest tape is inches, anything else millimetres. */
const labelWords = (label: Length): string =>
  label % (INCH / 64) === 0
    ? showLength(label, { units: 'inch', tape: 64, millimetreStep: 1 })
    : `${label / MILLIMETRE}mm`

const KEPT = ['project', 'cutlist', 'stock'] as const

/** What lines of the channel's history say for an option of this name and kind, newest first. */
async function recentValues(
  asked: Asked,
  option: OptionRow,
  parts: CompleteParts,
): Promise<readonly string[]> {
  const histories = await Promise.all(KEPT.map((kind) => parts.store.history(keyOf(asked, kind), RECENT)))
  return histories
    .flat()
    .toSorted((a, b) => b.at.getTime() - a.at.getTime())
    .flatMap(({ command }) => valuesIn(command, option, parts.commands))
}

function valuesIn(line: string, option: OptionRow, commands: readonly Description[]): readonly string[] {
  const read = readLine(line)
  const description = commands.find(({ name }) => name === read.command)
  const [word = '', ...rest] = read.first.split(' ')
  const use: Use | undefined =
    description?.uses.find(({ verb }) => verb === word.toLowerCase()) ??
    description?.uses.find(({ verb }) => verb === undefined)
  if (!use) return []
  const first = use.options.find((row) => row.first)
  const said = use.verb === undefined ? read.first : rest.join(' ')
  const given = [...(first ? [[first.name, said] as const] : []), ...read.options]
  return given.flatMap(([name, value]) => {
    const row = use.options.find((each) => each.name === name)
    return row && value !== '' && isLike(row, option) ? [value] : []
  })
}

/** Of one name and one kind; a size is a size whatever it is called. */
const isLike = (one: OptionRow, other: OptionRow): boolean =>
  one.kind === other.kind && (one.name === other.name || ['size', 'sheet', 'board'].includes(one.kind ?? ''))
