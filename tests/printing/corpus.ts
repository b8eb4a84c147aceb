import type { Block, Handout } from '../../src/bot/handout/handout.ts'

/** A document with one section of these blocks. */
export const handoutOf = (blocks: readonly Block[], more: Partial<Handout> = {}): Handout => ({
  title: 'Box to build',
  subtitle: 'Plan version 12, 6 March 2026. Lengths in inches.',
  foot: 'Plan version 12, 6 March 2026',
  paper: 'letter',
  at: new Date(Date.UTC(2026, 2, 6)),
  sections: [{ title: 'Cut list', blocks }],
  ...more,
})
