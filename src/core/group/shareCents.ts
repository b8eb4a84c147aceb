/**
 * Shares `cents` by `weights`, each share whole cents and all together exactly `cents`. Every share is rounded down, and
 * the cents that are left go one each to those whose share lost most by that, the first of equals first (the method of
 * largest remainders). Where all weights are nothing, all count alike. Throws a RangeError for a weight below nothing, or
 * for cents that are to be shared by nobody.
 */
export function shareCents(cents: number, weights: readonly number[]): readonly number[] {
  if (weights.length === 0 && cents !== 0) throw new RangeError('nobody is there to share with')
  if (weights.some((weight) => !(weight >= 0))) throw new RangeError('a weight is below nothing')
  // Whole numbers all the way: a share of 12 345 678 cents by areas in mm2 is past what a float divides exactly.
  const thousandths = weights.map((weight) => BigInt(Math.round(weight * 1000)))
  const parts = thousandths.some((part) => part > 0n) ? thousandths : thousandths.map(() => 1n)
  const whole = parts.reduce((sum, part) => sum + part, 0n)
  const exact = parts.map((part) => ({
    share: (BigInt(cents) * part) / whole,
    lost: (BigInt(cents) * part) % whole,
  }))
  const left = cents - exact.reduce((sum, { share }) => sum + Number(share), 0)
  const order = exact
    .map(({ lost }, index) => ({ lost, index }))
    .sort((a, b) => (a.lost === b.lost ? a.index - b.index : a.lost < b.lost ? 1 : -1))
  const more = new Set(order.slice(0, left).map(({ index }) => index))
  return exact.map(({ share }, index) => Number(share) + (more.has(index) ? 1 : 0))
}
