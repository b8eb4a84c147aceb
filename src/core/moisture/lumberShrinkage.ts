/** Percent of moisture between which the form below holds. */
export const LUMBER_SHRINKAGE_SPAN = { low: 8, high: 19 } as const

/**
 * Percent that green softwood lumber has shrunk across its width and its thickness when it is down to `moisture` percent, 8 to
 * 19: 6.031 - .215 M and 5.062 - .181 M (Green, USDA FPL-RP-489, the basis of PS 20). Undefined outside that span.
 */
export function lumberShrinkage(
  moisture: number,
): { readonly width: number; readonly thickness: number } | undefined {
  const { low, high } = LUMBER_SHRINKAGE_SPAN
  if (!(moisture >= low && moisture <= high)) return undefined
  return { width: 6.031 - 0.215 * moisture, thickness: 5.062 - 0.181 * moisture }
}
