import {
  type Column,
  createProgram,
  forgetSolver,
  isBreakdown,
  type LinearProgram,
  type Row,
  type Solver,
} from '../linearProgram.ts'
import type { Job, SheetType } from './job.ts'

/** What a part on no sheet costs in the programme, in dearest sheets: more than anybody would pay. */
const PENALTY = 4

const isLimited = (sheet: SheetType): boolean => Number.isFinite(sheet.limit)

/** A row for every part, that there are enough, then one for every sheet that may run out. */
const rowsOf = ({ parts, sheets }: Job): Row[] => [
  ...parts.map((part) => ({ least: part.count, most: Number.POSITIVE_INFINITY })),
  ...sheets.filter(isLimited).map((sheet) => ({ least: Number.NEGATIVE_INFINITY, most: sheet.limit })),
]

/** The linear programme of column generation: the least cost of known patterns that give every part its count. */
export class Master {
  private readonly solver: Solver
  private readonly job: Job
  private readonly dearest: number
  private readonly known = new Set<string>()
  private program: LinearProgram | undefined
  /** Columns that the programme has yet to be given; first a stand-in for each part, so that it has a solution. */
  private waiting: Column[]

  constructor(solver: Solver, job: Job) {
    this.solver = solver
    this.job = job
    this.dearest = Math.max(1, ...job.sheets.map((sheet) => sheet.price))
    this.waiting = job.parts.map((_, part) => ({ price: PENALTY, rows: [part], amounts: [1] }))
  }

  private columnOf(type: number, counts: Map<number, number>): Column {
    const { parts, sheets } = this.job
    const sheet = sheets[type] as SheetType
    const price = sheet.price / this.dearest
    const rows = [...counts.keys()]
    const amounts = [...counts.values()]
    if (!isLimited(sheet)) return { price, rows, amounts }
    const held = parts.length + sheets.slice(0, type).filter(isLimited).length
    return { price, rows: [...rows, held], amounts: [...amounts, 1] }
  }

  /** Adds what one sheet of a type yields, by part; whether it was not yet known. */
  add(type: number, parts: readonly number[]): boolean {
    const counts = new Map<number, number>()
    for (const part of parts) counts.set(part, (counts.get(part) ?? 0) + 1)
    const key = `${type}:${[...counts].sort((a, b) => a[0] - b[0]).join(';')}`
    if (this.known.has(key)) return false
    this.known.add(key)
    this.waiting.push(this.columnOf(type, counts))
    return true
  }

  private solve(): Float64Array | undefined {
    this.program ??= createProgram(this.solver, rowsOf(this.job))
    if (this.waiting.length > 0) this.program.addColumns(this.waiting)
    this.waiting = []
    return this.program.solve()?.worth.subarray(0, this.job.parts.length)
  }

  /**
   * What one more of each part would cost, in dearest sheets; undefined when the programme could not be solved. A
   * solver that breaks down is let go, and its programmes with it.
   */
  prices(): Float64Array | undefined {
    try {
      return this.solve()
    } catch (error) {
      if (!isBreakdown(error)) throw error
      forgetSolver()
      this.program = undefined
      return undefined
    }
  }

  /** Frees the solver's memory. */
  dispose(): void {
    this.program?.dispose()
    this.program = undefined
  }
}
