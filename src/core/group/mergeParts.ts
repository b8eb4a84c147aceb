import type { Length } from '../measure/length.ts'

/** One row of a kit's own cut list. */
export interface KitPart {
  /** The label within the kit: `B2`, or `B` for all parts of the row. */
  readonly label: string
  readonly name: string
  readonly from: 'sheet' | 'board' | 'strip'
  readonly count: number
  readonly length: Length
  readonly width: Length
  readonly thickness: Length
  /** Of a sheet part; undefined where any material will do. */
  readonly material?: string | undefined
  /** Cut to fit on the day, not ahead. */
  readonly later: boolean
}

/** What one member takes home, as parts. */
export interface Kit {
  readonly number: number
  readonly parts: readonly KitPart[]
}

/** Parts of one size, whoever they are for. Spares are counted apart: they belong to nobody. */
export interface MergedPart {
  /** `G1`, `G2` ... down the list, the largest first. */
  readonly label: string
  /** What it is in the kits: `side panel`, or several names. */
  readonly names: readonly string[]
  readonly from: 'sheet' | 'board' | 'strip'
  readonly length: Length
  readonly width: Length
  readonly thickness: Length
  readonly material?: string | undefined
  readonly later: boolean
  /** For the kits; without spares. */
  readonly count: number
  readonly spare: number
  readonly owners: readonly Owner[]
}

/** How many of a merged part one kit takes, and what they are called in that kit: `K07-B`. */
export interface Owner {
  readonly kit: number
  readonly label: string
  readonly count: number
}

/** How a kit is written on its parts: `K07`. */
export const kitLabel = (kit: number): string => `K${String(kit).padStart(2, '0')}`

/**
 * One list of all kits: parts of the same material and size, cut at the same time, are one row, and each row knows whose
 * they are. A sheet part without grain is the same however it lies. `sparePercent` of the strips of each row are added,
 * rounded up, for rows that are cut ahead: a strip splits easily, a panel hardly ever.
 */
export function mergeParts(kits: readonly Kit[], sparePercent = 0): readonly MergedPart[] {
  const rows = new Map<string, Row>()
  for (const kit of kits)
    for (const part of kit.parts) {
      const lain = layFlat(part)
      const key = JSON.stringify([
        lain.from,
        lain.thickness,
        lain.length,
        lain.width,
        lain.material ?? '',
        lain.later,
      ])
      const owner = { kit: kit.number, label: `${kitLabel(kit.number)}-${part.label}`, count: part.count }
      const row = rows.get(key) ?? { ...lain, names: new Set(), count: 0, owners: [] }
      rows.set(key, row)
      row.names.add(part.name)
      row.count += part.count
      row.owners.push(owner)
    }
  return [...rows.values()].sort(byKindAndSize).map((row, index) => ({
    ...row,
    names: [...row.names],
    label: `G${index + 1}`,
    spare: row.from === 'strip' && !row.later ? Math.ceil((row.count * sparePercent) / 100) : 0,
  }))
}

/** A row while it grows. */
interface Row extends Lain {
  readonly names: Set<string>
  count: number
  readonly owners: Owner[]
}

type Lain = Pick<KitPart, 'from' | 'length' | 'width' | 'thickness' | 'material' | 'later'>

/** The longer side of a sheet part first; a strip's sides each have their own meaning. */
function layFlat({ from, length, width, thickness, material, later }: KitPart): Lain {
  const [long, short] = from === 'sheet' && width > length ? [width, length] : [length, width]
  return { from, length: long, width: short, thickness, ...(material !== undefined && { material }), later }
}

const byKindAndSize = (a: Row, b: Row): number =>
  compare(a.from, b.from) ||
  b.thickness - a.thickness ||
  compare(a.material ?? '', b.material ?? '') ||
  b.width - a.width ||
  b.length - a.length ||
  Number(a.later) - Number(b.later)

const compare = (a: string, b: string): number => (a === b ? 0 : a < b ? -1 : 1)
