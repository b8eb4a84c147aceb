/** The part of a logger that the bot uses: facts first, then a short message. */
export interface Logger {
  readonly error: (facts: object, message: string) => void
  readonly warn: (facts: object, message: string) => void
  readonly info: (facts: object, message: string) => void
}
