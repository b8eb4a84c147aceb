import { createInterface } from 'node:readline'
import type { Readable, Writable } from 'node:stream'
import type { Answer, Place } from '../../bot/request.ts'
import { renderJson, renderText } from './render.ts'

/** What `ask` was told on the command line. */
export interface AskOptions {
  /** The question; without it, lines are read from `input`. */
  readonly line: string | undefined
  readonly json: boolean
  readonly channel: string
  readonly user: string
}

/**
 * Answers one line, or every line of `input` in turn, and writes one answer for each. Says whether the one line was
 * answered, for the exit code; of many, each answer says it for itself.
 */
export async function ask(
  options: AskOptions,
  answer: Answer,
  input: Readable,
  output: Writable,
): Promise<boolean> {
  const place: Place = { platform: 'room', workspace: 'local', channel: options.channel }
  const render = options.json ? renderJson : renderText
  const one = async (line: string) => {
    const response = await answer({ place, user: options.user, invocation: { line }, at: new Date() })
    output.write(`${render(response)}\n`)
    return response.ok
  }
  if (options.line !== undefined) return one(options.line)
  for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) await one(line)
  return true
}
