import { expect } from 'vitest'
import type { Figure, Reply } from '../../src/bot/reply.ts'
import type { Room, Who } from '../room.ts'

type Figures = Readonly<Record<string, Figure>>

/** Inches in mm, 25.4 to the inch, to a millionth: `inch(14, 15, 16)` is 14 15/16 in. */
export const inch = (whole: number, over = 0, under = 1): number =>
  Math.round((whole + over / under) * 25_400_000) / 1_000_000

/** The figures of the answer to a line. */
export const figuresOf = async (room: Room, line: string, who?: Who): Promise<Figures> =>
  (await room.reply(line, who)).figures

/** Every expected number is there, to a millionth of a mm; every other value is the same. */
export function expectFigures(figures: Figures, expected: Readonly<Record<string, Figure>>, line = ''): void {
  for (const [name, value] of Object.entries(expected)) {
    const found = figures[name]
    if (typeof value === 'number' && typeof found === 'number')
      expect(Math.abs(found - value), `${line}: ${name} is ${found}, not ${value}`).toBeLessThan(1e-6)
    else if (Array.isArray(value))
      expect((found as number[]).map((each) => Math.round(each * 1e6) / 1e6)).toEqual(
        value.map((each) => Math.round((each as number) * 1e6) / 1e6),
      )
    else expect(found, `${line}: ${name}`).toEqual(value)
  }
}

/** Everything a person reads, in one text. */
export const textOf = ({ answer, notes = [], cautions = [] }: Reply): string =>
  [answer, ...notes, ...cautions.map(({ text }) => text)].join('\n')

export const cautionsOf = ({ cautions = [] }: Reply): readonly string[] => cautions.map(({ id }) => id)
