import { readFileSync, writeFileSync } from 'node:fs'
import { render } from '../src/platforms/room/render.ts'
import { openRoom, ROOT } from './room.ts'

/**
 * Writes what is answered now under every `> line` of the README's text blocks. Read every change before you keep it: this
 * makes the README true, not right.
 */
const path = process.argv[2] ?? `${ROOT}README.md`
const room = await openRoom()
const parts = readFileSync(path, 'utf8').split(/^(```text\n.*?^```$)/gmsu)
const written: string[] = []
for (const part of parts) {
  if (!part.startsWith('```text')) {
    written.push(part)
    continue
  }
  const lines = part.split('\n').filter((line) => line.startsWith('> '))
  const answers: string[] = []
  for (const line of lines) answers.push(`${line}\n\n${render(await room.ask(line.slice(2)))}\n`)
  written.push(`\`\`\`text\n${answers.join('\n')}\`\`\``)
}
await room.close()
writeFileSync(`${ROOT}README.md`, written.join(''))
