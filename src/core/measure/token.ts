import { roleOf } from './role.ts'
import { unitOf } from './unit.ts'

/** One piece of the typed text. */
export interface Token {
  /** `glyph` is a fraction typed as one sign; `soup` is a run of marks that mean nothing together. */
  readonly kind: 'number' | 'glyph' | 'word' | 'mark' | 'soup'
  /** As it stands in the plain text; a glyph as `7/8`. */
  readonly text: string
  /** There is a space before it. */
  readonly gap: boolean
  readonly start: number
  readonly end: number
}

const PIECE =
  /(?<number>\d+(?:[.,]\d+)*|(?<!\.)\.\d+(?:[.,]\d+)*|(?<=^|\s),\d+)|\{(?<glyph>\d+\/\d+)\}|(?<word>a[./]c(?!\p{L})|\p{L}+(?:'\p{L}+)*)|(?<quotes>["']+)|(?<mark>[^\s])/uy

/** The plain text (see `normalise`) cut into tokens; spaces are kept as `gap`. */
export function tokenise(plain: string): readonly Token[] {
  const tokens: Token[] = []
  let at = 0
  while (at < plain.length) {
    const start = at + (/^\s*/u.exec(plain.slice(at))?.[0].length ?? 0)
    PIECE.lastIndex = start
    const piece = PIECE.exec(plain)
    if (!piece) break
    at = start + piece[0].length
    tokens.push(
      ...cut({ ...kindOf(piece), gap: start > 0 && plain[start - 1] === ' ', start, end: at }, plain),
    )
  }
  return tokens
}

function kindOf(piece: RegExpExecArray): { kind: Token['kind']; text: string } {
  const { number, glyph, word, quotes, mark } = piece.groups ?? {}
  if (number !== undefined) return { kind: 'number', text: number }
  if (glyph !== undefined) return { kind: 'glyph', text: glyph }
  if (word !== undefined) return { kind: 'word', text: word }
  if (quotes === undefined) return { kind: 'mark', text: mark ?? '' }
  if (quotes === "''") return { kind: 'mark', text: '"' }
  return quotes.length === 1 ? { kind: 'mark', text: quotes } : { kind: 'soup', text: quotes }
}

/** `24inx36in`, `18hx29w` and `600mmw` run words together: the unit, the role and the x are told apart. */
function cut(token: Token, plain: string): readonly Token[] {
  const length = token.kind === 'word' ? firstPart(token.text, plain.slice(token.end)) : 0
  if (length === 0) return [token]
  const middle = token.start + length
  const first: Token = { ...token, text: token.text.slice(0, length), end: middle }
  const rest: Token = { ...token, text: token.text.slice(length), gap: false, start: middle }
  return [first, ...cut(rest, plain)]
}

/** How many letters of a run-together word are its first word; 0 when it is one word. */
function firstPart(word: string, after: string): number {
  if (unitOf(word) || roleOf(word)) return 0
  const joiner = /^(.+?)(x|by)$/u.exec(word)
  if (joiner?.[1] && /^["'.]*[\d{]/u.test(after) && (unitOf(joiner[1]) || roleOf(joiner[1])))
    return joiner[1].length
  const role = /^(in|ft|mm|cm|m)([whdl]|wide|high|deep|tall|long)(?:x|by)?$/u.exec(word)
  return role?.[1]?.length ?? 0
}
