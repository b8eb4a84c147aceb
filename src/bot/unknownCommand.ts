import type { Catalogue } from './catalogue.ts'
import type { Command } from './command.ts'
import { plain, quoted, Refusal } from './refusal.ts'
import { listed, suggest } from './suggest.ts'

/**
 * The refusal of a line that begins with no command's name: a measure goes to what reads it, a slip of the thumb or a bare
 * verb to the names it may be, and a question in plain words to the command that its words are about.
 */
export function unknownCommand(name: string, line: string, catalogue: Catalogue): Refusal {
  const [asTyped = name] = line.split(/\s/u)
  return new Refusal('unknown', `there is no command ${quoted(asTyped)}${instead(name, line, catalogue)}`)
}

function instead(name: string, line: string, catalogue: Catalogue): string {
  if (MEASURE.test(line))
    return `; for a measure write: ${AREA.test(line) ? 'finish' : 'convert'} ${plain(line)}`
  const near = suggest(name, [...catalogue.keys()])
  const meant = near.length > 0 ? near : ownersOf(name, catalogue)
  if (meant.length > 0) return `; "help" lists them all. Did you mean ${listed(meant, 'or')}?`
  const about = commandsAbout(line, catalogue).map(({ examples: [first = ''] }) => first)
  return about.length > 0 ? `; for that write, such as: ${about.join('; or: ')}` : '; "help" lists them all.'
}

/** A line that begins with a number, and is no longer than a measure is. */
const MEASURE = /^[.,]?[\d½¼¾⅛⅜⅝⅞][^=]{0,39}$/u
const AREA = /\bsq\b|\bsf\b|sqm|²|(?:ft|m|in)\^?2/iu

/** `undo` alone is a verb of several commands: the first three of them, each as it would be typed. */
const ownersOf = (verb: string, catalogue: Catalogue): readonly string[] =>
  [...catalogue.values()]
    .filter(({ verbs = {} }) => Object.hasOwn(verbs, verb))
    .map((command) => `${command.name} ${verb}`)
    .slice(0, 3)

/** The commands that most words of a question are about, two at most: by name, by summary, or by what their verbs do. */
function commandsAbout(line: string, catalogue: Catalogue): readonly Command[] {
  const asked = wordsOf(line)
  const scored = [...catalogue.values()].map((command) => ({ command, score: nearness(asked, command) }))
  const best = Math.max(...scored.map(({ score }) => score))
  return best < 2
    ? []
    : scored
        .filter(({ score }) => score === best)
        .map(({ command }) => command)
        .slice(0, 2)
}

function nearness(asked: ReadonlySet<string>, { name, summary, verbs = {} }: Command): number {
  const told: readonly (readonly [number, string])[] = [
    [4, name],
    [2, summary],
    [
      1,
      Object.values(verbs)
        .map((verb) => verb.summary)
        .join(' '),
    ],
  ]
  return told.reduce((sum, [worth, text]) => {
    const words = wordsOf(text)
    return sum + worth * [...asked].filter((word) => words.has(word)).length
  }, 0)
}

/** The words that carry meaning, without a plural's ending. */
const wordsOf = (text: string): ReadonlySet<string> =>
  new Set(
    (text.toLowerCase().match(/\p{L}{3,}/gu) ?? [])
      .filter((word) => !SMALL_WORDS.has(word))
      .map((word) => word.replace(/s$/u, '')),
  )

/** Words that stand in questions and summaries alike, and tell nothing of what is asked. */
const SMALL_WORDS = new Set(
  'and any are but can does each for from how into its made make much many need not off one out that the their them there they this use what when where which who why will with you your'.split(
    ' ',
  ),
)
