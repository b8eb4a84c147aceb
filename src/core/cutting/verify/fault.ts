/** The rules a layout must keep, each checked on its own. */
export type Rule =
  | 'stock'
  | 'count'
  | 'whole'
  | 'size'
  | 'grain'
  | 'inside'
  | 'overlap'
  | 'kerf'
  | 'guillotine'
  | 'cuts'
  | 'offcut'
  | 'demand'
  | 'onHand'
  | 'cost'
  | 'worth'

/** One broken rule: `sentence` says it in full, `layout` counts from 0, `part` is the id where there is one. */
export interface Fault {
  readonly rule: Rule
  readonly sentence: string
  readonly layout?: number | undefined
  readonly part?: string | undefined
}

/** A fault of one layout; its sentence opens with the layout, counted from 1 as people count. */
export const faultIn = (rule: Rule, layout: number, claim: string, part?: string): Fault => ({
  rule,
  layout,
  part,
  sentence: `layout ${layout + 1}: ${claim}`,
})

/** A fault of the answer as a whole. */
export const faultOverall = (rule: Rule, claim: string, part?: string): Fault => ({
  rule,
  part,
  sentence: claim,
})
