import type { Card } from './card.ts'

/** What stands for everybody in a channel, in the place of what stood there under the same name. */
export interface Posted {
  readonly notice: string
  /** When it was put up, in ISO 8601. */
  readonly at: string
  readonly card: Card
}
