/** Pairs of things by their indices, only the densest so many; `limit` is how many. Made once and used again and again. */
export class Densest {
  private size = 0
  /** Nothing less dense is among the pairs any more. */
  private least = 0
  private readonly limit: number
  private readonly firsts: Int32Array
  private readonly seconds: Int32Array
  private readonly densities: Float64Array

  constructor(limit: number) {
    this.limit = limit
    // Room for many more than are kept, as each thinning out sorts them all.
    this.firsts = new Int32Array(8 * limit)
    this.seconds = new Int32Array(8 * limit)
    this.densities = new Float64Array(8 * limit)
  }

  add(first: number, second: number, density: number): void {
    if (density < this.least) return
    const { size } = this
    this.firsts[size] = first
    this.seconds[size] = second
    this.densities[size] = density
    if (++this.size === this.densities.length) this.thin()
  }

  private thin(): void {
    const { size, limit, firsts, seconds, densities } = this
    const sorted = densities.slice(0, size).sort()
    const least = sorted[size - limit]!
    let ties = 1
    while (ties < limit && sorted[size - limit + ties] === least) ties++
    let kept = 0
    for (let at = 0; at < size; at++) {
      if (densities[at]! < least || (densities[at] === least && ties-- <= 0)) continue
      firsts[kept] = firsts[at]!
      seconds[kept] = seconds[at]!
      densities[kept++] = densities[at]!
    }
    this.least = least
    this.size = kept
  }

  /** Gives them, the densest first, and forgets them. */
  take<T>(read: (first: number, second: number) => T): T[] {
    if (this.size > this.limit) this.thin()
    const { size, densities, firsts, seconds } = this
    const order = Array.from({ length: size }, (_, at) => at).sort((a, b) => densities[b]! - densities[a]!)
    this.size = 0
    this.least = 0
    return order.map((at) => read(firsts[at]!, seconds[at]!))
  }
}
