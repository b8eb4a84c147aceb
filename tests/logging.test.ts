import { readdirSync, readFileSync } from 'node:fs'
import { Writable } from 'node:stream'
import { pino } from 'pino'
import { describe, expect, it } from 'vitest'
import { ROOT } from './room.ts'

/** An error that is handed to the log under a name that pino does not print the stack of. */
const LOST = /\blog\.(?:error|warn|info)\((?:\{|\{[^}]*,)\s*error\s*[,}]/u

describe('an error in the log', () => {
  it('is printed with its stack under `err`, and without under any other name', () => {
    const lines: string[] = []
    const write = (line: Buffer, _: string, done: () => void) => {
      lines.push(String(line))
      done()
    }
    const log = pino(new Writable({ write }))
    log.error({ err: new Error('away') }, 'one')
    log.error({ error: new Error('away') }, 'other')
    expect(lines[0]).toContain('logging.test.ts')
    expect(lines[1]).not.toContain('logging.test.ts')
  })

  it('stands under `err` in every source', () => {
    const files = readdirSync(`${ROOT}src`, { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.ts'),
    )
    expect(files.length).toBeGreaterThan(100)
    expect(files.filter((file) => LOST.test(readFileSync(`${ROOT}src/${file}`, 'utf8')))).toEqual([])
  })
})
