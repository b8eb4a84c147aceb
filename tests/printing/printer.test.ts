import { afterAll, describe, expect, it } from 'vitest'
import type { Handout } from '../../src/bot/handout/handout.ts'
import { createPrinter } from '../../src/printing/printer.ts'
import { handoutOf } from './corpus.ts'

const printer = createPrinter({ threads: 1 })
afterAll(() => printer.close())

const short = handoutOf([{ block: 'words', text: 'Cut 2 end panels' }])

describe('the printer', () => {
  it('prints in a thread of its own, which leaves others to be answered', { timeout: 60_000 }, async () => {
    let turns = 0
    const counting = setInterval(() => (turns += 1), 1)
    const { content, pages } = await printer.print(short)
    clearInterval(counting)
    expect(pages).toBe(1)
    expect(Buffer.from(content).subarray(0, 5).toString('latin1')).toBe('%PDF-')
    expect(turns).toBeGreaterThan(2)
  })

  it('rejects what it cannot print, and goes on', { timeout: 60_000 }, async () => {
    // As a caller's bug would be: a document without sections.
    const broken = { title: 'nothing' } as unknown as Handout
    await expect(printer.print(broken)).rejects.toThrow()
    expect((await printer.print(short)).pages).toBe(1)
  })

  it('prints nothing once it is closed', async () => {
    const closed = createPrinter({ threads: 1 })
    await closed.close()
    await expect(closed.print(short)).rejects.toThrow('the printer is closed')
  })
})
