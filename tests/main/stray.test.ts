import { expect, it } from 'vitest'
import { strayTo } from '../../src/main/stray.ts'

it('what fails and nobody waited for is logged by its kind and place, without its words', () => {
  const logged: [object, string][] = []
  const note = (facts: object, message: string) => void logged.push([facts, message])
  const hear = strayTo({ error: note, warn: () => {}, info: () => {} })
  hear(Object.assign(new TypeError('no way to https://example.org/secret'), { token: 'secret' }))
  hear('secret')
  expect(logged).toHaveLength(2)
  expect(logged[0]).toEqual([
    { error: 'TypeError', at: expect.arrayContaining([expect.stringContaining('stray.test.ts')]) },
    'something failed that nobody waited for',
  ])
  expect(JSON.stringify(logged)).not.toContain('secret')
})
