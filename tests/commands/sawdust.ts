import { expect } from 'vitest'
import type { Found, Search } from '../../src/bot/search.ts'
import { verifyCost, verifyLengths, verifySheets } from '../../src/core/cutting/verify.ts'
import { verifyStrips } from '../../src/core/cutting/verify/strips.ts'
import { createSearch } from '../../src/search/pool.ts'

/** A search as the bot has it, where everything found is verified again before the command sees it. */
export interface Verified extends Search {
  /** How many layouts were found to hold. */
  readonly checked: () => number
}

export function verifiedSearch(): Verified {
  const search = createSearch({ threads: 1, queue: 32 })
  let checked = 0
  const expectSound = <Layout>(found: Found<Layout>, faults: readonly unknown[]): Found<Layout> => {
    expect(faults).toEqual([])
    checked += 1
    return found
  }
  const laid = <Layout>({ outcome }: Found<Layout>) =>
    outcome.status === 'impossible' ? undefined : outcome.layouts
  return {
    ...search,
    checked: () => checked,
    cutLengths: async (problem, terms) => {
      const found = await search.cutLengths(problem, terms)
      const layouts = laid(found)
      const faults = layouts
        ? [...verifyLengths(problem, layouts), ...verifyCost(problem, found.outcome)]
        : []
      return expectSound(found, faults)
    },
    cutStrips: async (problem, terms) => {
      const found = await search.cutStrips(problem, terms)
      return expectSound(found, verifyStrips(problem, found.outcome))
    },
    cutSheets: async (problem, terms) => {
      const found = await search.cutSheets(problem, terms)
      const layouts = laid(found)
      const faults = layouts ? [...verifySheets(problem, layouts), ...verifyCost(problem, found.outcome)] : []
      return expectSound(found, faults)
    },
  }
}
