/** Marks that mean something anywhere in a line. A bracket stands for links, mentions, times and emoji. */
const ANYWHERE = /[\\*_~`|<>[\]]/gu
/** Marks that mean something where a line begins: headings, small print, lists, numbered ones. */
const AT_START = /^(\s*)(#{1,3}(?=\s)|-#(?=\s)|[-+](?=\s)|\d+(?=\.\s))/gmu
/** Names a crowd; nobody is called, but it would still light up. */
const CROWD = /@(?=everyone|here)/gu

/** `text` as Discord shows it as it stands: nothing bold, no heading, no link in disguise, nobody named. */
export const escapeText = (text: string): string =>
  text
    .replace(ANYWHERE, '\\$&')
    .replace(CROWD, '@\u200b')
    .replace(AT_START, (_, space: string, mark: string) =>
      /^\d/u.test(mark) ? `${space}${mark}\\` : `${space}\\${mark}`,
    )

/** Lines in letters of one width. The first stands under the fence, where a phone needs it. */
export const codeBlock = (lines: readonly string[]): string =>
  `\`\`\`\n${lines.join('\n').replaceAll('```', "'''")}\n\`\`\``
