import type { Length } from '../measure/length.ts'
import type { Gravity, Species } from '../moisture/species.ts'

/** kg/m3 of one lb/ft3 (0.45359237 kg over 0.3048 m cubed). */
export const POUND_PER_CUBIC_FOOT = 0.45359237 / 0.3048 ** 3

/** What a sheet material weighs, kg/m3, the first row whose `upTo` the thickness does not pass. */
export interface PanelDensity {
  readonly material: string
  readonly upTo?: Length | undefined
  readonly density: number
}

/**
 * kg/m3 of wood at `moisture` percent, from the gravity of its ovendry volume: 1000 G / (1 + 0.009 G m) x (1 + m / 100), the
 * form of the NDS for Wood Construction (62.4 for 1000 gives lb/ft3). Throws for a moisture below 0.
 */
export function woodDensity(gravity: Gravity, moisture: number): number {
  if (!(moisture >= 0)) throw new RangeError(`moisture must be at least 0 %: ${moisture}`)
  const dry = ovendryGravity(gravity)
  return ((1000 * dry) / (1 + 0.009 * dry * moisture)) * (1 + moisture / 100)
}

/** The gravity of the ovendry volume; from that at 12 % by the same form turned round. */
export const ovendryGravity = ({ value, basis }: Gravity): number =>
  basis === 'ovendry' ? value : value / (1 - 0.009 * 12 * value)

/** The gravity of the volume at 12 % moisture; from that of the ovendry volume by the same form. */
export const airDryGravity = ({ value, basis }: Gravity): number =>
  basis === 'at 12 %' ? value : value / (1 + 0.009 * 12 * value)

/** kg/m3 of a wood at `moisture` percent; undefined where no source gives its gravity. */
export const speciesDensity = ({ gravity }: Species, moisture: number): number | undefined =>
  gravity && woodDensity(gravity, moisture)

/** kg/m3 of a sheet of that material and thickness; undefined where no row has the material. */
export const panelDensity = (
  material: string,
  thickness: Length,
  rows: readonly PanelDensity[],
): number | undefined =>
  rows.find(
    (row) =>
      row.material.toLowerCase() === material.trim().toLowerCase() && thickness <= (row.upTo ?? Infinity),
  )?.density
