import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { render } from '../src/platforms/room/render.ts'
import { openRoom, ROOT } from './room.ts'

interface Exchange {
  readonly line: string
  readonly printed: string
}

/** Every `> line` in a fenced block marked `text`, with what is printed under it up to the next. */
function readExchanges(markdown: string): readonly Exchange[] {
  const blocks = [...markdown.matchAll(/^```text\n(.*?)^```$/gmsu)].map((block) => block[1] ?? '')
  return blocks.flatMap((block) =>
    block
      .split(/^(?=> )/mu)
      .filter((part) => part.startsWith('> '))
      .map((part) => {
        const [said = '', ...printed] = part.split('\n')
        return { line: said.slice(2), printed: printed.join('\n').replace(/^\n+|\s+$/gu, '') }
      }),
  )
}

const path = `${ROOT}README.md`
const exchanges = existsSync(path) ? readExchanges(readFileSync(path, 'utf8')) : []

describe('the README', () => {
  it('shows what is asked and answered', () => {
    expect(exchanges.length).toBeGreaterThan(0)
  })

  it('shows exactly what the bot says, said in one room in order', async () => {
    const room = await openRoom()
    for (const { line, printed } of exchanges) expect(render(await room.ask(line)), line).toBe(printed)
    await room.close()
  })
})

describe('an exchange', () => {
  it('is found in fenced text blocks alone', () => {
    const markdown = 'a\n```text\n> help\n\nfirst\n\nlast\n\n> units\nnow\n```\n```sh\n> no\n```\n'
    expect(readExchanges(markdown)).toEqual([
      { line: 'help', printed: 'first\n\nlast' },
      { line: 'units', printed: 'now' },
    ])
  })
})
