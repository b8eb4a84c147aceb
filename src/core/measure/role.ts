/** Which way a labelled number lies. */
export type Role = 'length' | 'width' | 'height' | 'depth' | 'diameter'

const ROLES: Readonly<Record<Role, readonly string[]>> = {
  length: ['long', 'length', 'l', 'lg', 'lgth'],
  width: ['wide', 'width', 'w', 'wd'],
  height: ['high', 'height', 'hi', 'h', 'tall', 'ht', 'hgt'],
  depth: ['deep', 'depth', 'd', 'dp'],
  diameter: ['dia', 'diam', 'diameter', '⌀'],
}

/** Words that say what a number of an object is without giving it a direction. */
const PLACES = [
  'inside',
  'outside',
  'interior',
  'exterior',
  'internal',
  'external',
  'inner',
  'outer',
  'id',
  'od',
  'finished',
  'finish',
  'overall',
  'opening',
  'total',
  'thick',
  'thickness',
  'thk',
  't',
  'centres',
  'centers',
  'oc',
]

const BY_WORD: ReadonlyMap<string, Role> = new Map(
  Object.entries(ROLES).flatMap(([role, words]) => words.map((word) => [word, role as Role] as const)),
)

const PLACE_WORDS: ReadonlySet<string> = new Set(PLACES)

/** The direction that a word names: `tall` is a height; undefined for any other word. */
export const directionOf = (word: string): Role | undefined => BY_WORD.get(word)

/** True for a word that labels a number of an object: `wide`, `w`, `inside`, `od`, `thick`. */
export const roleOf = (word: string): boolean => BY_WORD.has(word) || PLACE_WORDS.has(word)
