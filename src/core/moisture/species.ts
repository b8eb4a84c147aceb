/** How a board was sawn: growth rings flat with the face, upright in it, or between the two. */
export const CUTS = ['flat', 'rift', 'quarter'] as const
export type Cut = (typeof CUTS)[number]

/** What a piece grows across the grain for each 1 % of moisture between 6 and 14 %, as a part of its size. */
export interface Growth {
  /** Quarter-sawn width; flat-sawn thickness. */
  readonly radial: number
  /** Flat-sawn width; quarter-sawn thickness. */
  readonly tangential: number
  readonly fromMemory: boolean
}

/** Percent that wood shrinks from green to ovendry, as a part of the green size. */
export interface Shrinkage {
  readonly radial: number
  readonly tangential: number
  readonly volume?: number | undefined
}

/** Specific gravity: ovendry weight over the volume ovendry, or over the volume at 12 % moisture. */
export interface Gravity {
  readonly value: number
  readonly basis: 'ovendry' | 'at 12 %'
  readonly fromMemory: boolean
}

/** A wood, or a group of woods that is graded and sold as one; each figure where a source gives it. */
export interface Species {
  readonly name: string
  readonly alsoCalled: readonly string[]
  readonly kind: 'softwood' | 'hardwood'
  readonly growth?: Growth | undefined
  readonly shrinkage?: Shrinkage | undefined
  readonly gravity?: Gravity | undefined
}

/** The wood of that name or other name, whatever its capitals; undefined where there is none. */
export function findSpecies(name: string, species: readonly Species[]): Species | undefined {
  const wanted = name.trim().toLowerCase()
  return species.find((each) => [each.name, ...each.alsoCalled].some((own) => own.toLowerCase() === wanted))
}

/**
 * Change of size for each 1 % of moisture, of wood that shrinks `shrinkage` percent from green to ovendry: S / (3000 - 20 S).
 * It shrinks in a straight line from 30 %, and the change is measured on the size at 10 %. Gives Table 13-5 of the Wood
 * Handbook (GTR-190) from its Table 4-3.
 */
export const growthOf = (shrinkage: number): number => shrinkage / (3000 - 20 * shrinkage)

/** The same turned round: percent shrinkage from green to ovendry of wood that grows `growth` for each 1 %. */
export const shrinkageOf = (growth: number): number => (3000 * growth) / (1 + 20 * growth)

/** Growth of the wide face of a board of this cut; the mean of the two where the rings run aslant. */
export function acrossFace({ radial, tangential }: Growth, cut: Cut): number {
  if (cut === 'rift') return (radial + tangential) / 2
  return cut === 'flat' ? tangential : radial
}
