import fc from 'fast-check'
import { inches, type Length, millimetres } from '../../../src/core/measure/length.ts'
import type { Spec } from '../../../src/core/plan.ts'

/** A length from `low` to `high` in mm: whole tenths, sixty-fourths of an inch, or any nanometre at all. */
export function lengths(low: number, high: number): fc.Arbitrary<Length> {
  return fc.oneof(
    fc.integer({ min: low * 10, max: high * 10 }).map((tenths) => millimetres(tenths / 10)),
    fc
      .integer({ min: Math.ceil((low / 25.4) * 64), max: Math.floor((high / 25.4) * 64) })
      .map((sixtyFourths) => inches(sixtyFourths, 64)),
    fc.integer({ min: low * 1_000_000, max: high * 1_000_000 }).map((count) => count as Length),
  )
}

const objects: fc.Arbitrary<Spec['object']> = fc.oneof(
  fc.record({
    shape: fc.constant('rectangle' as const),
    length: lengths(150, 2000),
    width: lengths(150, 2000),
  }),
  fc.record({ shape: fc.constant('round' as const), diameter: lengths(150, 1500) }),
)

/** Surrounds that can all be built: strips wide enough for a lip, faces and heights wide enough for the strips. */
export const specs: fc.Arbitrary<Spec> = fc
  .record({
    object: objects,
    height: lengths(260, 1500),
    clearance: lengths(0, 80),
    sheet: lengths(3, 25),
    strip: lengths(3, 25),
    lip: lengths(1, 20),
    corner: fc.constantFrom('captured' as const, 'cleated' as const, 'butted' as const),
    braces: fc.constantFrom('ends' as const, 'sides' as const, 'all' as const, 'none' as const),
    grooves: fc.integer({ min: 0, max: 9 }),
    fit: lengths(0, 3),
    kerf: lengths(1, 4),
  })
  .map(({ lip, ...spec }) => ({ ...spec, width: (spec.sheet + spec.strip + lip) as Length }))

/** A plain case with round numbers, to change one thing of. */
export const plain: Spec = {
  object: { shape: 'rectangle', length: inches(17), width: inches(13) },
  height: inches(15),
  clearance: inches(1),
  sheet: inches(1, 2),
  strip: inches(1, 2),
  width: inches(3, 2),
  corner: 'captured',
  braces: 'none',
  grooves: 0,
  fit: inches(1, 32),
  kerf: inches(1, 8),
}

const FITTED = lengths(0, 3)

/** Surrounds with every other corner and whatever else may be asked of them; most can be built. */
export const richSpecs: fc.Arbitrary<Spec> = fc
  .record({
    base: specs,
    corner: fc.constantFrom(
      'captured' as const,
      'cleated' as const,
      'butted' as const,
      'halved' as const,
      'bracketed' as const,
    ),
    front: fc.option(
      fc.record({
        height: fc.option(lengths(180, 260), { nil: undefined }),
        braced: fc.option(fc.boolean(), { nil: undefined }),
        grooves: fc.option(fc.integer({ min: 0, max: 5 }), { nil: undefined }),
      }),
      { nil: undefined },
    ),
    lid: fc.option(
      fc.oneof(
        fc.record({
          kind: fc.constant('inset' as const),
          handle: fc.constantFrom('strip' as const, 'notch' as const, undefined),
        }),
        fc.record({
          kind: fc.constant('overlapping' as const),
          handle: fc.constantFrom('strip' as const, undefined),
        }),
      ),
      { nil: undefined },
    ),
    bottom: fc.option(
      fc.record({
        on: fc.constantFrom('cleats' as const, 'feet' as const),
        drain: fc.option(fc.record({ diameter: lengths(3, 25), spacing: lengths(150, 600) }), {
          nil: undefined,
        }),
      }),
      { nil: undefined },
    ),
    cord: fc.option(
      fc.record({
        face: fc.constantFrom('end' as const, 'side' as const, 'front' as const),
        width: lengths(10, 60),
        height: lengths(10, 40),
      }),
      { nil: undefined },
    ),
    gap: fc.option(FITTED, { nil: undefined }),
  })
  // A lid lies level, so it goes with a front only as high as the box.
  .map(({ base, front, lid, ...rest }) => ({
    ...base,
    ...rest,
    lid,
    front: lid && front ? { ...front, height: undefined } : front,
  }))
