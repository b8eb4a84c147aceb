import type { Amount } from './amount.ts'
import { amountOf, amountsOf, isMark, isWord, type Phrase } from './item.ts'
import { countIn, withoutCount } from './count.ts'
import type { Ambiguous } from './reading.ts'
import { IN, M, MM, type Unit } from './unit.ts'
import { ambiguous, couldBe, inUnit, listed, quoted, typed } from './wording.ts'

type Puzzle = (phrase: Phrase) => Ambiguous | undefined

/** Forms that each have two honest readings, whatever unit a person has settled on. */
const PUZZLES: readonly Puzzle[] = [
  bullet,
  mils,
  sixteenths,
  list,
  looseDash,
  dashed,
  timesOrSide,
  partOfNothing,
]

/** Forms that are puzzles only while anything but a length may be meant. */
const OPEN_PUZZLES: readonly Puzzle[] = [...PUZZLES, doorCode, partSheet]

/**
 * The question to ask about a form of which both readings are in use: `2068`, `18 mil`, `4 and 8`, `- 2x4x8`. `expected`
 * says that one length or one size is wanted, which settles what no length can be.
 */
export function puzzleOf(phrase: Phrase, expected = false): Ambiguous | undefined {
  for (const puzzle of expected ? PUZZLES : OPEN_PUZZLES) {
    const question = puzzle(phrase)
    if (question) return question
  }
  return undefined
}

