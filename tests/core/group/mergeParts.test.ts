import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Kit, type KitPart, kitLabel, mergeParts } from '../../../src/core/group/mergeParts.ts'
import { inches, type Length, nanometres } from '../../../src/core/measure/length.ts'

const length = fc.constantFrom(...[6, 12, 12.125, 18, 24].map((size) => nanometres(size * 25_400_000)))
const kitPart: fc.Arbitrary<KitPart> = fc.record({
  label: fc.constantFrom('A', 'B', 'C'),
  name: fc.constantFrom('side panel', 'end rail'),
  from: fc.constantFrom('sheet', 'strip'),
  count: fc.integer({ min: 1, max: 9 }),
  length,
  width: length,
  thickness: fc.constantFrom(inches(1, 2), inches(3, 4)),
  material: fc.constantFrom(undefined, 'plywood', 'MDF'),
  later: fc.boolean(),
})
const kits: fc.Arbitrary<readonly Kit[]> = fc
  .array(fc.array(kitPart, { maxLength: 8 }), { maxLength: 8 })
  .map((all) => all.map((parts, index) => ({ number: index + 1, parts })))

/** Every single piece of a list, by what can be seen of it on the bench. */
const pieces = (
  parts: readonly (Pick<KitPart, 'from' | 'thickness' | 'material' | 'later' | 'count'> & {
    readonly length: Length
    readonly width: Length
  })[],
): readonly string[] =>
  parts
    .flatMap((part) => {
      const sides = [part.length, part.width]
      if (part.from === 'sheet') sides.sort((a, b) => b - a)
      const looks = JSON.stringify([part.from, ...sides, part.thickness, part.material ?? '', part.later])
      return Array.from({ length: part.count }, () => looks)
    })
    .sort()

describe('mergeParts', () => {
  it('has the same pieces as the single lists together', () => {
    fc.assert(
      fc.property(kits, (all) => {
        expect(pieces(mergeParts(all))).toEqual(pieces(all.flatMap(({ parts }) => parts)))
      }),
    )
  })

  it('knows whose each piece is', () => {
    fc.assert(
      fc.property(kits, (all) => {
        const merged = mergeParts(all)
        for (const { count, owners } of merged)
          expect(owners.reduce((sum, owner) => sum + owner.count, 0)).toBe(count)
        for (const kit of all) {
          const own = merged.flatMap((row) =>
            row.owners.filter((owner) => owner.kit === kit.number).map(({ count }) => ({ ...row, count })),
          )
          expect(pieces(own)).toEqual(pieces(kit.parts))
        }
      }),
    )
  })

  it('has one row a size, with a label of its own', () => {
    fc.assert(
      fc.property(kits, (all) => {
        const merged = mergeParts(all)
        const looks = merged.map((row) => pieces([{ ...row, count: 1 }])[0])
        expect(new Set(looks).size).toBe(merged.length)
        expect(new Set(merged.map(({ label }) => label)).size).toBe(merged.length)
      }),
    )
  })

  it('does not depend on the order in which members came, but for the order of owners', () => {
    fc.assert(
      fc.property(kits, (all) => {
        const rows = (list: readonly Kit[]) =>
          mergeParts(list).map(({ owners: _owners, names: _names, ...row }) => row)
        expect(rows([...all].reverse())).toEqual(rows(all))
      }),
    )
  })

  it('adds spare strips that are cut ahead, rounded up, and no spare panel', () => {
    fc.assert(
      fc.property(kits, fc.integer({ min: 0, max: 100 }), (all, percent) => {
        for (const { from, later, count, spare } of mergeParts(all, percent)) {
          const owed = from === 'strip' && !later ? (count * percent) / 100 : 0
          expect(spare).toBeGreaterThanOrEqual(owed)
          expect(spare).toBeLessThan(owed + 1)
        }
      }),
    )
  })

  it('writes a kit on its parts', () => {
    const part = { ...PANEL, label: 'B2' }
    const [row] = mergeParts([
      { number: 7, parts: [part] },
      { number: 12, parts: [{ ...part, length: part.width, width: part.length }] },
    ])
    expect(row?.owners.map(({ label }) => label)).toEqual(['K07-B2', 'K12-B2'])
    expect(kitLabel(112)).toBe('K112')
  })
})

const PANEL: KitPart = {
  label: 'A',
  name: 'side panel',
  from: 'sheet',
  count: 2,
  length: inches(24),
  width: inches(12),
  thickness: inches(1, 2),
  later: false,
}
