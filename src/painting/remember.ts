import { createHash } from 'node:crypto'

/** `picture` is one as JSON. */
type Paint = (picture: string) => Promise<Uint8Array>

/**
 * Paints as `paint` does, and remembers the pictures that were asked for last, up to `mostBytes` of them: a plan is looked at
 * again and again. The same picture asked for twice at once is painted once. What could not be painted is tried anew.
 */
export function remember(paint: Paint, mostBytes: number): Paint {
  const pictures = new Map<string, Promise<Uint8Array>>()
  // Of those that are painted; the one asked for longest ago comes first.
  const sizes = new Map<string, number>()
  let bytes = 0
  const forget = (name: string): void => {
    pictures.delete(name)
    bytes -= sizes.get(name) ?? 0
    sizes.delete(name)
  }
  const keep = (name: string, { length }: Uint8Array): void => {
    sizes.set(name, length)
    bytes += length
    for (const oldest of sizes.keys()) {
      if (bytes <= mostBytes) return
      forget(oldest)
    }
  }
  return (picture) => {
    const name = createHash('sha256').update(picture).digest('base64')
    const known = pictures.get(name)
    if (known) {
      const size = sizes.get(name)
      if (size !== undefined) {
        sizes.delete(name)
        sizes.set(name, size)
      }
      return known
    }
    const painted = paint(picture)
    pictures.set(name, painted)
    painted.then(
      (picture) => keep(name, picture),
      () => forget(name),
    )
    return painted
  }
}
