import type { Length } from '../core/measure/length.ts'
import { nanometres, ZERO } from '../core/measure/length.ts'
import { readMoney } from '../core/measure/money.ts'
import { readArea } from '../core/measure/readArea.ts'
import { readBoard } from '../core/measure/readBoard.ts'
import { readCount } from '../core/measure/readCount.ts'
import { readLength } from '../core/measure/readLength.ts'
import { readMeasure } from '../core/measure/readMeasure.ts'
import type { Ambiguous, Invalid, ReadingSettings, UnitSystem } from '../core/measure/reading.ts'
import { readPercent } from '../core/measure/readPercent.ts'
import { readSheet, type SheetRead } from '../core/measure/readSheet.ts'
import { readSize } from '../core/measure/readSize.ts'
import { readTemperature } from '../core/measure/readTemperature.ts'
import { readWeight } from '../core/measure/readWeight.ts'
import type { Species } from '../core/moisture/species.ts'
import type { Adhesive } from '../core/quantities/glueProduct.ts'
import type { FinishProduct } from '../core/quantities/product.ts'
import type { OptionRow } from './option.ts'
import { quoted } from './refusal.ts'
import { didYouMean, listed } from './suggest.ts'

/** A value as the command gets it, what was assumed in reading it, and the units it was typed in. */
export type ValueRead =
  | {
      readonly status: 'read'
      readonly value: unknown
      readonly note?: string | undefined
      readonly units?: UnitSystem | undefined
    }
  | Ambiguous
  | Invalid

/** What reading a value depends on: how measures are read, and the names in the tables. */
export interface KindSettings extends ReadingSettings {
  readonly finishes: readonly FinishProduct[]
  readonly species: readonly Species[]
  readonly adhesives: readonly Adhesive[]
}

/** How one kind of option is read from what a person typed. */
type Kind = (text: string, settings: KindSettings, option: OptionRow) => ValueRead

