import { actionOf, type Catalogue, describe } from './catalogue.ts'
import type { Action, Command } from './command.ts'
import { createContext, type Surroundings } from './createContext.ts'
import { type RawInput, readInput } from './input.ts'
import { readLine, visible } from './line.ts'
import type { Logger } from './log.ts'
import { plain, quoted, Refusal } from './refusal.ts'
import type { Reply } from './reply.ts'
import type { Answer, Invocation, Request, Response } from './request.ts'
import { didYouMean } from './suggest.ts'
import { unknownCommand } from './unknownCommand.ts'

/** What the router needs of the outside: the surroundings of every context, a log, and a source of reference numbers. */
export interface RouterParts extends Omit<Surroundings, 'commands'> {
  readonly catalogue: Catalogue
  readonly log: Logger
  /** A short number that ties what a person is told to a line of the log. */
  readonly faultNumber: () => string
}

/**
 * The one way in: finds the command, reads the line, runs it with a deadline. What comes out is a value in every case;
 * a person's slip is a sentence that mends it, and a fault of ours is a reference number, with the rest in the log.
 */
export function createRouter(parts: RouterParts): Answer {
  const surroundings = { ...parts, commands: describe(parts.catalogue) }
  return async (request) => {
    try {
      return await respond(request, surroundings)
    } catch (error) {
      if (error instanceof Refusal) return { ok: false, kind: error.kind, error: error.message }
      const number = parts.faultNumber()
      parts.log.error({ number, err: error, invocation: request.invocation }, 'a command failed')
      return {
        ok: false,
        kind: 'fault',
        error: `something went wrong here, not with your line; nothing was changed. Reference ${number}`,
      }
    }
  }
}

interface Call {
  readonly command: Command
  readonly action: Action
  readonly raw: RawInput
  /** As it would be typed, for the history. */
  readonly line: string
}

async function respond(request: Request, parts: RouterParts & Surroundings): Promise<Response> {
  const call = findCall(request.invocation, parts.catalogue, parts.settings.lineLength)
  const prepared = await createContext(request, call.line, parts)
  const input = readInput(call.raw, call.action.options, prepared.reading)
  const deadline = new AbortController()
  const context = prepared.withInput(input, deadline)
  const run = () => call.action.run(input.values, context)
  const seconds = parts.settings.commandSeconds * (call.action.patience ?? 1)
  const reply = await beforeDeadline(run, deadline, seconds)
  const notes = [...input.notes, ...(reply.notes ?? [])]
  return {
    ok: true,
    show: context.show,
    reply: notes.length > 0 ? { ...reply, notes: [...new Set(notes)] } : reply,
  }
}

/** Runs `work`; a command that does not stop by itself in time is left to finish unheard. */
async function beforeDeadline(
  work: () => Reply | Promise<Reply>,
  deadline: AbortController,
  seconds: number,
): Promise<Reply> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => {
      deadline.abort()
      reject(
        new Refusal('fault', `this took longer than ${seconds} s and was stopped; try a smaller question`),
      )
    }, seconds * 1000)
  })
  try {
    return await Promise.race([Promise.resolve().then(work), late])
  } finally {
    clearTimeout(timer)
  }
}

function findCall(invocation: Invocation, catalogue: Catalogue, longest: number): Call {
  const call =
    'line' in invocation ? typedCall(invocation.line, catalogue, longest) : namedCall(invocation, catalogue)
  checkLength(call.line, longest)
  return { ...call, line: plain(call.line) }
}

const checkLength = (line: string, longest: number): void => {
  if (line.length <= longest) return
  throw new Refusal(
    'invalid',
    `the line has ${line.length} characters; ${longest} is the most that is read. Send the list in parts`,
  )
}

function typedCall(line: string, catalogue: Catalogue, longest: number): Call {
  checkLength(line, longest)
  const typed = readLine(line)
  const command = findCommand(typed.command, catalogue, visible(line).replace(/^\/\s*/u, ''))
  if (command.action) return { command, action: command.action, raw: typed, line }
  const [, word = '', rest = ''] = /^(\S*)\s*(.*)$/su.exec(typed.first) ?? []
  const verb = findVerb(command, word)
  return {
    command,
    action: verb.action,
    raw: { first: verb.taken ? rest : typed.first, options: typed.options },
    line,
  }
}

function namedCall(invocation: Exclude<Invocation, { line: string }>, catalogue: Catalogue): Call {
  const command = findCommand(invocation.command, catalogue, invocation.command)
  const action = actionOf(command, invocation.verb ?? command.fallback)
  if (!action) throw new Refusal('unknown', unknownVerb(command, invocation.verb ?? ''))
  const options = Object.entries(invocation.options).map(([name, value]): [string, string] => [
    name,
    visible(String(value)),
  ])
  const words = [command.name, invocation.verb, ...options.map(([name, value]) => `${name}=${value}`)]
  return {
    command,
    action,
    raw: { first: '', options },
    line: words.filter((word) => word !== undefined).join(' '),
  }
}

/** `line` is what was typed, for the sentence that says it names no command. */
function findCommand(name: string, catalogue: Catalogue, line: string): Command {
  const command = catalogue.get(name)
  if (command) return command
  if (name === '')
    throw new Refusal('unknown', 'the line is empty or starts with an option; write a command first, or help')
  throw unknownCommand(name, line, catalogue)
}

/** The verb that `word` names; else the fallback, when what was typed may be its input. */
function findVerb(command: Command, word: string): { action: Action; taken: boolean } {
  const verbs = command.verbs ?? {}
  const named = Object.hasOwn(verbs, word.toLowerCase()) ? verbs[word.toLowerCase()] : undefined
  if (named) return { action: named, taken: true }
  const fallback = verbs[command.fallback ?? '']
  if (word === '' && fallback) return { action: fallback, taken: false }
  throw new Refusal('unknown', unknownVerb(command, word))
}

const unknownVerb = (command: Command, word: string): string => {
  const verbs = Object.keys(command.verbs ?? {})
  if (verbs.length === 0) return `${command.name} has no ${quoted(word)}; leave it out`
  return `${command.name} cannot ${quoted(word)}; it can ${verbs.join(', ')}.${didYouMean(word, verbs)}`
}
