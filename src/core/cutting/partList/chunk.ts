import { isMaterial, isMeasureWord, isNumber } from './words.ts'

/** A stretch of a line that is a measure; `stock` when the name of a material follows or leads it directly. */
export interface Chunk {
  readonly text: string
  readonly stock: boolean
}

/** A line taken apart: words before the first number, measures, materials, and words after. */
export interface Split {
  readonly label: string
  readonly chunks: readonly Chunk[]
  readonly material: string
  readonly after: string
}

/** Words that only link: `18 of ply`, `from the offcut`. */
const LINKS = /^(?:of|from|out|the|in)$/iu

const trimMarks = (text: string): string => text.replace(/^[\s,:;=\-–—]+|[\s,:;=\-–—(]+$/gu, '').trim()

/** Commas and semicolons end a measure where a space follows; a comma in a number stays. */
const tokensOf = (line: string): string[] =>
  line
    .replace(/[,;:](?=\s|$)/gu, ' $& ')
    .split(/\s+/u)
    .filter(Boolean)

/** A number that ends with its unit, or a unit by itself: no fraction can belong to it. */
const CLOSED = /(?:mm|cm|m|ins?|inch(?:es)?|ft|feet|foot|["″”'′’])\.?$/iu

/** `14in x 9in 1/2 ply`: whether a size is whole before this number, which is the thickness of a material named after it. */
function isThicknessAt(
  at: number,
  tokens: readonly string[],
  size: readonly string[],
  named: ReadonlySet<string>,
): boolean {
  const before = tokens[at - 1] ?? ''
  const isFraction = /[/¼-¾⅐-⅞]/u.test(tokens[at] ?? '')
  const isWhole = CLOSED.test(before) || (isNumber(before) && !isFraction)
  const end = tokens.findIndex((token, index) => index >= at && !isNumber(token) && !isMeasureWord(token))
  return (
    isNumber(tokens[at] ?? '') &&
    isWhole &&
    /[x×*]|\bby\b/iu.test(size.join(' ')) &&
    isMaterial(tokens[end] ?? '', named)
  )
}

/** Takes a line apart into label, measures, material and what is left. `named`: words of the shop's own materials. */
export function splitLine(line: string, named: ReadonlySet<string>): Split {
  const chunks: { text: string[]; stock: boolean }[] = []
  const words = { label: [] as string[], material: [] as string[], after: [] as string[] }
  let open = false
  const tokens = tokensOf(line)
  for (const [at, token] of tokens.entries()) {
    const isSize: boolean = isNumber(token) || (open && isMeasureWord(token))
    if (isSize && open && !isThicknessAt(at, tokens, chunks.at(-1)!.text, named))
      chunks.at(-1)!.text.push(token)
    else if (isSize) chunks.push({ text: [token], stock: false })
    else if (isMaterial(token, named) && (chunks.length > 0 || words.label.length === 0)) {
      words.material.push(token)
      if (open) chunks.at(-1)!.stock = true
    } else if (chunks.length === 0) words.label.push(token)
    else if (!LINKS.test(token)) words.after.push(token)
    open = isSize
  }
  return {
    label: trimMarks(words.label.join(' ').replace(/\s+([,;:])/gu, '$1')),
    chunks: chunks.map(({ text, stock }) => ({ text: text.join(' '), stock })),
    material: words.material.join(' '),
    after: trimMarks(words.after.join(' ').replace(/\s+([,;:])/gu, '$1')),
  }
}
