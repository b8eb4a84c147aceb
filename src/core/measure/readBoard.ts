import { findBoard } from '../stock/boards.ts'
import { type Group, groupsOf } from './group.ts'
import { isWord, type Phrase } from './item.ts'
import type { Length } from './length.ts'
import { outside } from './measureOf.ts'
import type { Ambiguous, Invalid, ReadingSettings, UnitSystem } from './reading.ts'
import { phraseOrAnswer } from './refuseFirst.ts'
import { lengthOf, type Measured, resolveGroup, systemOf } from './resolve.ts'
import { type Stock, stockOf } from './stockPhrase.ts'
import { isBoardWord } from './stockWords.ts'
import { IN, MM } from './unit.ts'
import { couldBe, inSystemOf, invalid, quoted } from './wording.ts'

/** A board: its real section, and its length where one was given. */
export interface BoardRead {
  readonly status: 'read'
  readonly thickness: Length
  readonly width: Length
  readonly length?: Length | undefined
  /** Its name in the shop; undefined where the section was typed as measured. */
  readonly name?: string | undefined
  readonly count?: number | undefined
  readonly units: UnitSystem
  readonly note?: string | undefined
}

/**
 * A board by name (`2x6`, `2x6x8`, `140x45`, `2x6 8 footer`) or by its measured section (`1 1/2in x 5 1/2in`, `38x140`), with
 * its length in the third place. The note says what a name was taken as.
 */
export function readBoard(text: string, settings: ReadingSettings): BoardRead | Ambiguous | Invalid {
  const phrase = phraseOrAnswer(text, settings, 'a board')
  if ('status' in phrase) return phrase
  const stock = stockOf(phrase, settings)
  if (stock && stock.status !== 'read') return stock
  return (stock && named(stock)) ?? measured(phrase, settings)
}

function named({ parts, count }: Stock): BoardRead | undefined {
  const board = parts.find(({ is }) => is === 'board')
  if (!board || parts.some(({ is }) => is === 'sheet' || is === 'thickness')) return undefined
  const [thickness, width, third] = board.lengths
  const length = third ?? parts.find(({ is }) => is === 'length')?.lengths[0]
  if (!thickness || !width) return undefined
  return {
    status: 'read',
    thickness,
    width,
    ...(length && { length }),
    name: board.name,
    ...(count !== undefined && { count }),
    units: board.unit.system,
    note: board.note,
  }
}

/** A section typed with its units, or in bare mm: the size as measured. */
function measured(phrase: Phrase, settings: ReadingSettings): BoardRead | Ambiguous | Invalid {
  const groups = groupsOf(phrase.items)
  const [group] = groups
  const odd =
    group &&
    outside(phrase.items, group).find(
      (item) =>
        item.is !== 'mark' &&
        !(
          item.is === 'word' &&
          (isBoardWord(item.text) || /^(?:an?|the|by|measured|actual|real)$/u.test(item.text))
        ),
    )
  if (!group || odd || groups.length > 1 || group.terms.length < 2 || group.terms.length > 3)
    return invalid(
      `cannot read ${quoted(phrase.text)} as a board: it needs a thickness and a width; write 2x6, 38x140 or 1 1/2in x 5 1/2in`,
    )
  const unsure = nameOrSize(phrase, group, settings)
  if (unsure) return unsure
  const bareMetric = group.terms.every(({ amount }) => !amount.unit && amount.number.value.compare(13) >= 0)
  const units = bareMetric ? { ...settings, units: 'metric' as const } : settings
  const resolved = resolveGroup(group, { settings: units, evidence: [], expected: true, object: true })
  return resolved.status === 'read' ? section(resolved.measured) : resolved
}

/** `2" x 6"` may be the name or the size of rough wood; `2x9` is the name of nothing. */
function nameOrSize(
  { text, items }: Phrase,
  { terms }: Group,
  settings: ReadingSettings,
): Ambiguous | Invalid | undefined {
  const [first, second] = terms.map(({ amount }) => amount)
  if (!first || !second || items.some((item) => isWord(item, /^(?:measured|actual|real|rough|sawn)$/u)))
    return undefined
  const [a, b] = [first, second].map(({ number }) => number.value.toFraction())
  const whole = [first, second].every(
    ({ number }) => number.form === 'whole' && number.value.compare(12) <= 0,
  )
  const units = [first, second].map(({ unit }) => unit)
  const over = first.number.stroke?.under === '4' ? first.number.stroke.over : undefined
  const third = terms[2]?.amount
  if (over !== undefined && third && !third.unit && units.every((unit) => unit === undefined))
    return couldBe(
      text,
      [
        `${over}/4 x ${b}in x ${third.number.value.toFraction()}ft`,
        `${over}/4 x ${b}in x ${third.number.value.toFraction()}in`,
      ],
      'how long it is',
    )
  if (!whole) return undefined
  if (units.every((unit) => unit === undefined))
    return invalid(
      `cannot read ${quoted(text)} as a board: no board of that name is sold here; write 2x6, 38x140 or ${a}in x ${b}in`,
    )
  const name = findBoard(`${a}x${b}`, settings.region, settings.stock)
  return units.every((unit) => unit === undefined || unit === IN) && name
    ? couldBe(text, [`${a}x${b}`, `${a}in x ${b}in measured`], 'the name, or the real size')
    : undefined
}

function section(measures: readonly Measured[]): BoardRead | Invalid {
  const [first, second, third] = measures as readonly [Measured, Measured, Measured?]
  const [thin, wide] = first.size.compare(second.size) <= 0 ? [first, second] : [second, first]
  const units = systemOf(measures.map(({ unit }) => unit))
  const shown = [thin, wide].map(({ size }) => inSystemOf(size, units === 'inch' ? IN : MM)).join(' x ')
  return {
    status: 'read',
    thickness: lengthOf(thin.size),
    width: lengthOf(wide.size),
    ...(third && { length: lengthOf(third.size) }),
    units,
    note: `${shown} taken as measured`,
  }
}
