/** What is kept cannot be read or written; the message is one sentence that says what, and what would do. */
export class StoreError extends Error {
  constructor(sentence: string, cause?: unknown) {
    super(sentence, { cause })
    this.name = 'StoreError'
  }
}
