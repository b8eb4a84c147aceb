import { type Length, nanometres } from '../measure/length.ts'

/** What plywood grows in its plane for each 1 % of humidity: 0.0002 in/in for 10 % (APA, quoted by flooring fitters). */
const PLYWOOD_IN_PLANE = 0.00002

/** What MDF grows for each 1 % of moisture: 0.05 % in its plane, 0.35 % through it (MDF trade association, mdf-info.eu). */
const MDF = { plane: 0.0005, thickness: 0.0035 } as const

/** Change of a sheet of plywood along or across it as the air goes `from` to `to` percent humidity; warmth does next to nothing. */
export const plywoodMovement = (size: Length, from: number, to: number): Length =>
  nanometres(size * PLYWOOD_IN_PLANE * (to - from))

/** Change of MDF in its plane or through its thickness as its moisture goes `from` to `to` percent. */
export const mdfMovement = (size: Length, direction: keyof typeof MDF, from: number, to: number): Length =>
  nanometres(size * MDF[direction] * (to - from))

/**
 * What a sheet's thickness grows for each 1 % of moisture, as a part of it. MDF by its own rate; plywood by its wood's
 * radial growth, since peeled veneer lies with its rings flat and its thickness is the radius (own derivation).
 */
export const thicknessGrowth = (sheet: 'mdf' | { readonly radial: number }): number =>
  sheet === 'mdf' ? MDF.thickness : sheet.radial
