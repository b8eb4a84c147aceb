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

/** Takes a line apart into label, measures, material and what is left. `named`: words of the shop's own materials. */
export function splitLine(line: string, named: ReadonlySet<string>): Split {
  const chunks: { text: string[]; stock: boolean }[] = []
  const words = { label: [] as string[], material: [] as string[], after: [] as string[] }
  let open = false
  for (const token of tokensOf(line)) {
    const isSize: boolean = isNumber(token) || (open && isMeasureWord(token))
    if (isSize && open) chunks.at(-1)!.text.push(token)
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
