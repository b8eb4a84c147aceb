import type { Amount } from './amount.ts'
import { boardChunk } from './boardChunk.ts'
import { withoutCount } from './count.ts'
import { amountOf, isMark, isWord, type Item, type Phrase, wordsOf } from './item.ts'
import { outOfRange } from './doubt.ts'
import type { Length } from './length.ts'
import type { Ambiguous, Invalid, LengthsRead, ReadingSettings } from './reading.ts'
import { lengthOf, systemOf } from './resolve.ts'
import { isWholeSheet, sheetChunk, splitSheet } from './sheetChunk.ts'
import type { Chunk, Part, StockContext } from './stockPart.ts'
import { isMaterial, thicknessOf } from './sheetThickness.ts'
import { isPanelWord, isStockWord } from './stockWords.ts'
import { MM } from './unit.ts'
import { couldBe, inUnit } from './wording.ts'
import Fraction from 'fraction.js'

/** The parts of a piece of stock, in the order typed, and how many pieces. */
export interface Stock {
  readonly status: 'read'
  readonly parts: readonly Part[]
  readonly count?: number | undefined
}

/**
 * A piece of named stock and nothing else: `2x6`, `2x4x92-5/8`, `1/2 ply`, `4x8 of 3/4`, `three 2x4x8`. Undefined where
 * other words make it a sentence or where nothing in it is the name of stock.
 */
export function stockOf(phrase: Phrase, settings: ReadingSettings): Stock | Ambiguous | Invalid | undefined {
  const halved = halfRipped(phrase, settings)
  if (halved) return halved
  const { items, count } = withoutCount(phrase.items)
  if (!items.every(mayStand)) return undefined
  const chunks = splitSheet(chunksOf(items), wordsOf(items), settings)
  if ('status' in chunks) return chunks
  const parts = partsOf({ words: wordsOf(items), chunks, settings, text: phrase.text })
  if (!parts || 'status' in parts) return parts
  return parts.some(({ is }) => is !== 'length') ? sized(parts, phrase.text, count) : undefined
}

/** Stock with every length within what can be built. */
function sized(parts: readonly Part[], text: string, count: number | undefined): Stock | Invalid {
  for (const length of parts.flatMap(({ lengths }) => lengths)) {
    const refusal = outOfRange(text, new Fraction(length))
    if (refusal) return refusal
  }
  return { status: 'read', parts, ...(count !== undefined && { count }) }
}

const mayStand = (item: Item): boolean =>
  item.is === 'amount' ||
  item.is === 'by' ||
  isMark(item, ',', '.', '-') ||
  (item.is === 'word' && isStockWord(item.text))

function partsOf(context: StockContext): readonly Part[] | Ambiguous | undefined {
  const parts: Part[] = []
  for (const [at] of context.chunks.entries()) {
    const part = partOf(context, at)
    if (!part || part.status === 'ambiguous') return part
    parts.push(part)
  }
  return parts
}

/** A piece of stock as lengths in the order typed, but for a board's length, which follows its section. */
export function lumberRead({ parts: said, count }: Stock): LengthsRead {
  const parts = lengthLast(said)
  const name = parts.find((part) => part.name !== undefined)?.name
  const notes = parts.flatMap(({ note }) => note ?? [])
  return {
    status: 'read',
    kind: 'lumber',
    lengths: parts.flatMap(({ lengths }) => lengths),
    units: systemOf(parts.map(({ unit }) => unit)),
    ...(name !== undefined && { name }),
    ...(count !== undefined && { count }),
    ...(notes.length > 0 && { note: notes.join('; ') }),
  }
}

/** `8ft 2x4` is the section and then the length, as `2x4x8` is. */
function lengthLast(parts: readonly Part[]): readonly Part[] {
  const [length, board] = parts
  return parts.length === 2 && length?.is === 'length' && board?.is === 'board' ? [board, length] : parts
}

function partOf(context: StockContext, at: number): Part | Ambiguous | undefined {
  const chunk = context.chunks[at] as Chunk
  if (chunk.amounts.length === 1) return singlePart(context, chunk)
  const panel =
    context.words.some(isPanelWord) ||
    context.chunks.some((other) => isThicknessBeside(other, chunk, context))
  return sheetChunk(context, chunk, panel) ?? (panel ? undefined : boardChunk(context, chunk))
}

