import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fewCautions } from '../../src/bot/fewCautions.ts'

const some = (count: number) =>
  Array.from({ length: count }, (_, index) => ({ id: `c${index}`, text: `mind ${index}`, task: 'rip' }))

describe('fewCautions', () => {
  it('says up to four as they are', () => {
    for (const count of [0, 1, 3, 4])
      expect(fewCautions(some(count))).toEqual({ cautions: some(count), buttons: [] })
  })

  it('keeps the first three whole and loses none of the rest', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 20 }), (count) => {
        const { cautions, buttons } = fewCautions(some(count))
        expect(cautions.slice(0, 3)).toEqual(some(3))
        expect(cautions).toHaveLength(4)
        const [button] = buttons
        const rest = some(count)
          .slice(3)
          .map(({ id }) => id)
        expect(button?.line).toBe(`cautions named=${rest.join(', ')}`)
        expect(cautions[3]?.text).toBe(`And ${count - 3} more: ${rest.join(', ')}`)
      }),
    )
  })
})
