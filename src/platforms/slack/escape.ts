/**
 * `text` as Slack shows it and nothing more: the three characters that begin a mention, a link or an entity are written
 * as entities, so no text pings anybody (Slack, Formatting message text, "Escaping text"); and no run of back-ticks begins
 * or ends a code block.
 */
export const escapeText = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('```', "'''")

/** How Slack writes what it has made a link of: `<tel:5551234|555 1234>`, `<http://a.b>`, `<#C1|general>`. */
const LINK = /<([^<>|]*)(?:\|([^<>]*))?>/gu

/**
 * What a person typed, from a message as Slack delivers it: mentions by their id alone, links as their words, entities
 * and no-break spaces as they were typed, and no back-ticks round the whole.
 */
export const typedText = (text: string): string =>
  text
    .replace(LINK, (_, target: string, label?: string) =>
      target.startsWith('@') ? `<${target}>` : (label ?? target),
    )
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&')
    .replaceAll('\u00a0', ' ')
    .trim()
    .replace(/^(`+)([^`]*)\1$/su, '$2')
    .trim()
