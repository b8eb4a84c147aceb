import { inches, type Length } from '../core/measure/length.ts'
import { Refusal } from './refusal.ts'
import type { Show } from './show.ts'

/** No saw blade for boards and sheets takes more than this in one pass. */
const WIDEST = inches(1, 2)

/** The kerf that was given, if any. Throws a Refusal for one that no saw blade makes. */
export function sawKerf(kerf: Length | undefined, show: Show): Length | undefined {
  if (kerf !== undefined && kerf > WIDEST) {
    throw new Refusal(
      'invalid',
      `no saw blade takes ${show.length(kerf, 'mark', true)}; give its kerf, such as ${show.units === 'inch' ? 'kerf=1/8in' : 'kerf=3mm'}`,
    )
  }
  return kerf
}
