import { createHash } from 'node:crypto'
import { afterAll, afterEach, expect, it } from 'vitest'
import { createKeeping } from '../../../src/store/keeping.ts'
import { openSqlite } from '../../../src/store/sqlite.ts'
import { type Bot, elementsOf, openBot, pressOf, textOf } from './bot.ts'
import { answerWith } from './replies.ts'

const store = await openSqlite(':memory:')
afterAll(() => store.close())

let bot: Bot | undefined
afterEach(() => bot?.close())

const mixed = (index: number) => createHash('sha256').update(String(index)).digest('base64').slice(0, 20)

/** Too long for a button, however it is packed. */
const MANY = {
  answer: 'Many',
  tables: [
    { columns: ['Part', 'Long'], rows: Array.from({ length: 150 }, (_, index) => [mixed(index), index]) },
  ],
  figures: {},
}

it('a private answer that was kept for its button is gone with the person it was for', async () => {
  const keeping = createKeeping(store, 'slack', () => new Date())
  const opened = await openBot({ answer: answerWith(MANY), keeping })
  bot = opened
  await opened.command('sizing 17in x 13in')
  const [show] = elementsOf((await opened.slack.next('respond')).body, 'show')
  if (!show) throw new Error('there is no button that shows the answer to all')
  expect(show.value).toMatch(/^kept:/u)
  const press = async () => {
    await opened.interact(pressOf(opened.slack, show))
    return textOf((await opened.slack.next('respond')).body)
  }
  await store.forgetPerson({ platform: 'slack', user: 'U2' })
  expect(await keeping.recallLine(show.value.slice('kept:'.length))).toBeDefined()
  await store.forgetPerson({ platform: 'slack', user: 'U1' })
  expect(await press()).toContain('that button is too old; type the line again.')
  expect(opened.slack.faults).toEqual([])
})
