import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { argv, stdout } from 'node:process'
import { render } from '../../src/platforms/room/render.ts'
import { openSqlite } from '../../src/store/sqlite.ts'
import { openRoom, ROOT } from '../room.ts'
import { isAnswer, readConversation, type Step } from './conversation.ts'

/**
 * Writes what is answered now into conversations whose answers have changed: `rewrite.ts [FILE...]`. Answers that are still
 * true, `...` and all, stay as they are. Read every change before you keep it: this makes a file true, not right.
 */
const FOLDER = `${ROOT}tests/conversations`
const files = argv.length > 2 ? argv.slice(2) : readdirSync(FOLDER).filter((file) => file.endsWith('.txt'))

for (const file of files) {
  const text = readFileSync(`${FOLDER}/${file}`, 'utf8')
  const lines = text.split('\n')
  const remarks = lines.slice(
    0,
    lines.findIndex((line) => !line.startsWith('# ')),
  )
  const said = await answer(readConversation(text))
  const now = [...remarks, '', ...said].join('\n').trimEnd()
  if (`${now}\n` === text) continue
  writeFileSync(`${FOLDER}/${file}`, `${now}\n`)
  stdout.write(`${file} has changed\n`)
}

async function answer(steps: readonly Step[]): Promise<readonly string[]> {
  const lines: string[] = []
  const store = await openSqlite(':memory:')
  const room = await openRoom({ store })
  for (const step of steps) {
    if (step.kind === 'restart') {
      lines.push('= restart', '')
      continue
    }
    const actual = render(await room.ask(step.line, step)).split('\n')
    const where = step.channel === 'bench' ? '' : ` #${step.channel}`
    const kept = isAnswer(step.expected, actual) ? step.expected : actual
    lines.push(`> ${step.user}${where}: ${step.line}`, '', ...kept, '')
  }
  await room.close()
  return lines
}
