/** A queue that gives the number with the highest rank first. */
export class RankedQueue {
  private readonly items: number[] = []
  private readonly ranks: number[] = []

  get size(): number {
    return this.items.length
  }

  /** The highest rank waiting; minus infinity when nothing waits. */
  get highest(): number {
    return this.ranks[0] ?? Number.NEGATIVE_INFINITY
  }

  push(item: number, rank: number): void {
    let at = this.items.length
    while (at > 0) {
      const above = (at - 1) >> 1
      if ((this.ranks[above] as number) >= rank) break
      this.move(above, at)
      at = above
    }
    this.items[at] = item
    this.ranks[at] = rank
  }

  pop(): number | undefined {
    const top = this.items[0]
    const item = this.items.pop()
    const rank = this.ranks.pop()
    if (item === undefined || rank === undefined || this.items.length === 0) return top
    this.sink(item, rank)
    return top
  }

  private sink(item: number, rank: number): void {
    const size = this.items.length
    let at = 0
    for (let below = 1; below < size; below = 2 * at + 1) {
      if (below + 1 < size && (this.ranks[below + 1] as number) > (this.ranks[below] as number)) below++
      if ((this.ranks[below] as number) <= rank) break
      this.move(below, at)
      at = below
    }
    this.items[at] = item
    this.ranks[at] = rank
  }

  private move(from: number, to: number): void {
    this.items[to] = this.items[from] as number
    this.ranks[to] = this.ranks[from] as number
  }
}
