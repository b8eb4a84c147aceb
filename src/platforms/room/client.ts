import { createInterface, type Interface } from 'node:readline'
import type { Readable, Writable } from 'node:stream'
import type { Catalogue } from '../../bot/catalogue.ts'
import type { Answer, Place, Platform } from '../../bot/request.ts'
import { limits } from './limits.ts'
import { completions } from './registration.ts'
import { render } from './render.ts'

export interface RoomOptions {
  readonly channel: string
  readonly user: string
  readonly input: Readable
  readonly output: Writable
  /** Called when the person leaves. */
  readonly closed: () => void
}

const WELCOME =
  'Ask a build question, such as: sizing 17in x 13in height=15in\n"help" lists the commands, "leave" closes the room.\n'

/** A room in the terminal that needs no account: a typed line in, an answer out. */
export function createRoom(answer: Answer, catalogue: Catalogue, options: RoomOptions): Platform {
  const { input, output } = options
  let lines: Interface | undefined
  let isOpen = false
  let underWay: Promise<unknown> = Promise.resolve()
  const complete = (line: string): [string[], string] => [
    [...completions(line, catalogue)],
    line.split(/\s+/u).at(-1) ?? '',
  ]
  const place: Place = { platform: 'room', workspace: 'local', channel: options.channel }

  const reply = async (line: string) => {
    const response = await answer({ place, user: options.user, invocation: { line }, at: new Date() })
    output.write(`\n${render(response)}\n\n`)
    if (isOpen) lines?.prompt()
  }
  const leave = () => {
    isOpen = false
    void underWay.then(options.closed)
  }
  const hear = (line: string) => {
    // What was pasted behind "leave" still comes through.
    if (!isOpen) return
    if (/^\s*(leave|exit|quit)\s*$/iu.test(line)) return lines?.close()
    if (line.trim() === '') return lines?.prompt()
    underWay = underWay.then(() => reply(line))
  }
  return {
    name: 'room',
    limits,
    start: async () => {
      lines = createInterface({ input, output, completer: complete, prompt: `${options.channel}> ` })
      isOpen = true
      output.write(WELCOME)
      lines.on('line', hear).on('close', leave)
      lines.prompt()
    },
    stop: async () => {
      lines?.close()
      await underWay
    },
    health: () => ({ well: isOpen, says: isOpen ? 'the room is open' : 'the room is closed' }),
  }
}
