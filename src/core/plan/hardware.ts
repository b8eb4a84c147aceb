import type { Spec } from './spec.ts'

/** Bought parts that are screwed on. */
export interface Hardware {
  readonly name: 'corner bracket'
  readonly count: number
}

/** Two steel angles inside each bracketed corner, one near each rail; nothing at other corners (common practice). */
export const listHardware = ({ corner }: Spec): readonly Hardware[] =>
  corner === 'bracketed' ? [{ name: 'corner bracket', count: 8 }] : []
