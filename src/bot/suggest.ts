import { distance } from 'fastest-levenshtein'

/**
 * The names close enough to `typed` that it may be a slip of the thumb, nearest first, three at most. A name may be off
 * by a third of its letters, or start with what was typed.
 */
export function suggest(typed: string, names: readonly string[]): readonly string[] {
  const word = typed.toLowerCase()
  return names
    .map((name) => ({ name, off: nearness(word, name.toLowerCase()) }))
    .filter(({ name, off }) => off <= Math.max(1, Math.floor(Math.max(name.length, word.length) / 3)))
    .sort((a, b) => a.off - b.off || a.name.localeCompare(b.name))
    .slice(0, 3)
    .map(({ name }) => name)
}

function nearness(word: string, name: string): number {
  if (word.length >= 3 && (name.startsWith(word) || word.startsWith(name))) return 0
  return isSwapped(word, name) ? 1 : distance(word, name)
}

/** Two neighbouring letters in the wrong order are one slip, not two. */
function isSwapped(word: string, name: string): boolean {
  const at = [...word].findIndex((letter, index) => letter !== name[index])
  const swapped = word.slice(0, at) + (word[at + 1] ?? '') + (word[at] ?? '') + word.slice(at + 2)
  return at >= 0 && swapped === name
}

/** ` Did you mean a, b or c?`, or nothing where no name is near. */
export function didYouMean(typed: string, names: readonly string[]): string {
  const near = suggest(typed, names)
  return near.length === 0 ? '' : ` Did you mean ${listed(near, 'or')}?`
}

/** `a`, `a or b`, `a, b or c`. */
export const listed = (words: readonly string[], joiner: 'or' | 'and'): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${joiner} ${words.at(-1)}`
