import { groupsOf, type Term } from './group.ts'
import type { Phrase } from './item.ts'
import { wordsOf } from './item.ts'
import type { Length } from './length.ts'
import { outside } from './measureOf.ts'
import type { Ambiguous, Invalid, ReadingSettings, UnitSystem } from './reading.ts'
import { phraseOrAnswer } from './refuseFirst.ts'
import { impliesInch, lengthOf, resolveGroup, systemOf } from './resolve.ts'
import { thicknessOf } from './sheetThickness.ts'
import { type Stock, stockOf } from './stockPhrase.ts'
import { MM } from './unit.ts'
import { couldBe, inMillimetres, inSystemOf, invalid, quoted } from './wording.ts'

/** A sheet: the thickness to reckon with, and its size where one was given. */
export interface SheetRead {
  readonly status: 'read'
  readonly thickness: Length
  /** The thickness was typed alone, as measured; otherwise it comes from the label. */
  readonly measured: boolean
  readonly material?: string | undefined
  readonly label?: Length | undefined
  readonly length?: Length | undefined
  readonly width?: Length | undefined
  readonly units: UnitSystem
  readonly note?: string | undefined
}

/** The thickest sheet that is sold: 100 mm. */
const THICKEST = MM.size.mul(100)

/**
 * A sheet by its label (`1/2 ply` is 15/32 in in the US, `18mm birch ply`, `4x8 of 3/4`) or by its measured thickness alone
 * (`12mm`, `15/32in`, `0.47in`), which beats any label. A bare `1/2` may be either and is asked about.
 */
export function readSheet(text: string, settings: ReadingSettings): SheetRead | Ambiguous | Invalid {
  const phrase = phraseOrAnswer(text, settings, 'a sheet')
  if ('status' in phrase) return phrase
  const stock = stockOf(phrase, settings)
  if (stock && stock.status !== 'read') return stock
  return (stock && labelled(stock)) ?? measured(phrase, settings)
}

function labelled({ parts }: Stock): SheetRead | undefined {
  const sheet = parts.find(({ is }) => is === 'sheet')
  const thickness = parts.find((part) => part.thickness)?.thickness
  if (!thickness || parts.some(({ is }) => is === 'board' || is === 'length')) return undefined
  const [first, second] = [...(sheet?.lengths.slice(0, 2) ?? [])].sort((a, b) => b - a)
  const notes = parts.flatMap(({ note }) => note ?? [])
  return {
    status: 'read',
    thickness: thickness.actual,
    measured: thickness.found === undefined && thickness.decimal,
    ...(thickness.material !== undefined && { material: thickness.material }),
    label: thickness.label,
    ...(first && second && { length: first, width: second }),
    units: thickness.unit.system,
    ...(notes.length > 0 && { note: notes.join('; ') }),
  }
}

function measured(phrase: Phrase, settings: ReadingSettings): SheetRead | Ambiguous | Invalid {
  const groups = groupsOf(phrase.items)
  const [group] = groups
  const [term] = group?.terms ?? []
  const others = group
    ? wordsOf(outside(phrase.items, group)).filter(
        (word) => !/^(?:an?|the|thick|measured|sheet|actual|of)$/u.test(word),
      )
    : []
  if (!group || !term || groups.length > 1 || group.terms.length > 1 || others.length > 0)
    return invalid(
      `cannot read ${quoted(phrase.text)} as a sheet: it needs one thickness; write 1/2 ply, 18mm birch ply or 12mm`,
    )
  const asked = labelOrMeasured(phrase, term, settings)
  if (asked) return asked
  const resolved = resolveGroup(group, {
    settings: bareMetric(term) ? { ...settings, units: 'metric' } : settings,
    evidence: [],
    expected: true,
    object: false,
  })
  if (resolved.status !== 'read') return resolved
  const { size, unit } = resolved.measured[0] as { size: typeof THICKEST; unit: typeof MM }
  if (size.compare(THICKEST) > 0)
    return invalid(
      `cannot read ${quoted(phrase.text)} as a sheet: ${inMillimetres(size)} is thicker than any; write 1/2 ply or 12mm`,
    )
  const note = term.amount.unit
    ? undefined
    : `${term.amount.text} read as ${inSystemOf(size, unit)}, as measured`
  return {
    status: 'read',
    thickness: lengthOf(size),
    measured: true,
    units: systemOf([unit]),
    ...(note !== undefined && { note }),
  }
}

/** A bare whole number from 3 is mm: no sheet is 3 in thick. */
const bareMetric = ({ amount }: Term): boolean =>
  !amount.unit && !impliesInch(amount) && amount.number.value.compare(3) >= 0

/** A bare `1/2` may be the label, which is thinner as made, or a measured half inch. */
function labelOrMeasured(phrase: Phrase, { amount }: Term, settings: ReadingSettings): Ambiguous | undefined {
  if (amount.unit || amount.number.form === 'decimal' || !impliesInch(amount)) return undefined
  const { actual, label } = thicknessOf(amount, [], settings)
  return actual === label
    ? undefined
    : couldBe(phrase.text, [`${amount.text} ply`, `${amount.text}in`], 'the label, or the thickness measured')
}
