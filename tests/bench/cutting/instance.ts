import type { LengthProblem, SheetProblem } from '../../../src/core/cutting/problem.ts'

/** What is known of an instance's optimum: the best value anyone reached, and the bound on it. */
export interface Known {
  readonly best: number
  readonly bound: number
  readonly proven: boolean
}

interface Common {
  readonly name: string
  readonly set: string
  /** Published variant: `1D`, `OG` (fixed, guillotine), `RG` (quarter turns, guillotine). */
  readonly variant: string
  readonly known: Known
}

/** One published instance in one variant, as a problem of ours. */
export type Instance =
  | (Common & { readonly kind: 'lengths'; readonly problem: LengthProblem })
  | (Common & { readonly kind: 'sheets' | 'most'; readonly problem: SheetProblem })

interface RawKnown {
  readonly bins?: number
  readonly cost?: number
  readonly value?: number
  readonly lowerBound?: number
  readonly upperBound?: number
  readonly provenOptimal: boolean
  readonly variant: string
}

/** An entry as the files have it. */
export interface Entry {
  readonly name: string
  readonly set?: string
  readonly kerf?: number
  readonly stock?: { readonly length: number }
  readonly stocks?: readonly { readonly length: number; readonly cost: number }[]
  readonly sheet?: { readonly w: number; readonly h: number }
  readonly items: readonly {
    readonly length?: number
    readonly w?: number
    readonly h?: number
    readonly count: number | null
    readonly value?: number
  }[]
  readonly known: RawKnown
  readonly alsoKnown?: readonly RawKnown[]
}

function readKnown(raw: RawKnown): Known {
  const best = raw.bins ?? raw.cost ?? raw.value ?? Number.NaN
  return { best, bound: raw.lowerBound ?? raw.upperBound ?? best, proven: raw.provenOptimal }
}

const decimals = (value: number): number => `${value}`.split('.')[1]?.length ?? 0

/** The power of ten that makes every size whole. */
function wholeScale(sizes: readonly number[]): number {
  return 10 ** Math.max(...sizes.map(decimals))
}

const usable = (entry: Entry): boolean => entry.known !== undefined && Array.isArray(entry.items)

function readLengths(entry: Entry): Instance {
  const stocks = entry.stocks ?? [{ length: entry.stock!.length, cost: 1 }]
  const sizes = [...stocks.map((one) => one.length), ...entry.items.map((item) => item.length ?? 0)]
  const scale = wholeScale([...sizes, entry.kerf ?? 0])
  const whole = (size: number): number => Math.round(size * scale)
  const problem: LengthProblem = {
    parts: entry.items.map((item, index) => ({
      id: `P${index + 1}`,
      length: whole(item.length ?? 0),
      count: item.count ?? 1,
    })),
    stock: stocks.map((one, index) => ({ id: `S${index + 1}`, length: whole(one.length), price: one.cost })),
    kerf: whole(entry.kerf ?? 0),
    trim: 0,
    keepable: Math.ceil(whole(stocks[0]!.length) / 10),
  }
  const set = entry.set ?? 'worked examples'
  return { kind: 'lengths', name: entry.name, set, variant: '1D', known: readKnown(entry.known), problem }
}

const mostCopies = (sheet: { w: number; h: number }, w: number, h: number): number =>
  Math.floor(sheet.w / w) * Math.floor(sheet.h / h)

function readSheetProblem(entry: Entry, turnable: boolean): SheetProblem {
  const sheet = entry.sheet!
  return {
    parts: entry.items.map(({ w = 0, h = 0, count, value }, index) => ({
      id: `P${index + 1}`,
      length: w,
      width: h,
      count: count ?? mostCopies(sheet, w, h),
      turnable,
      worth: value,
    })),
    stock: [{ id: 'S1', length: sheet.w, width: sheet.h, price: 1 }],
    kerf: entry.kerf ?? 0,
    trim: 0,
    keepable: Math.ceil(Math.min(sheet.w, sheet.h) / 10),
  }
}

const VARIANTS = { OG: 'OG', RG: 'RG', 'OG-unconstrained': 'OG' } as const

function readSheets(entry: Entry): Instance[] {
  const isMost = entry.items.some((item) => item.value !== undefined)
  return [entry.known, ...(entry.alsoKnown ?? [])].flatMap((raw): Instance[] => {
    const variant = VARIANTS[raw.variant as keyof typeof VARIANTS]
    if (variant === undefined || (isMost && variant === 'RG')) return []
    const problem = readSheetProblem(entry, variant === 'RG')
    const set = entry.set ?? 'worked examples'
    const stock = isMost ? problem.stock.map((sheet) => ({ ...sheet, onHand: 1 })) : problem.stock
    return [
      {
        kind: isMost ? 'most' : 'sheets',
        name: entry.name,
        set,
        variant,
        known: readKnown(raw),
        problem: { ...problem, stock },
      },
    ]
  })
}

/** The instances of one entry: one for lengths, one for each variant that we solve for sheets. */
export function readEntry(entry: Entry): Instance[] {
  if (!usable(entry)) return []
  return entry.sheet === undefined ? [readLengths(entry)] : readSheets(entry)
}