const lengthKind: Kind = (text, settings, option) => {
  if (option.zero && /^(0|none|no)\s*("|''|in|inch|inches|mm|cm)?$/iu.test(text))
    return { status: 'read', value: ZERO }
  const read = readLength(text, settings)
  return read.status === 'read' ? { ...read, value: read.length satisfies Length } : read
}

/** Both sides together when `total` is said, one side otherwise. */
const clearanceKind: Kind = (text, settings, option) => {
  const total = /\b(?:in\s+)?(?:total|overall|altogether|both sides(?: together)?)\b/iu
  const side = /\b(?:(?:per|each|every|a)\s+side|all\s+(?:a)?round)\b/iu
  const read = lengthKind(text.replace(total, '').replace(side, '').trim(), settings, option)
  if (read.status !== 'read' || !total.test(text)) return read
  return {
    ...read,
    value: nanometres((read.value as Length) / 2),
    note: 'clearance is half the total on each side',
  }
}

/** Wraps a reader whose whole result is the value. */
const whole =
  <Read extends { readonly status: 'read'; readonly note?: string | undefined }>(
    reader: (text: string, settings: KindSettings) => Read | Ambiguous | Invalid,
  ): Kind =>
  (text, settings) => {
    const read = reader(text, settings)
    if (read.status !== 'read') return read as Ambiguous | Invalid
    return { status: 'read', value: read, note: (read as Read).note, units: unitsOf(read) }
  }

/** What a label stands for is said by whoever reckons with it, as long as it holds. */
const sheetKind: Kind = (text, settings, option) => {
  const read = whole(readSheet)(text, settings, option)
  return read.status === 'read' && (read.value as SheetRead).label !== undefined
    ? { ...read, note: undefined }
    : read
}

const unitsOf = (read: object): UnitSystem | undefined =>
  'units' in read ? (read.units as UnitSystem | undefined) : undefined

const integer: Kind = (text, _settings, option) => {
  const zero = /^(0|none|no)$/iu.test(text)
  const read = zero ? { status: 'read' as const, count: 0 } : readCount(text)
  const { minimum = 0, maximum = 10_000 } = option
  return read.status === 'read' && read.count >= minimum && read.count <= maximum
    ? { status: 'read', value: read.count }
    : invalid(
        `${option.name}=${quoted(text)} is out of range; write a whole number from ${minimum} to ${maximum}`,
      )
}

const oneOf: Kind = (text, _settings, { name, choices = [] }) => {
  const word = text.toLowerCase()
  if (choices.includes(word)) return { status: 'read', value: word }
  const near = didYouMean(word, choices)
  return invalid(`${name}=${quoted(text)} is not one of ${listed(choices, 'or')}${near && `.${near}`}`)
}

const yesOrNo: Kind = (text, _settings, { name }) => {
  const word = text.toLowerCase()
  if (['yes', 'y', 'true', 'on', '1'].includes(word)) return { status: 'read', value: true }
  if (['no', 'n', 'false', 'off', '0'].includes(word)) return { status: 'read', value: false }
  return invalid(`${name}=${quoted(text)} is not one of yes or no`)
}

/** A row of a table that people ask for by name. */
interface Named {
  readonly name: string
  readonly alsoCalled: readonly string[]
}

/** Of a long table only so many names are offered. */
const OFFERED = 12

/** By name, by another name, or by the only name that has all the words typed. */
const named =
  (noun: string, tableOf: (settings: KindSettings) => readonly Named[]): Kind =>
  (text, settings) => {
    const words = text.toLowerCase().split(/\s+/u)
    const table = tableOf(settings)
    const names = table.flatMap((row) => [row.name, ...row.alsoCalled].map((name) => ({ name, row })))
    const exact = names.find(({ name }) => name.toLowerCase() === words.join(' '))
    const partly = new Set(
      names
        .filter(({ name }) => words.every((word) => name.toLowerCase().split(' ').includes(word)))
        .map(({ row }) => row),
    )
    const found = exact?.row ?? (partly.size === 1 ? [...partly][0] : undefined)
    if (found) return { status: 'read', value: found }
    const offered = (partly.size > 1 ? [...partly] : table).map(({ name }) => name)
    if (partly.size > 1)
      return {
        status: 'ambiguous',
        question: `${quoted(text)} could be ${listed(offered.slice(0, OFFERED), 'or')}; write one of them`,
      }
    const there =
      offered.length > OFFERED
        ? `write one such as ${listed(offered.slice(0, 3), 'or')}`
        : `there is ${listed(offered, 'and')}`
    return invalid(
      `there is no ${noun} ${quoted(text)}; ${there}.${didYouMean(
        text,
        names.map(({ name }) => name),
      )}`,
    )
  }

const money: Kind = (text, _settings, { name }) => {
  const value = readMoney(text)
  return value
    ? { status: 'read', value }
    : invalid(`cannot read ${quoted(text)} as ${name}; write an amount such as 42.50`)
}

const KINDS: Readonly<Record<string, Kind>> = {
  length: lengthKind,
  clearance: clearanceKind,
  size: whole(readSize),
  board: whole(readBoard),
  measure: whole(readMeasure),
  area: whole(readArea),
  money,
  product: named('finish', ({ finishes }) => finishes),
  species: named('wood', ({ species }) => species),
  adhesive: named('glue', ({ adhesives }) => adhesives),
  temperature: whole(readTemperature),
  percent: whole(readPercent),
  weight: whole(readWeight),
  sheet: sheetKind,
  integer,
  boolean: yesOrNo,
  string: (text) => ({ status: 'read', value: text }),
}

/** Reads what was typed for `option`; total. Throws a RangeError for an option of a kind that nobody reads. */
export function readValue(text: string, settings: KindSettings, option: OptionRow): ValueRead {
  if (option.choices) return oneOf(text, settings, option)
  const kind = KINDS[option.kind ?? option.type ?? 'string']
  if (!kind) throw new RangeError(`option ${option.name} has the kind ${option.kind}, which nobody reads`)
  return kind(text, settings, option)
}

const invalid = (problem: string): Invalid => ({ status: 'invalid', problem })
