/** The longest text that is read, in UTF-16 units; anything longer is no measure. */
export const LONGEST = 200

/** Codes by which a terminal sets colours and moves (ECMA-48, CSI): an escape, a bracket, figures and a last letter. */
export const TERMINAL_CODES = new RegExp(`${String.fromCodePoint(27)}\\[[0-?]*[ -/]*[@-~]`, 'gu')

const ENTITIES: ReadonlyMap<string, string> = new Map(
  Object.entries({
    quot: '"',
    apos: "'",
    amp: '&',
    lt: '<',
    gt: '>',
    nbsp: ' ',
    times: '×',
    deg: '°',
    prime: '′',
    Prime: '″',
    ndash: '–',
    mdash: '—',
    minus: '−',
    lsquo: '‘',
    rsquo: '’',
    ldquo: '“',
    rdquo: '”',
    frac12: '½',
    frac14: '¼',
    frac34: '¾',
    plusmn: '±',
  }),
)

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉'
const SMALL_FRACTION = /([⁰¹²³⁴-⁹]+)\s?[⁄∕/]\s?([₀-₉]+|\d+)/gu

/** In this order: what a later step, or NFKC, would garble is settled first. */
const STEPS: readonly (readonly [RegExp, string | ((...match: string[]) => string)])[] = [
  [TERMINAL_CODES, ''],
  [
    /&(?:#(\d{1,6})|#x([0-9a-f]{1,5})|(\w{2,6}));/giu,
    (whole, ten, hex, name) => entity(whole, ten, hex, name),
  ],
  [/\p{Cf}|\u20E3|\p{Variation_Selector}/gu, ''],
  [/[\p{Zs}\p{Cc}]+/gu, ' '],
  [/(?<=\d)\\(?=\d)/gu, '/'],
  [/\\(?=[^\p{L}\p{N}])/gu, ''],
  // Fractions of one glyph, or of small figures, become {7/8}, so that 23⅞ never turns into 237/8.
  [/⅟(\d+)/gu, '{1/$1}'],
  [SMALL_FRACTION, (_whole, over, under) => `{${figures(over)}/${figures(under)}}`],
  [/[¼-¾⅐-⅞↉]/gu, (glyph) => `{${glyph.normalize('NFKC').replace('⁄', '/')}}`],
  [/(?<=\d)\s?[⁰˚º∘°]/gu, '°'],
  [/[˚º∘]/gu, '°'],
  [/²/gu, '^2'],
  [/³/gu, '^3'],
  [/㎡/gu, 'm^2'],
  [/[㎟㎠]/gu, 'cm^2'],
  [/\p{No}/gu, '\uFFFD'],
  [/[“”„‟″‶˝ʺ〃〝〞«»]/gu, '"'],
  [/[‘’‚‛′‵ʹʼʻ´]/gu, "'"],
  [/‴/gu, "'''"],
  [/[‐‑‒–—―−﹘﹣]/gu, '-'],
  [/[×✕✖⨯⨉хХχΧ]/gu, 'x'],
  [/[⁄∕]/gu, '/'],
  [/∶/gu, ':'],
  [/[⌀∅Øø]/gu, '⌀'],
  [/…/gu, '...'],
  [/\p{Extended_Pictographic}/gu, ' '],
]

/**
 * What was typed, made plain: NFKC and lower case, every quotation mark, prime and acute as ' or ", every dash as -,
 * × as x, HTML escapes undone, code ticks and list dots off. A fraction glyph becomes {7/8}.
 */
export function normalise(text: string): string {
  const plain = STEPS.reduce((line, [pattern, by]) => line.replace(pattern, by as string), text)
  return unwrap(plain.normalize('NFKC').toLowerCase())
    .replace(/(\d)'s\b/gu, '$1s')
    .replace(/`/gu, "'")
    .replace(/-(?:by|x)-/gu, ' x ')
    .replace(/\((w|h|d|l|wide|high|deep|long|tall|width|height|depth|length|dia)\)/gu, ' $1 ')
    .replace(/\b(?:c\/c|o\/c|o\. ?c\.?)(?!\p{L})/gu, 'oc')
    .replace(/\bw\/(?=[ \d])/gu, 'with ')
    .replace(/\s+/gu, ' ')
    .trim()
}

const figures = (small = ''): string =>
  [...small]
    .map((sign) => Math.max(SUPERSCRIPTS.indexOf(sign), SUBSCRIPTS.indexOf(sign), Number(sign) || 0))
    .join('')

function entity(whole = '', ten = '', hex = '', name = ''): string {
  if (name) return ENTITIES.get(name) ?? whole
  const code = ten ? Number(ten) : Number.parseInt(hex, 16)
  return code > 31 && code < 0xfffe ? String.fromCodePoint(code) : ' '
}

/** Without the ticks, stars or quotation marks that stand round the whole, and without a list dot before it. */
function unwrap(line: string): string {
  const bare = line
    .trim()
    .replace(/^[•·▪‣◦●*]\s+/u, '')
    .replace(/^(`{1,3}|\*{1,3}|__?|~~)(?=\S)(.*\S)\1$/u, '$2')
  return /^(["'])(.*[\p{L}\p{N}].*)\1$/u.exec(bare)?.[2] ?? bare
}
