import { describe, expect, it } from 'vitest'
import { type Group, groupParts, type ListedPart, type StockItem } from '../../../src/core/cutting/job.ts'
import { INCH, type Length, MILLIMETRE, nanometres } from '../../../src/core/measure/length.ts'

const mm = (value: number): Length => nanometres(value * MILLIMETRE)
const inch = (value: number): Length => nanometres(value * INCH)

const saw = { kerf: mm(3), sheetTrim: mm(10), boardTrim: mm(5), keepable: mm(300) }

const part = (about: Partial<ListedPart> = {}): ListedPart => ({
  label: 'A',
  count: 1,
  from: 'sheet',
  length: mm(600),
  width: mm(300),
  thickness: mm(12),
  grain: false,
  later: false,
  ...about,
})

const item = (about: Partial<StockItem> = {}): StockItem => ({
  label: 'S',
  kind: 'sheet',
  length: mm(2440),
  width: mm(1220),
  thickness: mm(12),
  ...about,
})

const board = (about: Partial<StockItem> = {}): StockItem =>
  item({ label: 'L', kind: 'board', length: mm(2400), width: mm(89), thickness: mm(38), ...about })

const crosscut = (about: Partial<ListedPart> = {}) =>
  part({ from: 'board', width: mm(89), thickness: mm(38), ...about })

const only = (parts: readonly ListedPart[], stock: readonly StockItem[]): Group => {
  const [group, ...others] = groupParts(parts, stock, saw)
  if (!group || group.kind === 'noStock' || others.length > 0) throw new Error('one group was wanted')
  return group
}

const kinds = (parts: readonly ListedPart[], stock: readonly StockItem[] = []) =>
  groupParts(parts, stock, saw).map((group) =>
    group.kind === 'noStock'
      ? `none of ${group.parts.length}`
      : `${group.kind} ${group.problem.parts.length}`,
  )

describe('parts are sorted by what they are cut from', () => {
  it('by kind', () => {
    const strip = part({ label: 'C', from: 'strip', thickness: mm(12), width: mm(38) })
    const stock = [item(), board()]
    expect(kinds([part(), crosscut({ label: 'B' }), strip, part({ label: 'D' })], stock)).toEqual([
      'sheet 2',
      'board 1',
      'strip 1',
    ])
  })

  it('by thickness, where half a millimetre is the same sheet measured twice', () => {
    const stock = [item(), item({ label: 'T', thickness: mm(18) })]
    const of = (millimetres: number) =>
      kinds([part(), part({ label: 'B', thickness: mm(millimetres) })], stock)
    expect(of(12.5)).toEqual(['sheet 2'])
    expect(of(11.5)).toEqual(['sheet 2'])
    expect(of(12.500001)).toEqual(['sheet 1', 'none of 1'])
    expect(of(18)).toEqual(['sheet 1', 'sheet 1'])
  })

  it('by material, where a part of none in particular goes with the first that is as thick', () => {
    const stock = [
      item({ label: 'P', material: 'birch plywood' }),
      item({ label: 'M', material: 'MDF' }),
      item({ label: 'X' }),
    ]
    const parts = [part(), part({ label: 'B', material: 'MDF' }), part({ label: 'C', material: 'plywood' })]
    const labels = groupParts(parts, stock, saw).map((group) =>
      group.kind === 'noStock' ? [] : group.stock.map(({ label }) => label),
    )
    // Stock that nobody has named suits either; plywood of no wood in particular may be birch.
    expect(labels).toEqual([
      ['M', 'X'],
      ['P', 'X'],
    ])
  })

  it('by section for boards, and by face and fence for strips', () => {
    const strips = [12, 12, 18].map((thickness, index) =>
      part({ label: `${index}`, from: 'strip', thickness: mm(thickness), width: mm(38) }),
    )
    expect(kinds(strips, [board()])).toEqual(['strip 2', 'strip 1'])
    const boards = [crosscut(), crosscut({ label: 'B', width: mm(140) })]
    expect(kinds(boards, [board()])).toEqual(['board 1', 'none of 1'])
  })
})

describe('the stock of a group', () => {
  it('is what is as thick, and none where there is none', () => {
    const group = only([part()], [item(), item({ label: 'T', thickness: mm(18) }), board()])
    expect(group.stock.map(({ label }) => label)).toEqual(['S'])
    expect(groupParts([part()], [board()], saw)).toEqual([
      { kind: 'noStock', parts: [part()], from: 'sheet', thickness: mm(12) },
    ])
  })

  it('for strips is any board as thick as their face, wide enough for one', () => {
    const strip = part({ from: 'strip', thickness: mm(60), width: mm(38) })
    const stock = [board(), board({ label: 'N', width: mm(50) }), board({ label: 'T', thickness: mm(45) })]
    expect(only([strip], stock).stock.map(({ label }) => label)).toEqual(['L'])
  })

  it('knows what is on hand: free, net of trim, and only so many', () => {
    const group = only([part()], [item({ price: 5000 }), item({ label: 'O', onHand: 2 })])
    expect(group.priced).toBe(true)
    expect(group.problem.stock).toMatchObject([
      { id: 'S', price: 5000 },
      { id: 'O', price: 0, onHand: 2, net: true },
    ])
  })

  it('weighs by material as soon as one price is not known', () => {
    const group = only([part()], [item({ price: 5000 }), item({ label: 'T', length: mm(1220) })])
    expect(group.priced).toBe(false)
    expect(group.problem.stock.map(({ price }) => price)).toEqual([2440 * 1220, 1220 * 1220])
    const boards = only([crosscut()], [board(), board({ label: 'M', length: mm(3600) })])
    expect(boards.problem.stock.map(({ price }) => price)).toEqual([2400 * 89, 3600 * 89])
  })
})

describe('the problem of a group', () => {
  it('of sheets says what may be turned', () => {
    const group = only([part({ grain: true }), part({ label: 'B' })], [item()])
    expect(group.problem).toMatchObject({
      parts: [
        { id: 'A', length: mm(600), width: mm(300), count: 1, turnable: false },
        { id: 'B', turnable: true },
      ],
      kerf: mm(3),
      trim: mm(10),
      keepable: mm(300),
    })
  })

  it('of strips counts whole boards, by the count that leaves something spare', () => {
    // (5 1/2 + 1/8) / (1/2 + 1/8) is 9 exactly: nothing is spare, so 8 are counted on.
    const strip = part({ from: 'strip', thickness: inch(0.5), width: inch(1.5) })
    const stock = [item({ label: '2x6', kind: 'board', width: inch(5.5), thickness: inch(1.5), onHand: 2 })]
    const [group] = groupParts([strip], stock, { ...saw, kerf: inch(0.125) })
    expect(group).toMatchObject({
      kind: 'strip',
      thickness: inch(0.5),
      width: inch(1.5),
      problem: { stock: [{ id: '2x6', strips: 8, onHand: 2, price: 0 }], trim: mm(5) },
    })
  })
})
