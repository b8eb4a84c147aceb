import { expect } from 'vitest'
import { PHONE_COLUMNS, tableLines } from '../../src/bot/format.ts'
import type { Figure, Reply } from '../../src/bot/reply.ts'
import { openRoom, type Room } from '../room.ts'

/** Says lines in one fresh room, or goes on in one that is open, and checks that every answer fits a phone. */
export interface Asker {
  readonly room: Room
  readonly reply: (line: string) => Promise<Reply>
  /** The figures; throws where the line is refused. */
  readonly figures: (line: string) => Promise<Readonly<Record<string, Figure>>>
  readonly number: (line: string, figure: string) => Promise<number>
}

/** Opens a room, says `lines` in it first. */
export async function asker(...lines: readonly string[]): Promise<Asker> {
  const room = await openRoom()
  for (const line of lines) await room.reply(line)
  const reply = async (line: string): Promise<Reply> => {
    const response = await room.ask(line)
    if (!response.ok) throw new Error(`${line}: ${response.kind}: ${response.error}`)
    expect([...response.reply.answer].length, line).toBeLessThanOrEqual(200)
    for (const table of response.reply.tables ?? [])
      for (const each of tableLines(table, response.show))
        expect([...each].length, each).toBeLessThanOrEqual(PHONE_COLUMNS)
    return response.reply
  }
  const figures = async (line: string) => (await reply(line)).figures
  const number = async (line: string, figure: string): Promise<number> => {
    const value = (await figures(line))[figure]
    if (typeof value !== 'number') throw new Error(`${line}: ${figure} is ${JSON.stringify(value)}`)
    return value
  }
  return { room, reply, figures, number }
}
