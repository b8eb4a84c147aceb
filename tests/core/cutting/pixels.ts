import type { Rectangle } from '../../../src/core/cutting/problem.ts'

/** Paints rectangles into a grid, each grown by the kerf on its far sides; false when two meet or one sticks out. */
export function paintsApart(rectangles: readonly Rectangle[], whole: Rectangle, kerf: number): boolean {
  const seen = new Set<string>()
  for (const { x, y, length, width } of rectangles) {
    if (x < whole.x || y < whole.y) return false
    if (x + length > whole.x + whole.length || y + width > whole.y + whole.width) return false
    for (let i = x; i < x + length + kerf; i += 1)
      for (let j = y; j < y + width + kerf; j += 1) {
        if (seen.has(`${i},${j}`)) return false
        seen.add(`${i},${j}`)
      }
  }
  return true
}

type Span = readonly [number, number]

/** Whether some sequence of blade-wide cuts leaves every rectangle alone: every cut of every region is tried. */
export function canSawApart(rectangles: readonly Rectangle[], whole: Rectangle, kerf: number): boolean {
  const tried = new Map<string, boolean>()
  const touches = (x: Span, y: Span): Rectangle[] =>
    rectangles.filter((r) => r.x < x[1] && x[0] < r.x + r.length && r.y < y[1] && y[0] < r.y + r.width)
  const saw = (x: Span, y: Span): boolean => {
    const key = `${x};${y}`
    const known = tried.get(key)
    if (known !== undefined) return known
    const inside = touches(x, y)
    const answer = inside.length <= 1 || sawEither(x, y, inside.length)
    tried.set(key, answer)
    return answer
  }
  const sawEither = (x: Span, y: Span, count: number): boolean => {
    const parts = (a: [Span, Span], b: [Span, Span]): boolean => {
      const [first, second] = [touches(...a).length, touches(...b).length]
      return first > 0 && second > 0 && first + second === count && saw(...a) && saw(...b)
    }
    const isWhole = (a: [Span, Span], b: [Span, Span], blade: Rectangle[]): boolean =>
      blade.length === 0 && parts(a, b)
    for (let at = x[0] + 1; at < x[1]; at += 1) {
      const blade = kerf > 0 ? touches([at, at + kerf], y) : []
      if (isWhole([[x[0], at], y], [[at + kerf, x[1]], y], blade)) return true
    }
    for (let at = y[0] + 1; at < y[1]; at += 1) {
      const blade = kerf > 0 ? touches(x, [at, at + kerf]) : []
      if (isWhole([x, [y[0], at]], [x, [at + kerf, y[1]]], blade)) return true
    }
    return false
  }
  return saw([whole.x, whole.x + whole.length], [whole.y, whole.y + whole.width])
}
