import type { Length } from '../measure/length.ts'
import type { Region } from '../stock/stock.ts'

/** Thin wire from a nailer, nails by hammer, wood screws. */
export const FASTENER_KINDS = ['brad', 'nail', 'screw'] as const
export type FastenerKind = (typeof FASTENER_KINDS)[number]

/** Drill sizes of a wood screw: its root, the clear hole in the held piece, the pilots in soft and in hard wood. */
export interface ScrewHoles {
  readonly root: Length
  readonly clear: Length
  readonly soft: Length
  readonly hard: Length
}

/** One length of one gauge as sold. */
export interface FastenerSize {
  readonly kind: FastenerKind
  readonly region: Region
  /** `18 gauge`, `6d`, `#8` */
  readonly name: string
  readonly length: Length
  /** Of the wire or the shank. */
  readonly diameter: Length
  /** The thickest piece that this gauge is chosen to hold; nails go by their length alone. */
  readonly heldUpTo?: Length | undefined
  readonly boxes: readonly number[]
  readonly holes?: ScrewHoles | undefined
}

/** What makes a fastener hold and keeps it inside. */
export interface FastenerRules {
  /** How far short of the far face the tip stays. */
  readonly tipShort: Length
  /** The least that goes into the receiver, without glue and with. */
  readonly leastBite: Length
  readonly leastBiteGlued: Length
  /** Length as a multiple of the held piece. */
  readonly times: Readonly<Record<FastenerKind, number>>
  /** More length into end grain. */
  readonly endGrainMore: Length
  /** Least bite of a screw in the edge of a sheet. */
  readonly edgeBite: Length
}

/** Least distances in diameters: from an edge, from an end, from the next in the row. */
export interface Distances {
  readonly edge: number
  readonly end: number
  readonly row: number
}

export interface FastenerDistances {
  readonly drilled: Distances
  readonly undrilled: Distances
  readonly leastEnd: Length
  /** Furthest apart along a joint. */
  readonly apart: Readonly<Record<FastenerKind, Length>>
}

/** Every size sold and every rule, from config/fasteners.yaml. */
export interface FastenerTables {
  readonly sizes: readonly FastenerSize[]
  readonly rules: FastenerRules
  readonly distances: FastenerDistances
}
