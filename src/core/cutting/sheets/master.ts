/** A way to cut one sheet, as a column of the linear programme: how much it gives to which rows, and its cost. */
export interface Column {
  readonly cost: number
  readonly rows: readonly number[]
  readonly amounts: readonly number[]
}

/** Below this a reduced cost or a pivot counts as nothing. */
const TINY = 1e-9

/** How many pivots before the inverse is worked out afresh. */
const REFRESH = 100

/**
 * The linear programme of column generation: least cost of columns that together give every row at least its demand.
 * Primal simplex with an explicit inverse; a row's stand-in column, at a price nobody would pay, starts it off.
 * Its prices are only ever used as weights, so rounding errors here cannot make a bound wrong.
 */
export class Master {
  readonly columns: Column[] = []
  /** What one more of each row's demand would cost. */
  readonly prices: Float64Array
  /** Amounts of the basic columns, in basis order. */
  readonly amounts: Float64Array
  /** Basic columns: an index into `columns`, or a slack: -1 - row; stand-ins: -1 - rows - row. */
  readonly basis: Int32Array
  private readonly inverse: Float64Array
  private readonly demand: Float64Array
  private readonly penalty: number
  private readonly entering: Float64Array
  private pivots = 0

  constructor(demand: readonly number[], penalty: number) {
    const size = demand.length
    this.demand = Float64Array.from(demand, (value, row) => value + 1e-7 * (1 + ((row * 7919) % 101)))
    this.penalty = penalty
    this.prices = new Float64Array(size)
    this.amounts = Float64Array.from(this.demand, Math.abs)
    this.basis = Int32Array.from(demand, (value, row) => (value > 0 ? -1 - size - row : -1 - row))
    this.inverse = new Float64Array(size * size)
    for (let row = 0; row < size; row++)
      this.inverse[row * size + row] = (this.demand[row] as number) > 0 ? 1 : -1
    this.entering = new Float64Array(size)
  }

  private costOf(index: number): number {
    if (index >= 0) return (this.columns[index] as Column).cost
    return -1 - index < this.demand.length ? 0 : this.penalty
  }

  private reprice(): void {
    const size = this.demand.length
    this.prices.fill(0)
    for (let row = 0; row < size; row++) {
      const cost = this.costOf(this.basis[row] as number)
      if (cost === 0) continue
      for (let column = 0; column < size; column++)
        this.prices[column] =
          (this.prices[column] as number) + cost * (this.inverse[row * size + column] as number)
    }
  }

  /** What a column would save for each one taken. */
  saving(column: Column): number {
    let gain = -column.cost
    for (let entry = 0; entry < column.rows.length; entry++)
      gain += (this.prices[column.rows[entry] as number] as number) * (column.amounts[entry] as number)
    return gain
  }

  private pickEntering(): number | undefined {
    let best = TINY * 100
    let picked: number | undefined
    for (let row = 0; row < this.demand.length; row++)
      if (-(this.prices[row] as number) > best) {
        best = -(this.prices[row] as number)
        picked = -1 - row
      }
    for (let index = 0; index < this.columns.length; index++) {
      const gain = this.saving(this.columns[index] as Column)
      if (gain <= best) continue
      best = gain
      picked = index
    }
    return picked
  }

  private loadEntering(index: number): void {
    const size = this.demand.length
    const rows = index >= 0 ? (this.columns[index] as Column).rows : [-1 - index]
    const amounts = index >= 0 ? (this.columns[index] as Column).amounts : [-1]
    this.entering.fill(0)
    for (let entry = 0; entry < rows.length; entry++) {
      const column = rows[entry] as number
      const amount = amounts[entry] as number
      for (let row = 0; row < size; row++)
        this.entering[row] =
          (this.entering[row] as number) + amount * (this.inverse[row * size + column] as number)
    }
  }

  private pickLeaving(): number {
    let leaving = -1
    let least = Number.POSITIVE_INFINITY
    for (let row = 0; row < this.demand.length; row++) {
      const rate = this.entering[row] as number
      if (rate <= TINY) continue
      const ratio = (this.amounts[row] as number) / rate
      if (ratio >= least) continue
      least = ratio
      leaving = row
    }
    return leaving
  }

  private pivot(leaving: number, index: number): void {
    const size = this.demand.length
    const scale = 1 / (this.entering[leaving] as number)
    const from = leaving * size
    for (let column = 0; column < size; column++)
      this.inverse[from + column] = (this.inverse[from + column] as number) * scale
    this.amounts[leaving] = (this.amounts[leaving] as number) * scale
    for (let row = 0; row < size; row++) {
      const rate = this.entering[row] as number
      if (row === leaving || rate === 0) continue
      for (let column = 0; column < size; column++)
        this.inverse[row * size + column] =
          (this.inverse[row * size + column] as number) - rate * (this.inverse[from + column] as number)
      this.amounts[row] = Math.max(
        0,
        (this.amounts[row] as number) - rate * (this.amounts[leaving] as number),
      )
    }
    this.basis[leaving] = index
    if (++this.pivots % REFRESH === 0) this.refresh()
  }

  /** Amounts anew from the inverse, so that errors do not pile up in them. */
  private refresh(): void {
    const size = this.demand.length
    for (let row = 0; row < size; row++) {
      let amount = 0
      for (let column = 0; column < size; column++)
        amount += (this.inverse[row * size + column] as number) * (this.demand[column] as number)
      this.amounts[row] = Math.max(0, amount)
    }
  }

  /** Pivots until no known column saves anything (or `most` pivots). Leaves `prices` up to date. */
  solve(most: number): void {
    for (let turn = 0; turn < most; turn++) {
      this.reprice()
      const index = this.pickEntering()
      if (index === undefined) return
      this.loadEntering(index)
      const leaving = this.pickLeaving()
      if (leaving < 0) return
      this.pivot(leaving, index)
    }
    this.reprice()
  }
}
