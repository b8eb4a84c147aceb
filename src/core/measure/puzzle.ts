import { amountOf, amountsOf, isMark, isWord, type Phrase, plainOf, wordsOf } from './item.ts'
import type { Ambiguous } from './reading.ts'
import { IN, MM } from './unit.ts'
import { ambiguous, couldBe, inUnit, quoted, typed } from './wording.ts'

type Puzzle = (phrase: Phrase) => Ambiguous | undefined

/** Forms that each have two honest readings, whatever unit a person has settled on. */
const PUZZLES: readonly Puzzle[] = [bullet, mils, sixteenths, list]

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
    amountOf(third)
  if (!dash && !numbered) return undefined
  const rest = text.trim().replace(/^\s*(?:[^\w\s]|\d+[.)])\s*/u, '')
  return ambiguous(`${quoted(text)} could be an entry of a list or a number with a sign; write ${rest}`)
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
  const words = wordsOf(items)
  const [part] = amountsOf(items)
  const plain = /^\S+(?: \S+)? (?:of )?(?:an? )?(?:sheets?)$/u.test(plainOf(items))
  if (
    !plain ||
    !part ||
    part.unit ||
    part.number.form !== 'fraction' ||
    !words.some((word) => /^sheets?$/u.test(word))
  )
    return undefined
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