/** `- 2x4x8`, `1. 24 x 36in`: the sign of a list, or part of the measure. */
function bullet({ text, items }: Phrase): Ambiguous | undefined {
  const [first, second, third] = items
  const dash = isMark(first, '-') && second?.gap
  const numbered =
    amountOf(first)?.number.form === 'whole' &&
    !amountOf(first)?.unit &&
    isMark(second, '.', ')') &&
    !second?.gap &&
    third?.gap &&
    amountOf(third) &&
    (items.length > 3 || amountOf(third)?.unit)
  if (!dash && !numbered) return undefined
  const rest = text.trim().replace(/^\s*(?:[^\w\s]|\d+[.)])\s*/u, '')
  if (dash)
    return ambiguous(
      `${quoted(text)} could be ${rest} as an entry of a list, or a negative number, which no measure is; write ${rest}`,
    )
  const joined = isMark(second, '.') && items.length === 3 && /^\d+(?:[a-z]+|["'])?$/u.test(rest)
  return ambiguous(
    `${quoted(text)} could be ${rest} as entry ${first?.text} of a list, or ${joined ? `${first?.text}.${rest}` : 'two numbers'}; write ${listed(joined ? [rest, `${first?.text}.${rest}`] : [rest])}`,
  )
}

/** `2068`: a door of 2 ft 0 by 6 ft 8, or mm. */
function doorCode({ text, items }: Phrase): Ambiguous | undefined {
  const [item] = items
  const door =
    items.length === 1 && amountOf(item)?.number.form === 'whole'
      ? /^([1-9])(\d)([678])([0-9])$/u.exec(item?.text ?? '')
      : null
  if (!door || !/^(?:66|68|70|80|610)$/u.test(`${door[3]}${door[4]}`)) return undefined
  return couldBe(
    text,
    [`${door[1]}ft ${door[2]}in x ${door[3]}ft ${door[4]}in`, `${item?.text}mm`],
    'a door code or mm',
  )
}

/** `18 mil`: mm in the UK and Australia, thousandths of an inch elsewhere. */
function mils({ text, items }: Phrase): Ambiguous | undefined {
  const at = items.findIndex((item) => isWord(item, /^(?:mil|mils|mill|mills)$/u))
  const amount = amountOf(items[at - 1])
  if (!amount || amount.unit) return undefined
  const { value } = amount.number
  return couldBe(text, [inUnit(value, MM), `${value.toString()}thou`], 'mil is said for mm and for 1/1000 in')
}

/** `4 and 8`: 4 in and 8 sixteenths, or two numbers. */
function sixteenths({ text, items }: Phrase): Ambiguous | undefined {
  const [first, and, second] = items
  const [whole, part] = [amountOf(first), amountOf(second)]
  if (
    items.length !== 3 ||
    !whole ||
    !part ||
    whole.unit ||
    part.unit ||
    !(isWord(and, /^and$/u) || isMark(and, '&'))
  )
    return undefined
  if (whole.number.form !== 'whole' || part.number.form !== 'whole' || part.number.value.compare(16) >= 0)
    return undefined
  return couldBe(
    text,
    [
      inUnit(whole.number.value.add(part.number.value.div(16)), IN),
      `${typed(whole.number.value)}in x ${typed(part.number.value)}in`,
    ],
    'sixteenths, or two numbers',
  )
}

/** `24,36`, `24, 36`, `24 in and 36 in`: one number, or a list. */
function list({ text, items }: Phrase): Ambiguous | undefined {
  const amounts = amountsOf(items)
  const [first] = amounts
  if (items.length === 1 && first?.number.comma && !first.unit) {
    const sides = text.trim().split(',')
    return couldBe(
      text,
      first.number.comma === 'three'
        ? [`${sides.join('')}mm`, `${sides.join('.')}in`, `${sides.join('.')}mm`]
        : [`${sides.join('.')}in`, `${sides.join('.')}mm`, `${sides[0]}in x ${sides[1]}in`],
    )
  }
  const joined = items.every(
    (item) => item.is === 'amount' || isMark(item, ',', ';') || isWord(item, /^and$/u),
  )
  if (amounts.length < 2 || !joined || !items.some((item) => item.is !== 'amount')) return undefined
  const sides = amounts.map(({ text: typedText, unit }) => (unit ? typedText : `${typedText}in`))
  return ambiguous(
    `${quoted(text)} could be a size or a list of lengths; write ${sides.slice(0, 3).join(' x ')} for a size, or one length, such as ${sides[0]}`,
  )
}

/** `half sheet`, `3/4 sheet`: part of a sheet, or its thickness. */
function partSheet({ text, items }: Phrase): Ambiguous | undefined {
  const [part] = amountsOf(items)
  const [first, ...rest] = items
  const sheet = rest.findIndex((item) => isWord(item, /^sheets?$/u))
  const filler = rest.slice(0, Math.max(0, sheet)).every((item) => isWord(item, /^(?:of|an?|the)$/u))
  if (!part || amountOf(first) !== part || sheet < 0 || !filler) return undefined
  if (part.unit || part.number.form !== 'fraction') return undefined
  if (part.number.value.equals(0.5))
    return couldBe(text, ['4ft x 4ft', '2ft x 8ft', '1/2in'], 'half a sheet either way, or a thickness')
  if (part.number.value.equals(0.25))
    return couldBe(text, ['2ft x 4ft', '1ft x 8ft', '1/4in'], 'a quarter of a sheet, or a thickness')
  return couldBe(
    text,
    [`${part.number.value.toFraction()} ply`, '4ft x 6ft'],
    'a thickness, or a part of a sheet',
  )
}

/** `10-6`, `24-36`, `2-6 x 6-8`: feet and inches as on a drawing, a range, a size or a sum. */
function dashed({ text, items }: Phrase): Ambiguous | undefined {
  const pairs = items.flatMap((item, at) =>
    isMark(item, '-') ? [[items[at - 1], items[at + 1]] as const] : [],
  )
  const amounts = amountsOf(items)
  const shape = items.every((item) => item.is === 'amount' || item.is === 'by' || isMark(item, '-'))
  const plain = amounts.every(({ unit, number }) => !unit && number.form === 'whole')
  if (!shape || !plain || pairs.length === 0 || amounts.length !== pairs.length * 2) return undefined
  const sides = pairs.map((pair) => pair.map((item) => amountOf(item)?.text ?? ''))
  const feet = sides.every(([, inches]) => Number(inches) < 12)
  const drawn = sides.map(([whole, part]) => `${whole}ft ${part}in`).join(' x ')
  const [first = '', second = ''] = sides[0] ?? []
  const single = sides.length === 1 && Number(second) > 0
  const size = single ? [`${first}in x ${second}in`, ...(feet ? [] : [`${first}in`, `${second}in`])] : []
  return couldBe(
    text,
    [...(feet ? [drawn] : []), ...size],
    feet ? 'feet and inches, a range or a sum' : 'a size, or a range from one to the other',
  )
}

/** `half` or `quarter` alone: part of what is not said. */
function partOfNothing({ text, items }: Phrase): Ambiguous | undefined {
  const amount = items.length === 1 ? amountOf(items[0]) : undefined
  if (!amount || !/^(?:half|quarter|third)$/u.test(amount.text)) return undefined
  return couldBe(text, [inUnit(amount.number.value, IN)], 'part of what is not said')
}

/** `1 -1/2`, `24"-1/8"`: a fraction after a dash that is neither tight nor set apart by spaces. */
function looseDash({ text, items }: Phrase): Ambiguous | undefined {
  const [whole, part] = [amountOf(items[0]), amountOf(items[2])]
  if (items.length !== 3 || !isMark(items[1], '-') || !whole || !part || whole.compound) return undefined
  const apart = items[1]?.gap && (items[2]?.gap || whole.unit)
  if (
    apart ||
    whole.number.form !== 'whole' ||
    part.number.form !== 'fraction' ||
    (whole.unit ?? IN) !== (part.unit ?? IN)
  )
    return undefined
  const both = [whole.number.value.add(part.number.value), whole.number.value.sub(part.number.value)]
  return couldBe(
    text,
    both.map((value) => inUnit(value, whole.unit ?? part.unit ?? IN)),
    'the dash may join or take away',
  )
}

/** A number that is an inch size as it stands: it has a unit, or a fraction. */
const isSized = (amount: Amount | undefined): boolean =>
  amount !== undefined && (amount.size !== undefined || ['fraction', 'mixed'].includes(amount.number.form))

/** The third side of a sheet in metres is its thickness, in mm. */
const sideUnit = (unit: Unit = IN): string => (unit === M ? MM : unit).name

/** `3x 24in`, `3x 23 7/8`, `24 x 36in x3`: a count, or one more side. */
function timesOrSide({ text, items }: Phrase): Ambiguous | undefined {
  const count = countIn(amountOf(items[0]))
  const first =
    items.length > 2 && items[1]?.is === 'by' && items[1].text === 'x' && !items[1].gap && items[2]?.gap
  if (
    first &&
    count !== undefined &&
    isSized(amountOf(items[2])) &&
    withoutCount(items).count === undefined &&
    !items[3]
  )
    return couldBe(
      text,
      [`${count} @ ${items[2]?.text}`, `${count}in x ${items[2]?.text}`],
      'a count or a side',
    )
  const [before, by, last] = items.slice(-3)
  const times = countIn(amountOf(last))
  const own = items.slice(0, -2).filter((item) => amountOf(item)?.unit).length
  const loose = by?.is === 'by' && amountOf(before)?.size !== undefined && ((by.gap && !last?.gap) || own > 1)
  if (!loose || times === undefined) return undefined
  const size = items
    .slice(0, -2)
    .map((item) => item.text)
    .join(' ')
  return couldBe(
    text,
    [`${size} (x${times})`, `${size} x ${times}${sideUnit(amountOf(before)?.unit)}`],
    'a count or a side',
  )
}
