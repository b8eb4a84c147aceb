import { PassThrough } from 'node:stream'
import { describe, expect, it } from 'vitest'
import type { Answer } from '../../../src/bot/request.ts'
import { createRoom } from '../../../src/platforms/room/client.ts'
import { catalogue, openRoom } from '../../room.ts'

/** Types `text` in a terminal room, to its end; gives what stood on the screen once the room had closed. */
async function type(text: string, change: (answer: Answer) => Answer = (answer) => answer) {
  const room = await openRoom()
  const [input, output] = [new PassThrough(), new PassThrough()]
  await new Promise<void>((closed) => {
    const options = { channel: 'bench', user: 'me', input, output, closed }
    void createRoom(change(room.answer), catalogue, options).start()
    input.end(text)
  })
  const kept = await room.store.read(room.key('project'))
  await room.close()
  return { screen: String(output.read() ?? ''), kept }
}

describe('the terminal room', () => {
  it('says how to begin, and answers', async () => {
    const { screen } = await type('strips 2x6 rip=1/2in\n')
    expect(screen).toMatch(/^Ask a build question, such as: sizing /u)
    expect(screen).toContain('bench> ')
    expect(screen).toContain('\n9 strips of 1/2 in from each 2x6')
  })

  it('answers in the order asked, each line after the one before', async () => {
    const started: string[] = []
    const { screen, kept } = await type(
      'project start 17in x 13in height=15in\nproject change height=16in\nproject history\n',
      (answer) => async (request) => {
        started.push('in')
        const response = await answer(request)
        started.push('out')
        return response
      },
    )
    expect(started).toEqual(['in', 'out', 'in', 'out', 'in', 'out'])
    expect(kept.revision).toBe(2)
    expect(screen).toContain('Revision 2 is the newest')
  })

  it('passes over empty lines and marks what it cannot answer', async () => {
    const { screen } = await type('\n  \nstripes\n')
    expect(screen.match(/\n\? /gu)).toHaveLength(1)
    expect(screen).toContain('? there is no command "stripes"')
  })

  it.each(['leave', 'exit', ' QUIT '])(
    'closes at "%s", with what was asked before it answered',
    async (word) => {
      const { screen } = await type(`units\n${word}\nstrips 2x6 rip=1/2in\n`)
      expect(screen).toContain('Now for you: ')
      expect(screen).not.toContain('strips of')
    },
  )

  it('lets what is under way finish when it is stopped', async () => {
    const room = await openRoom()
    const [input, output] = [new PassThrough(), new PassThrough()]
    let isClosed = false
    const terminal = createRoom(room.answer, catalogue, {
      channel: 'bench',
      user: 'me',
      input,
      output,
      closed: () => (isClosed = true),
    })
    await terminal.start()
    input.write('project start 17in x 13in height=15in\n')
    await new Promise((done) => setImmediate(done))
    await terminal.stop()
    expect((await room.store.read(room.key('project'))).revision).toBe(1)
    expect(String(output.read())).toContain('Kept for this channel.')
    await new Promise((done) => setImmediate(done))
    expect(isClosed).toBe(true)
    await room.close()
  })
})
