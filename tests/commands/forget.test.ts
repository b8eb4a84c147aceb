import { afterAll, describe, expect, it } from 'vitest'
import { openRoom } from '../room.ts'
import { textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

const ANN = { user: 'u1', name: 'Ann' }

describe('forget', () => {
  it('asks first, then deletes what is kept of the person and leaves the plan', async () => {
    await room.reply('units metric', ANN)
    await room.reply('project start 17in x 13in height=15in', ANN)
    const asked = await room.reply('forget me', ANN)
    expect(asked.figures).toEqual({ deleted: 0, unnamed: 0 })
    expect(textOf(await room.reply('project history'))).toContain('Ann: project start')
    const [button] = asked.buttons ?? []
    const { answer, figures } = await room.reply(button?.line ?? '', ANN)
    expect(answer).toMatch(/^Forgotten/u)
    expect(Number(figures.deleted)).toBeGreaterThan(0)
    expect((await room.store.read(room.key('person', 'u1'))).body).toBeUndefined()
    const history = textOf(await room.reply('project history'))
    expect(history).toContain('somebody: project start')
    expect(history).not.toMatch(/Ann|u1/u)
  })

  it('says that there was nothing', async () => {
    expect((await room.reply('forget me sure=yes', { user: 'u9' })).answer).toBe('Nothing was kept of you')
  })
})
