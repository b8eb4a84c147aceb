import type { SheetPart, SheetProblem, StockSheet } from '../problem.ts'

/** Parts that share one size and freedom: every one is cut the same way, whatever it is called. */
export interface PartType {
  /** Kerf included, in units of the job. */
  readonly length: number
  readonly width: number
  readonly turnable: boolean
  readonly count: number
  readonly area: number
  readonly worth: number
  readonly sources: readonly PartSource[]
}

/** Where the parts of a type come from; `swapped` when the part's own length is the type's width. */
export interface PartSource {
  readonly id: string
  readonly count: number
  readonly swapped: boolean
}

export interface SheetType {
  readonly id: string
  /** Kerf added once and trim taken off, in units of the job. */
  readonly length: number
  readonly width: number
  readonly area: number
  readonly price: number
  /** How many there are; `Infinity` when as many as are needed can be bought. */
  readonly limit: number
  /** What was trimmed off each edge, in the problem's own unit. */
  readonly trim: number
}

/**
 * A sheet problem made regular: the kerf is added to every part and once to every sheet (so that n parts and n - 1
 * kerfs fit exactly when the n grown parts fit), sizes are divided by their common unit, equal parts are one type.
 */
export interface Job {
  readonly parts: readonly PartType[]
  readonly sheets: readonly SheetType[]
  readonly kerf: number
  /** How many of the problem's units make one unit of the job. */
  readonly unit: number
  readonly keepable: number
  /** All prices are whole multiples of this. */
  readonly coin: number
}

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b))

const trimOf = (sheet: StockSheet, problem: SheetProblem): number => (sheet.net ? 0 : problem.trim)

const unitOf = (problem: SheetProblem): number => {
  const sizes = problem.parts.flatMap((part) => [part.length + problem.kerf, part.width + problem.kerf])
  for (const sheet of problem.stock) {
    const extra = problem.kerf - 2 * trimOf(sheet, problem)
    sizes.push(sheet.length + extra, sheet.width + extra)
  }
  return sizes.filter((size) => size > 0).reduce(commonDivisor, 0) || 1
}

const sheetType = (sheet: StockSheet, problem: SheetProblem, unit: number): SheetType => {
  const trim = trimOf(sheet, problem)
  const length = (sheet.length - 2 * trim + problem.kerf) / unit
  const width = (sheet.width - 2 * trim + problem.kerf) / unit
  const limit = sheet.onHand ?? Number.POSITIVE_INFINITY
  return { id: sheet.id, length, width, area: length * width, price: sheet.price, limit, trim }
}

const typeKey = (length: number, width: number, part: SheetPart): string =>
  `${length} ${width} ${part.turnable || length === width} ${part.worth ?? ''}`

const partTypes = (problem: SheetProblem, unit: number): PartType[] => {
  const found = new Map<string, { part: SheetPart; length: number; width: number; sources: PartSource[] }>()
  for (const part of problem.parts) {
    if (part.count <= 0) continue
    const swapped = part.turnable && part.width > part.length
    const length = ((swapped ? part.width : part.length) + problem.kerf) / unit
    const width = ((swapped ? part.length : part.width) + problem.kerf) / unit
    const key = typeKey(length, width, part)
    const entry = found.get(key) ?? { part, length, width, sources: [] }
    entry.sources.push({ id: part.id, count: part.count, swapped })
    found.set(key, entry)
  }
  return [...found.values()].map(({ part, length, width, sources }) => ({
    length,
    width,
    turnable: part.turnable && length !== width,
    count: sources.reduce((sum, source) => sum + source.count, 0),
    area: length * width,
    worth: part.worth ?? part.length * part.width,
    sources,
  }))
}

/** The job that a problem comes to. Sheets of which there are none are left out. */
export const readJob = (problem: SheetProblem): Job => {
  const unit = unitOf(problem)
  return {
    parts: partTypes(problem, unit),
    sheets: problem.stock
      .map((sheet) => sheetType(sheet, problem, unit))
      .filter((sheet) => sheet.limit > 0 && sheet.length > 0 && sheet.width > 0),
    kerf: problem.kerf / unit,
    unit,
    keepable: problem.keepable / unit,
    coin: problem.stock.map((sheet) => sheet.price).reduce(commonDivisor, 0) || 1,
  }
}

/** Whether a part goes on a bare sheet, in the one orientation or, where it may be turned, the other. */
export const fitsSheet = (part: PartType, sheet: SheetType): boolean =>
  (part.length <= sheet.length && part.width <= sheet.width) ||
  (part.turnable && part.width <= sheet.length && part.length <= sheet.width)
