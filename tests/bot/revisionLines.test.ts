import { describe, expect, it } from 'vitest'
import { revisionLines } from '../../src/bot/revisionLines.ts'
import type { Revision } from '../../src/bot/state.ts'

const made = (...ways: readonly Revision['way'][]): readonly Revision[] =>
  ways
    .map((way, index) => ({
      revision: index + 1,
      at: new Date(Date.UTC(2026, 2, 6, 18, index)),
      user: 'ann',
      command: way === 'edit' ? `change ${index + 1}` : way,
      way,
    }))
    .reverse()

const nameOf = async (user: string) => user.toUpperCase()

describe('revisionLines', () => {
  it('names the edit that every undo and redo is about', async () => {
    const lines = await revisionLines(
      made('edit', 'edit', 'undo', 'undo', 'redo', 'edit', 'undo'),
      10,
      nameOf,
    )
    expect(lines.map((line) => line.replace(/^.*ANN: /u, ''))).toEqual([
      'undo (took back 6: change 6)',
      'change 6',
      'redo (brought back 1: change 1)',
      'undo (took back 1: change 1)',
      'undo (took back 2: change 2)',
      'change 2',
      'change 1',
    ])
  })

  it('does not guess where the first revisions are gone', async () => {
    const [newest] = await revisionLines(made('edit', 'edit', 'undo').slice(0, 2), 10, nameOf)
    expect(newest).toBe('3, 2026-03-06 18:02 UTC, ANN: undo')
  })

  it('counts what it leaves out', async () => {
    expect(await revisionLines(made('edit', 'edit', 'edit'), 1, nameOf)).toEqual([
      '3, 2026-03-06 18:02 UTC, ANN: change 3',
      '2 more before these',
    ])
  })
})
