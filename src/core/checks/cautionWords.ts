import { distance } from 'fastest-levenshtein'
import { remembered } from '../remembered.ts'

/** From this many letters on, one slip of the thumb still counts as the word: shorter ones are too near others. */
const LONG_WORD = 8
/** From this many letters on, a word may be typed in two: `fire pit` for `firepit`. */
const SPLIT_WORD = 5

/** Stands where words were passed over, so that their neighbours do not run together, not even as a slip. */
const GAP = '||'

/** `grill-pattern planter`, `heater-coloured box`, `generator trophy`: no grill, heater or generator is there. */
const LOOK = /[a-z0-9]+(?:-(?:pattern(?:ed)?|colou?r(?:ed)?|shaped?|themed?)\b|\s+troph(?:y|ies)\b)/g

/**
 * Whether a text as typed names one of the phrases (given in the singular, lower case), apart from where it names one of
 * `except`. Plurals, hyphens, accents, words run together or split (`heatpump`, `fire-pit`) and `A/C` are seen through, and
 * one slip in a long word, though not in `except`. What only lends its look (`grill-pattern`) or is a prize is passed over.
 */
export function mentions(text: string, phrases: readonly string[], except: readonly string[] = []): boolean {
  const tokens = except.reduce((left, phrase) => passOver(left, soughtOf(phrase)), tokensOf(text))
  return phrases.some((phrase) => placeOf(tokens, soughtOf(phrase), isNearly) !== undefined)
}

/** Without slips: what is passed over must be sure to be harmless, so `to engine` is no `toy engine`. */
function passOver(tokens: readonly string[], phrase: Sought): readonly string[] {
  const place = placeOf(tokens, phrase, isForm)
  if (place === undefined) return tokens
  const rest = passOver(tokens.slice(place.end), phrase)
  return [...tokens.slice(0, place.start), GAP, ...rest]
}

const tokensOf = remembered(
  (text): readonly string[] =>
    text
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .toLowerCase()
      .replace(LOOK, ` ${GAP} `)
      .replace(/\ba[./]c\b/g, 'ac')
      .match(/[a-z0-9]+|\|\|/g) ?? [],
)

/** A phrase to look for: run together, in every form, and how many tokens it may be typed in. */
interface Sought {
  readonly word: string
  readonly forms: readonly string[]
  readonly longest: number
}

const soughtOf = remembered((phrase): Sought => {
  const tokens = tokensOf(phrase)
  const word = tokens.join('')
  return {
    word,
    forms: [word, `${word}s`, `${word}es`, word.replace(/y$/, 'ies')],
    longest: tokens.length + (word.length >= SPLIT_WORD ? 1 : 0),
  }
})

interface Place {
  readonly start: number
  readonly end: number
}

/** The first tokens that make up the phrase, one more or fewer of them than it has words; nothing when none do. */
function placeOf(tokens: readonly string[], phrase: Sought, fits: typeof isForm): Place | undefined {
  for (let start = 0; start < tokens.length; start += 1) {
    let typed = ''
    for (let end = start + 1; end <= start + phrase.longest; end += 1) {
      typed += tokens[end - 1] ?? ''
      if (fits(typed, phrase)) return { start, end }
    }
  }
  return undefined
}

const isForm = (typed: string, { forms }: Sought): boolean => forms.includes(typed)

const isNearly = (typed: string, phrase: Sought): boolean =>
  isForm(typed, phrase) || (phrase.word.length >= LONG_WORD && isSlip(typed, phrase.word))

/** One letter more, fewer or other. Words of other lengths need no measuring. */
const isSlip = (typed: string, word: string): boolean =>
  Math.abs(typed.length - word.length) <= 1 && distance(typed, word) <= 1
