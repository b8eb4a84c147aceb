/**
 * What config files are known to say, by the SHA-256 of their text in hexadecimal, so that they need not be read as YAML
 * again. Nothing here, for the sources are read as they stand; bundle.mjs puts what it has read in this file's place.
 */
export const readBefore: ReadonlyMap<string, unknown> = new Map()
