import type { Button, Caution } from './reply.ts'

/** Said in full with an answer that has parts to read; the rest are one tap away. */
const SAID = 3

/** The gravest cautions in full, one line that counts the others, and the button that says those. */
export interface FewCautions {
  readonly cautions: readonly Caution[]
  readonly buttons: readonly Button[]
}

/** Keeps the first three of `all`, which stand in order of gravity; a fourth alone is said as well. None is cut short. */
export function fewCautions(all: readonly Caution[]): FewCautions {
  const rest = all.slice(SAID)
  if (rest.length < 2) return { cautions: all, buttons: [] }
  const line = `cautions named=${rest.map(({ id }) => id).join(', ')}`
  return {
    cautions: [
      ...all.slice(0, SAID),
      {
        id: 'more',
        task: rest[0]?.task ?? 'use',
        text: `And ${rest.length} more: ${rest.map(({ id }) => id).join(', ')}`,
      },
    ],
    buttons: [{ label: `${rest.length} more cautions`, line }],
  }
}
