/** Why a request was not answered: the person's line can be mended, except `fault`, which is ours. */
export type RefusalKind = 'ambiguous' | 'invalid' | 'unknown' | 'unsafe' | 'fault'

/**
 * A request that cannot be answered as it stands. The message is one clear sentence for the person who asked: what was
 * read, why not, what would do.
 */
export class Refusal extends Error {
  readonly kind: RefusalKind
  constructor(kind: RefusalKind, sentence: string) {
    super(sentence)
    this.name = 'Refusal'
    this.kind = kind
  }
}

/** `text` on one line, without anything that a terminal or a chat would obey. */
export const plain = (text: string): string => text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\s]+/gu, ' ').trim()

/** `text` in quotes, shortened so that a whole pasted page never comes back. */
export const quoted = (text: string, longest = 40): string => {
  const characters = [...plain(text)]
  return characters.length > longest
    ? `"${characters.slice(0, longest).join('')}..."`
    : `"${characters.join('')}"`
}
