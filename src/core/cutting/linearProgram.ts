import type { Highs, RawModelApi } from 'highs'
import loadHighs from 'highs'
import type { ShouldStop } from './problem.ts'

/** A column to add: its price, and the rows where it stands with how much. */
export interface Column {
  readonly price: number
  readonly rows: readonly number[]
  readonly amounts: readonly number[]
}

/** A row: the sum over the columns of amount times what stands in it lies between the two, ends included. */
export interface Row {
  readonly least: number
  readonly most: number
}

/** The least sum of prices, how much of each column, and what one more unit asked of each row would add. */
export interface Solution {
  readonly value: number
  readonly amounts: Float64Array
  readonly worth: Float64Array
}

/**
 * A linear programme that grows: the least sum of price times amount, no amount below 0, every row within its
 * bounds. It keeps its basis between calls. Call `dispose` in the end, or its memory stays taken.
 */
export interface LinearProgram {
  readonly addColumns: (columns: readonly Column[]) => void
  readonly setPrices: (prices: Float64Array) => void
  /** `places` must ascend. */
  readonly setRows: (places: readonly number[], rows: readonly Row[]) => void
  /** How little and how much there may be of one column. */
  readonly setColumn: (place: number, least: number, most: number) => void
  /** The optimum; undefined when there is none or it was stopped. Throws when the solver breaks down. */
  readonly solve: (shouldStop?: ShouldStop) => Solution | undefined
  readonly dispose: () => void
}

/** The HiGHS solver of linear and integer programmes (MIT licence), as loaded by `loadSolver`. */
export type Solver = Highs

// The package describes its loader as CommonJS would give it, but Node imports the ES module, whose default it is.
const load = loadHighs as unknown as typeof loadHighs.default

let loading: Promise<Solver> | undefined

/** The solver, loaded once a thread. */
export const loadSolver = (): Promise<Solver> => {
  loading ??= load()
  return loading
}

/** Lets go of a solver that broke down (its memory is then unsound): the next `loadSolver` loads another. */
export const forgetSolver = (): void => {
  loading = undefined
}

/** Whether an error says that the solver broke down: its compiled code trapped, or a call to it failed. */
export const isBreakdown = (error: unknown): boolean =>
  error instanceof Error && (error.name === 'RuntimeError' || error.name === 'HighsError')

interface Packed {
  readonly starts: Int32Array
  readonly indices: Int32Array
  readonly values: Float64Array
}

function pack(columns: readonly Column[]): Packed {
  const starts = new Int32Array(columns.length + 1)
  columns.forEach((column, place) => {
    starts[place + 1] = starts[place]! + column.rows.length
  })
  return {
    starts,
    indices: Int32Array.from(columns.flatMap((column) => column.rows)),
    values: Float64Array.from(columns.flatMap((column) => column.amounts)),
  }
}

function solveWith(solver: Solver, model: RawModelApi, shouldStop?: ShouldStop): Solution | undefined {
  if (shouldStop === undefined) model.run()
  else watch(solver, model, shouldStop)
  if (model.getModelStatus() !== solver.constants.modelStatus.optimal) return undefined
  const solution = model.getSolution()
  if (solution.status === solver.constants.status.error) return undefined
  const { colValue, rowDual } = solution.value
  return { value: model.getObjectiveValue(), amounts: colValue, worth: rowDual }
}

function watch(solver: Solver, model: RawModelApi, shouldStop: ShouldStop): void {
  const { simplexInterrupt } = solver.constants.callbackType
  model.setCallback((event) => {
    if ('interrupt' in event && shouldStop()) event.interrupt()
    return undefined
  })
  model.startCallback(simplexInterrupt)
  try {
    model.run()
  } finally {
    model.stopCallback(simplexInterrupt)
    model.setCallback(undefined)
  }
}

