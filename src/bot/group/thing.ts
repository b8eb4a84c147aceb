/** Something to bring, with how many where that stands with it. */
export interface Thing {
  readonly name: string
  readonly count: number | undefined
}

/** After a number these say how large a thing is, not how many: `18 gauge brads`, `2 quarts paint`. */
const UNITS =
  /^(?:ga|gauge|grit|mm|cm|m|in|inch(?:es)?|ft|foot|feet|yd|yards?|oz|ml|l|lit(?:er|re)s?|qt|quarts?|pt|pints?|gal|gallons?|kg|lbs?|v|volts?|amps?|w|watts?|tpi|tooth|teeth)\b/iu

/** The ways people write how many with what it is: `8 clamps`, `8x clamps`, `clamps x8`, `clamps (8)`. */
const FORMS: readonly RegExp[] = [
  /^(?<count>[1-9]\d{0,3})\s*(?:[x×*@]\s+)?(?<=\s)(?![x×]\s)(?<name>\p{L}.*)$/iu,
  /^(?<name>.*\S)\s+[x×*]\s*(?<count>[1-9]\d{0,3})$/iu,
  /^(?<name>.*\S)\s*\(\s*[x×*]?\s*(?<count>[1-9]\d{0,3})\s*\)$/iu,
]

/** What was typed, with its count taken out of it; a bare number at the end stays, since `sandpaper 120` is a grit. */
export function readThing(typed: string): Thing {
  const text = typed.trim()
  for (const form of FORMS) {
    const { name, count } = form.exec(text)?.groups ?? {}
    if (name !== undefined && count !== undefined && !UNITS.test(name)) return { name, count: Number(count) }
  }
  return { name: text, count: undefined }
}

/** A word as it is looked for: without capitals, and without the s of more than one. */
const stem = (word: string): string => word.toLowerCase().replace(/(?<=\p{L}{2})s$/u, '')

const stems = (text: string): readonly string[] => text.trim().split(/\s+/u).map(stem)

/** True for names that differ by no more than capitals and the s of more than one. */
export const isSameThing = (one: string, other: string): boolean =>
  stems(one).join(' ') === stems(other).join(' ')

/** The thing that is meant: by its name, else the only one that has all the words typed. */
export function findThing<Named extends { readonly name: string }>(
  rows: readonly Named[],
  typed: string,
): Named | undefined {
  const exact =
    rows.find(({ name }) => name.toLowerCase() === typed.trim().toLowerCase()) ??
    rows.find(({ name }) => isSameThing(name, typed))
  if (exact) return exact
  const asked = stems(typed)
  const partly = rows.filter(({ name }) => asked.every((word) => stems(name).includes(word)))
  return partly.length === 1 ? partly[0] : undefined
}
