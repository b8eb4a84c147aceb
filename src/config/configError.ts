/** One thing wrong with a config file, in one line that says where, what was expected and what was read. */
export interface Problem {
  readonly file: string
  /** Undefined where the file as a whole is wrong. */
  readonly line?: number | undefined
  readonly sentence: string
}

/** The config as it stands cannot be used; the message has every problem, one a line. */
export class ConfigError extends Error {
  readonly problems: readonly Problem[]
  constructor(problems: readonly Problem[]) {
    super(problems.map(problemLine).join('\n'))
    this.name = 'ConfigError'
    this.problems = problems
  }
}

/** Control characters, which a key may hold, must neither break the line nor reach a terminal. */
const problemLine = ({ file, line, sentence }: Problem): string =>
  `${file}${line === undefined ? '' : ` line ${line}`}: ${sentence}`.replace(
    /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu,
    ' ',
  )
