/** A number that is another for almost every other text (FNV-1a, 32 bits), so that a change is seen without the text. */
export function numberOf(text: string): number {
  let hash = 0x811c9dc5
  for (let index = 0; index < text.length; index += 1)
    hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193)
  return hash >>> 0
}
