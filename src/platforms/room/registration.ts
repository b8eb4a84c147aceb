import { type Catalogue, describe } from '../../bot/catalogue.ts'
import { wordCompletions } from '../completions.ts'

/** What may be typed next after `line`, for the Tab key: commands, then verbs, options and choices. */
export const completions = (line: string, catalogue: Catalogue): readonly string[] =>
  wordCompletions(line, describe(catalogue))
