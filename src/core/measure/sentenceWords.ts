import { type Item, amountOf, isMark, isWord } from './item.ts'

const SENTENCE =
  /^(?:is|are|was|were|be|says?|said|want|wants|need|needs|can|could|get|from|make|made|makes|change|take|add|rip|ripped|cut|cuts|how|many|what|what's|which|into|onto|out|but|should|will|would|do|does|did|fit|fits|set|raise|lower|reduce|increase|move|shorten|lengthen|trim|trimmed|drop|extend|wider|narrower|taller|shorter|deeper|longer|thicker|thinner|bigger|smaller|higher|larger|equal|equally|each|ea|every|side|sides|round|around|per|i|i'm|it|it's|my|we|our|you|not|now|instead|than|with|on|for|have|got|using|use|buy|leave|allow|between|both|off|real|really|out)$/u

/** True where the words make a sentence, a question or an order, not the name of a thing. */
export const isSentence = (items: readonly Item[]): boolean =>
  items.some((item, at) => isMark(item, '?', '@') || (isWord(item, SENTENCE) && !isShapeWord(items, at)))

/** The `round` of `12in round pot` is its shape; that of `1in all round` is not. */
const isShapeWord = (items: readonly Item[], at: number): boolean =>
  isWord(items[at], /^round$/u) &&
  (amountOf(items[at - 1]) !== undefined || amountOf(items[at + 1]) !== undefined) &&
  !isWord(items[at - 1], /^all$/u)
