/** Signs of scripts that DejaVu Sans 2.37 has no letters for, and little pictures. */
const LACKING =
  /[^\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Armenian}\p{Script=Georgian}\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Common}\p{Script=Inherited}]|[\u3000-\u30ff\uff00-\uffef\u{1f000}-\u{1faff}]/gu

/** What a picture says where a label has signs that it cannot show. */
export const LACKING_WORDS = '? stands for a letter that pictures lack'

/** `text` with a question mark for each sign that pictures cannot show, where an empty box would stand. */
export const shownSigns = (text: string): string => text.normalize('NFC').replace(LACKING, '?')
