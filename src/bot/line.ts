/** A typed line taken apart; what the words mean is not decided here. */
export interface Line {
  readonly command: string
  /** What stands before the first `name=`, the command's word left out. */
  readonly first: string
  readonly options: readonly (readonly [name: string, value: string])[]
}

/** A word, then an equals sign (half or full width). */
const NAME = String.raw`(?<=^|[\s,;])([A-Za-z_][A-Za-z_-]*)\s*[=＝]`
/** All of a value in quotation marks, where nothing but a separator or the end stands behind it. */
const QUOTED = String.raw`\s*(?:"[^"]*"|“[^”]*”)(?=\s*$|[\s,;])`
/** The value runs on to the next such word that does not stand in a quoted value. */
const OPTION = new RegExp(`(${NAME})(?:${QUOTED})?`, 'gu')

/**
 * Takes `strips 2x6 rip=1/2 in kerf=1/8` apart. No quotes are needed: an inch mark is never a quotation mark, and a
 * value ends where the next `name=` begins, unless that stands within a value in quotation marks. A leading slash is allowed. Line breaks stay, for pasted lists.
 */
export function readLine(text: string): Line {
  const line = visible(text)
  const [, command = '', rest = ''] = /^\/?\s*(\S*)\s*(.*)$/su.exec(line) ?? []
  if (command.includes('=')) return { command: '', first: '', options: [] }
  const marks = [...rest.matchAll(OPTION)]
  const options = marks.map((mark, index): readonly [string, string] => [
    (mark[2] ?? '').toLowerCase(),
    tidy(rest.slice(mark.index + (mark[1] ?? '').length, marks[index + 1]?.index)),
  ])
  return { command: command.toLowerCase(), first: tidy(rest.slice(0, marks[0]?.index)), options }
}

/** `name=value` as `readLine` reads it back: in quotation marks where the value holds what looks like an option. */
export function optionSaying(name: string, value: string | number | boolean): string {
  const text = String(value)
  if (!new RegExp(NAME, 'u').test(text)) return `${name}=${text}`
  return text.includes('"') ? `${name}=“${text}”` : `${name}="${text}"`
}

/** `text` with a space in place of every control character but line breaks and tabs, and none round the whole. */
export const visible = (text: string): string => text.replace(/(?![\n\t])[\p{Cc}\p{Cf}]/gu, ' ').trim()

/** Without the spaces and commas that separate options, and without quotation marks round the whole. */
function tidy(value: string): string {
  const trimmed = value.replace(/^[\s,;]+|[\s,;]+$/gu, '')
  const quoted = /^["“”](.*[^\d\s"“”].*)["“”]$/su.exec(trimmed)
  return quoted?.[1] ?? trimmed
}
