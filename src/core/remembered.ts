/** As many texts as people write in some minutes, or as the tables hold. */
const MOST = 500

/**
 * `work`, which must be a pure function of a text whose result nobody changes, with its last `most` results kept: the same
 * words are read several times over for one answer.
 */
export function remembered<Result extends object>(
  work: (text: string) => Result,
  most = MOST,
): (text: string) => Result {
  const known = new Map<string, Result>()
  return (text) => {
    const before = known.get(text)
    if (before) return before
    const result = work(text)
    // A map keeps the order in which its keys came.
    for (const oldest of known.keys()) {
      if (known.size < most) break
      known.delete(oldest)
    }
    known.set(text, result)
    return result
  }
}
