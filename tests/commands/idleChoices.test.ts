import { afterAll, describe, expect, it } from 'vitest'
import { openRoom } from '../room.ts'
import { textOf } from './asking.ts'
import { changeOf, PLAN_OPTIONS } from './planOptions.ts'

const room = await openRoom()
afterAll(() => room.close())

const BOX = '17in x 13in height=15in'
const idle = async (line: string, who = { channel: 'typed' }) =>
  [...textOf(await room.reply(line, who)).matchAll(/^([\w-]+)= (?:is for .*: there is none here)/gmu)].map(
    ([, name]) => name,
  )

describe('an option that goes for nothing', () => {
  it.each([
    ['spacing=4in', ['spacing']],
    ['gap=1/8in', ['gap']],
    ['drain=1/2in spacing=4in', ['drain', 'spacing']],
    ['bottom=feet spacing=4in', ['spacing']],
    ['handle=notch', ['handle']],
    ['corner=butted fit=1/32in', ['fit']],
    ['cord=2in x 1in cordin=none', ['cord']],
  ])('is said to: %s', async (options, names) => {
    expect((await idle(`sizing ${BOX} ${options}`)).toSorted()).toEqual(names)
  })

  it.each([
    'bottom=feet drain=1/2in spacing=4in',
    'bottom=feet drain=1/2in spacing=100in',
    'bottom=cleats gap=1/8in',
    'lid=inset gap=1/8in handle=notch',
    'corner=halved fit=1/64in',
    'cord=2in x 1in cordin=end',
    // Off is off, whether or not there was anything.
    'lid=none handle=none bottom=none drain=0 grooves=0 cordin=none front-brace=no',
  ])('is not what makes a difference: %s', async (options) => {
    expect(await idle(`sizing ${BOX} ${options}`)).toEqual([])
  })

  // What is only said of a box, or only chooses the board that is bought, changes no number of it.
  const SAID_ALONE = new Set(['open', 'board'])

  it.each([BOX, `${BOX} corner=butted`, `${BOX} lid=inset`, `${BOX} bottom=feet`])(
    'is every option that leaves the numbers of a plan as they are, and no other: %s',
    async (box) => {
      // All that is said, but for the lines on the option itself.
      const said = async (line: string, name: string) => {
        const {
          answer,
          tables,
          notes = [],
          figures,
        } = await room.reply(`sizing ${line}`, { channel: 'numbers' })
        return JSON.stringify([answer, tables, notes.filter((note) => !note.includes(`${name}=`)), figures])
      }
      let idleOnes = 0
      for (const row of PLAN_OPTIONS.filter(({ first, name }) => !first && !SAID_ALONE.has(name))) {
        const option = changeOf(row).replace('project change ', '')
        const line = `${box.replace(new RegExp(` ${row.name}=\\S+`, 'u'), '')} ${option}`
        const response = await room.ask(`sizing ${line}`, { channel: 'numbers' })
        // A way for a cord without its size is refused, which says so as well; none is what the box has.
        if (!response.ok || /=none$|=no$/u.test(option)) continue
        const same = (await said(line, row.name)) === (await said(box, row.name))
        expect(await idle(`sizing ${line}`, { channel: 'numbers' }), line).toEqual(same ? [row.name] : [])
        idleOnes += Number(same)
      }
      expect(idleOnes).toBeGreaterThan(0)
    },
  )

  it('is said where a plan is kept, changed and shown, each time that it is typed', async () => {
    const who = { channel: 'kept' }
    expect(await idle(`project start ${BOX} spacing=4in`, who)).toEqual(['spacing'])
    expect(await idle('project', who)).toEqual(['spacing'])
    expect(await idle('project change spacing=3in', who)).toEqual(['spacing'])
    expect(await idle('project change bottom=feet drain=1/2in', who)).toEqual([])
  })
})