/** An empty programme with these rows. */
export function createProgram(solver: Solver, rows: readonly Row[]): LinearProgram {
  const program = solver.createModel()
  const model = program.raw
  const numRows = rows.length
  for (const [name, value] of [
    ['output_flag', false],
    ['presolve', 'off'],
    ['solver', 'simplex'],
    ['simplex_strategy', 0],
  ] as const)
    model.setOptionValue(name, value)
  model.addRows({
    lower: Float64Array.from(rows, (row) => row.least),
    upper: Float64Array.from(rows, (row) => row.most),
    matrix: {
      format: 'csr',
      numRows,
      numCols: 0,
      starts: new Int32Array(numRows + 1),
      indices: new Int32Array(0),
      values: new Float64Array(0),
    },
  })
  return {
    addColumns: (columns) => {
      const numCols = columns.length
      model.addCols({
        cost: Float64Array.from(columns, (column) => column.price),
        lower: new Float64Array(numCols),
        upper: new Float64Array(numCols).fill(solver.infinity),
        matrix: { format: 'csc', numRows, numCols, ...pack(columns) },
      })
    },
    setPrices: (prices) => {
      model.changeColsCost({ kind: 'range', from: 0, to: prices.length - 1 }, prices)
    },
    setRows: (places, changed) => {
      model.changeRowsBounds(
        { kind: 'set', indices: Int32Array.from(places) },
        changed.map((row) => row.least),
        changed.map((row) => row.most),
      )
    },
    setColumn: (place, least, most) => {
      model.changeColBounds(place, least, most)
    },
    solve: (shouldStop) => solveWith(solver, model, shouldStop),
    dispose: () => program.dispose(),
  }
}

/** A programme whose amounts must be whole, with amounts known to keep within its rows, which are to be beaten. */
export interface WholeProgram {
  readonly columns: readonly Column[]
  readonly rows: readonly Row[]
  readonly start: Float64Array
}

export interface WholeEffort {
  /** By the solver's own clock, and the finest stop there is: it seldom asks `shouldStop`. */
  readonly seconds: number
  readonly seed: number
  readonly shouldStop: ShouldStop
}

export interface WholeSolution {
  /** The best amounts found; undefined when none were. */
  readonly amounts: Float64Array | undefined
  /** Whether the solver, which rounds, takes them for the best there are. */
  readonly settled: boolean
}

function passWhole(solver: Solver, model: RawModelApi, { columns, rows, start }: WholeProgram): void {
  const numCols = columns.length
  model.passModel({
    numCols,
    numRows: rows.length,
    colCost: Float64Array.from(columns, (column) => column.price),
    colLower: new Float64Array(numCols),
    colUpper: new Float64Array(numCols).fill(solver.infinity),
    rowLower: Float64Array.from(rows, (row) => row.least),
    rowUpper: Float64Array.from(rows, (row) => row.most),
    matrix: { format: 'csc', numRows: rows.length, numCols, ...pack(columns) },
    integrality: new Int32Array(numCols).fill(1),
  })
  model.setSolution({ colValue: start })
}

/**
 * The best whole amounts, prices being whole too. Keep it small (some thousand columns): the solver has limited
 * memory and breaks down, throwing, when that runs out.
 */
export function solveWhole(solver: Solver, program: WholeProgram, effort: WholeEffort): WholeSolution {
  const { mipInterrupt } = solver.constants.callbackType
  const model = solver.createModel()
  try {
    model.options.set({
      output_flag: false,
      mip_rel_gap: 0,
      mip_abs_gap: 0.99,
      time_limit: effort.seconds,
      random_seed: effort.seed,
    })
    passWhole(solver, model.raw, program)
    model.run({
      [mipInterrupt]: (event) => {
        if (effort.shouldStop()) event.interrupt()
        return undefined
      },
    })
    const found = model.info.get('primal_solution_status') === 2
    const settled = model.getModelStatus() === solver.constants.modelStatus.optimal
    return { amounts: found ? model.getSolution().colValue : undefined, settled }
  } finally {
    model.dispose()
  }
}
