import type { Instance } from './instance.ts'

/**
 * The same instance for a blade `kerf` wide: every size and the stock grown so that none vanishes, then shortened
 * by the kerf. n pieces need n - 1 kerfs, so the optimum must not move.
 */
export function withKerf(instance: Instance, kerf: number): Instance {
  if (kerf === 0 || instance.problem.kerf > 0) return instance
  const { name, set, variant, known } = instance
  const common = { name, set, variant: `${variant} kerf ${kerf}`, known }
  if (instance.kind === 'lengths') {
    const { parts, stock, keepable } = instance.problem
    const scale = Math.min(...parts.map((part) => part.length)) > kerf ? 1 : kerf + 1
    const shrink = <Piece extends { readonly length: number }>(piece: Piece): Piece => ({
      ...piece,
      length: piece.length * scale - kerf,
    })
    const problem = { parts: parts.map(shrink), stock: stock.map(shrink), kerf, trim: 0, keepable }
    return { ...common, kind: 'lengths', problem }
  }
  const { parts, stock, keepable } = instance.problem
  const scale = Math.min(...parts.flatMap((part) => [part.length, part.width])) > kerf ? 1 : kerf + 1
  const shrink = <Piece extends { readonly length: number; readonly width: number }>(
    piece: Piece,
  ): Piece => ({
    ...piece,
    length: piece.length * scale - kerf,
    width: piece.width * scale - kerf,
  })
  const problem = {
    // What a part is worth is its area in the published size, not in the shortened one.
    parts: parts.map((part) => ({ ...shrink(part), worth: part.worth ?? part.length * part.width })),
    stock: stock.map(shrink),
    kerf,
    trim: 0,
    keepable,
  }
  return { ...common, kind: instance.kind, problem }
}
