import { expect, it } from 'vitest'
import { remembered } from '../../src/core/remembered.ts'

it('works out a text once, and of more texts than it keeps the first go', () => {
  const worked: string[] = []
  const lettersOf = remembered((text) => {
    worked.push(text)
    return [...text]
  }, 2)
  for (const text of ['ab', 'ab', 'c', 'ab', 'd', 'c', 'ab']) expect(lettersOf(text)).toEqual([...text])
  expect(worked).toEqual(['ab', 'c', 'd', 'ab'])
})
