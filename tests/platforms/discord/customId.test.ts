import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Keeping } from '../../../src/bot/platform.ts'
import { customId, lineOf, readCustomId } from '../../../src/platforms/discord/customId.ts'

function keepingLines(): Keeping & { readonly lines: Map<string, string> } {
  const lines = new Map<string, string>()
  return {
    lines,
    once: async () => true,
    keepLine: async (line) => {
      const name = `name${lines.size}`
      lines.set(name, line)
      return name
    },
    recallLine: async (name) => lines.get(name),
    recall: async () => ({ revision: 0, text: undefined }),
    remember: async () => true,
  }
}

describe('the id of a button', () => {
  it('gives the line back, however long, in at most 100 characters', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('say', 'ask', 'edit', 'share'),
        fc.string({ maxLength: 300, unit: 'grapheme' }),
        async (deed, line) => {
          const keeping = keepingLines()
          const id = await customId(deed, line, keeping, 'u1')
          expect(id.length).toBeLessThanOrEqual(100)
          const press = readCustomId(id)
          expect(press?.deed).toBe(deed)
          expect(press && (await lineOf(press, keeping))).toBe(line)
        },
      ),
    )
  })

  it('holds a short line itself, so that nothing need be kept', async () => {
    const keeping = keepingLines()
    expect(await customId('say', 'project undo', keeping, 'u1')).toBe('1:say:project undo')
    expect(keeping.lines.size).toBe(0)
  })

  it.each(['', 'undo', '0:say:project undo', '2:say:project undo', '1:burn:it', '1:say', '11'])(
    '%j is none of ours',
    (id) => {
      expect(readCustomId(id)).toBeUndefined()
    },
  )
})
