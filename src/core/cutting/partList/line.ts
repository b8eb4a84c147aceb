import type { ReadingSettings } from '../../measure/reading.ts'
import type { Chunk, Split } from './chunk.ts'
import { splitLine } from './chunk.ts'
import { takeCount } from './count.ts'
import type { LineRead } from './listedPart.ts'
import { problemOf } from './listedPart.ts'
import type { NoSides, Sides } from './sizes.ts'
import { readSides } from './sizes.ts'
import { boardTokens, materialWords } from './words.ts'

/** `- `, `* `, `1. `, `2) `: how a list is bulleted. */
const BULLET = /^\s*(?:[-*+•–—·▪◦]\s+|\d{1,3}[.)]\s+|\[[ x]?\]\s+)/u

/** `Shelf 2 24 x 18`: a number before a size might be part of the name or a count. */
const isDoubtful = (split: Split): boolean =>
  split.label !== '' && /^\d+\s+\d+(?![\d]*\s*\/)/u.test(split.chunks[0]?.text ?? '')

/** `8 screws`: one bare number and words after it. */
const isBareBeforeWords = ({ chunks, after }: Split): boolean =>
  after !== '' && chunks.length === 1 && /^\d+$/u.test(chunks[0]!.text)

/** `x4` that is left over where a size ends. */
const LOOSE = /(?:^|\s)([x×*](\d+))(?=\s|$)/iu

const joinWords = (...words: readonly (string | undefined)[]): string | undefined =>
  words.filter(Boolean).join(', ') || undefined

/** The chunk with the size, and the one with the thickness where that stands by itself. */
function pickChunks(chunks: readonly Chunk[]): { size: string; thickness?: string } | undefined {
  if (chunks.length === 1) return { size: chunks[0]!.text }
  if (chunks.length === 3 && chunks.every(({ stock }, at) => at === 2 || !stock))
    return { size: `${chunks[0]!.text} x ${chunks[1]!.text}`, thickness: chunks[2]!.text }
  if (chunks.length !== 2) return undefined
  const [first, second] = chunks as [Chunk, Chunk]
  const isSize = (text: string): boolean => /[x×*]|\bby\b/iu.test(text)
  if (isSize(first.text) && !isSize(second.text)) return { size: first.text, thickness: second.text }
  if (isSize(second.text) && !isSize(first.text) && first.stock)
    return { size: second.text, thickness: first.text }
  if (isSize(first.text) || isSize(second.text)) return undefined
  if (second.stock) return { size: first.text, thickness: second.text }
  return { size: `${first.text} x ${second.text}` }
}

function readChunks(split: Split, settings: ReadingSettings, counted: boolean): Sides | NoSides {
  const picked = pickChunks(split.chunks)
  if (picked === undefined) return { status: 'problem', problem: 'has more numbers than one part needs' }
  const bare = readSides(picked.size, settings, counted)
  // Who writes the thickness in mm does not write the sides in inches: `300 x 200 18mm MDF`.
  const sides =
    bare.status === 'ambiguous' && /\dmm\b|\bmm\b/iu.test(picked.thickness ?? '')
      ? readSides(picked.size, { ...settings, units: 'metric' }, counted)
      : bare
  if (sides.status !== 'read' || picked.thickness === undefined) return sides
  const thickness = readSides(picked.thickness, { ...settings, units: sides.units }, true)
  if (thickness.status !== 'read') return thickness
  if (sides.thickness !== undefined || thickness.width !== undefined)
    return { status: 'problem', problem: 'gives more than one thickness' }
  return { ...sides, thickness: thickness.length }
}

/** Reads one line as people write them: label, count, size and material in the usual orders. */
export function readLine(raw: string, settings: ReadingSettings): LineRead {
  const counted = takeCount(raw.replace(BULLET, '').trim(), boardTokens(settings.stock.boards))
  if (counted.status === 'problem') return counted
  const split = splitLine(counted.rest, materialWords(settings.stock.labels))
  if (split.chunks.length === 0) return problemOf('has no size; write one, such as 4 @ 24 x 18in')
  if (isBareBeforeWords(split)) return problemOf('has a number but no size; write one, such as 4 @ 24 x 18in')
  if (isDoubtful(split) && counted.count === undefined)
    return problemOf(
      'has a number before the size that could be a count or part of the name; write 4 @ for a count',
    )
  const [, loose, number] = LOOSE.exec(`${split.label} ${split.after}`) ?? []
  if (loose !== undefined)
    return problemOf(`has "${loose}", which could be a count or a side; write ${number} @ for a count`)
  const sides = readChunks(split, settings, counted.count !== undefined)
  if (sides.status !== 'read') return sides
  if (sides.count !== undefined && counted.count !== undefined)
    return problemOf(`gives two counts, ${counted.count} and ${sides.count}; write one`)
  return {
    status: 'part',
    units: sides.units,
    part: {
      label: joinWords(split.label, split.after),
      count: counted.count ?? sides.count ?? 1,
      length: sides.length,
      width: sides.width,
      thickness: sides.thickness,
      material: split.material || sides.material,
      board: sides.board,
      counted: (counted.count ?? sides.count) !== undefined,
      note: sides.note,
    },
  }
}
