/** One step of a conversation: somebody says a line and is answered, or the bot is started again. */
export type Step =
  | {
      readonly kind: 'said'
      readonly user: string
      readonly channel: string
      readonly line: string
      /** The lines of the answer; `...` stands for any lines, or none. */
      readonly expected: readonly string[]
      /** Where it stands in the file, counted from 1. */
      readonly at: number
    }
  | { readonly kind: 'restart' }

const SAID = /^> (?<user>[^:#]+?)(?: #(?<channel>\S+))?: (?<line>.*)$/u

/**
 * Reads a conversation: `# ` begins a remark, `> maria: strips 2x6` is said in the channel `bench`, `> maria #shed: ...` in
 * another, `= restart` closes the bot and starts it again, and what follows a line is the answer to it.
 */
export function readConversation(text: string): readonly Step[] {
  const steps: Step[] = []
  let expected: string[] = []
  for (const [index, line] of text.split('\n').entries()) {
    if (line.startsWith('# ')) continue
    if (line !== '= restart' && !line.startsWith('> ')) {
      expected.push(line)
      continue
    }
    expected = []
    steps.push(line === '= restart' ? { kind: 'restart' } : readSaid(line, index + 1, expected))
  }
  return steps.map((step) => (step.kind === 'said' ? { ...step, expected: trimmed(step.expected) } : step))
}

function readSaid(line: string, at: number, expected: readonly string[]): Step {
  const { user, channel = 'bench', line: said } = SAID.exec(line)?.groups ?? {}
  if (user === undefined || said === undefined) throw new Error(`line ${at}: nobody says "${line}"`)
  return { kind: 'said', user, channel, line: said, expected, at }
}

/** Without the empty lines at both ends. */
const trimmed = (lines: readonly string[]): readonly string[] =>
  lines
    .join('\n')
    .replace(/^\n+|\s+$/gu, '')
    .split('\n')

/** Whether `actual` is what `expected` says, where a line `...` takes up any number of lines. */
export function isAnswer(expected: readonly string[], actual: readonly string[]): boolean {
  const [first, ...rest] = expected
  if (first === undefined) return actual.length === 0
  if (first !== '...') return first === actual[0] && isAnswer(rest, actual.slice(1))
  return isAnswer(rest, actual) || (actual.length > 0 && isAnswer(expected, actual.slice(1)))
}
