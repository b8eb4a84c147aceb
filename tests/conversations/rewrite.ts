import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { argv, stdout } from 'node:process'
import { ROOT } from '../room.ts'
import { isAnswer, readConversation } from './conversation.ts'
import { type Held, holdConversation } from './hold.ts'

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
  const held = await holdConversation(readConversation(text))
  const now = [...remarks, '', ...held.flatMap(written)].join('\n').trimEnd()
  if (`${now}\n` === text) continue
  writeFileSync(`${FOLDER}/${file}`, `${now}\n`)
  stdout.write(`${file} has changed\n`)
}

function written(step: Held): readonly string[] {
  if (step.kind === 'restart') return ['= restart', '']
  const where = step.channel === 'bench' ? '' : ` #${step.channel}`
  const kept = isAnswer(step.expected, step.actual) ? step.expected : step.actual
  return [`> ${step.user}${where}: ${step.line}`, '', ...kept, '']
}