/** `4x8 of 3/4`, `3/4 4x8`: a thickness alone makes the numbers beside it a sheet. */
function isThicknessBeside({ of, amounts }: Chunk, chunk: Chunk, { settings }: StockContext): boolean {
  const [thickness] = amounts
  const [first, second] = chunk.amounts
  if (amounts.length !== 1 || !thickness || !first || !second) return false
  return (
    of || (thickness.number.form === 'fraction' && !thickness.unit && isWholeSheet(first, second, settings))
  )
}

function singlePart(context: StockContext, chunk: Chunk): Part | Ambiguous | undefined {
  const { words, chunks, settings, text } = context
  const amount = chunk.amounts[0] as Amount
  const material = words.some(isMaterial) || (chunk.of && words.some(isPanelWord))
  const pieces = chunks.some(({ amounts }) => amounts.length > 1)
  const board = pieces && !material && !chunk.of && amount.size !== undefined
  if (board)
    return amount.size && amount.unit && !amount.doubt
      ? { status: 'read', lengths: [lengthOf(amount.size)], unit: amount.unit, is: 'length' }
      : undefined
  if (!material && !chunks.some((other) => isThicknessBeside(chunk, other, context))) return undefined
  const strange = strangeThickness(amount, words, text)
  if (strange !== undefined) return strange === 'none' ? undefined : strange
  const thickness = thicknessOf(amount, words, settings)
  const { actual, unit, note, material: name } = thickness
  return { status: 'read', lengths: [actual], unit, is: 'thickness', name, thickness, note }
}

/** A thickness that must be asked about, or `none` where the number is no thickness at all. */
function strangeThickness(
  amount: Amount,
  words: readonly string[],
  text: string,
): Ambiguous | 'none' | undefined {
  const { number, unit, size, doubt } = amount
  const plain = number.form === 'whole' && !unit
  if (doubt || amount.plural) return 'none'
  if (plain && words.some((word) => /^(?:ply|plies|plywood)$/u.test(word)))
    return couldBe(
      text,
      [`${inUnit(number.value, MM)} ply`],
      `${number.value.toFraction()} plies, or ${number.value.toFraction()} mm thick`,
    )
  if (plain && (number.value.compare(2) < 0 || number.value.compare(60) > 0)) return 'none'
  if (size && unit && (size.compare(MM.size.mul(100)) > 0 || unit.name === 'ft')) return 'none'
  return undefined
}

/** The numbers of a phrase that an x joins, each with the words up to the next. */
function chunksOf(items: readonly Item[]): readonly Chunk[] {
  const chunks: Chunk[] = []
  for (let at = 0; at < items.length; at += 1) {
    const amount = amountOf(items[at])
    if (!amount) continue
    const last = chunks.at(-1)
    const joined = last && items[at - 1]?.is === 'by'
    if (joined)
      chunks[chunks.length - 1] = {
        ...last,
        amounts: [...last.amounts, amount],
        tight: items[at - 1]?.gap === false,
      }
    else
      chunks.push({
        amounts: [amount],
        after: wordsOf(items.slice(at + 1)),
        of: isWord(items[at - 1], /^of$/u),
        tight: false,
      })
  }
  return chunks
}

/** `half a 2x4, ripped`, `2x6 ripped in half`: the width of each half once the blade has passed. */
function halfRipped({ items, text }: Phrase, settings: ReadingSettings): Stock | Ambiguous | undefined {
  const words = wordsOf(items)
  const amounts = items.flatMap((item) => amountOf(item) ?? [])
  const halves = amounts.filter(
    ({ number }) => number.form === 'fraction' && number.spoken && number.value.equals(0.5),
  )
  const rest = amounts.filter((amount) => !halves.includes(amount))
  if (
    halves.length !== 1 ||
    rest.length !== 2 ||
    !words.every((word) => /^(?:an?|ripped|rip|split|in|into|the|of|lengthwise|board)$/u.test(word))
  )
    return undefined
  const board = boardChunk(
    { words: [], chunks: [], settings, text },
    { amounts: rest, after: [], of: false, tight: true },
  )
  if (!board || board.status === 'ambiguous') return board
  const [thickness, width] = board.lengths as readonly [Length, Length]
  const name = board.name ?? ''
  if (!words.some((word) => /^(?:ripped|rip|split|lengthwise)$/u.test(word)))
    return couldBe(text, [`half a ${name}, ripped`, name], 'half its width, or half its length')
  const each = Math.round((width - settings.kerf) / 2) as Length
  const note = `half of ${name}, ripped: ${board.note ?? ''}, less one kerf`
  return { status: 'read', parts: [{ ...board, lengths: [thickness, each], note }] }
}
